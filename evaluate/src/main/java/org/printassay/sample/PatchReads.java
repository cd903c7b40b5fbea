package org.printassay.sample;

/**
 * One patch read in two ways.
 *
 * @param robust without what seems to lie on it
 * @param whole with all of it
 * @param shareFar share of its pixels in cells that lie visibly far from the others
 * @param spanL how far blocks of about a millimetre lie apart, with all of it, L*
 */
record PatchReads(PatchSample robust, PatchSample whole, double shareFar, double spanL) {
    /** Mean light of all channels, without what seems to lie on it. */
    double light() {
        LinearRgb linear = robust.linear();
        return (linear.r() + linear.g() + linear.b()) / 3;
    }
}
