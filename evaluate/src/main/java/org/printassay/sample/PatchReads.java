package org.printassay.sample;

import java.util.EnumSet;
import java.util.Set;
import org.printassay.colour.LinearRgb;
import org.printassay.reading.ReadingFlag;

/**
 * One patch read in two ways.
 *
 * @param robust without what seems to lie on it
 * @param whole with all of it
 * @param shareFar share of its pixels in cells that lie visibly far from the others
 * @param farL what these cells do to its lightness, L* of the middle channel
 * @param spanL how far blocks of about a millimetre lie apart, with all of it, L*
 */
record PatchReads(
        PatchSample robust, PatchSample whole, double shareFar, double farL, double spanL) {
    /** Mean light of all channels, without what seems to lie on it. */
    double light() {
        LinearRgb linear = robust.linear();
        return (linear.r() + linear.g() + linear.b()) / 3;
    }

    /** Its robust reading, in doubt for what lies on it. */
    PatchSample inDoubt() {
        Set<ReadingFlag> flags = EnumSet.of(ReadingFlag.DUSTY);
        flags.addAll(robust.flags());
        return robust.withFlags(flags);
    }
}
