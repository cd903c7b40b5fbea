package org.printassay.measurement;

import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Spectrum;
import org.printassay.colour.Xyz;

/**
 * A patch as a file has it, not yet matched to a chart.
 *
 * @param id empty when the file names none
 * @param rgb null when the file has no codes
 */
record RawPatch(
        String id,
        @Nullable Rgb8 rgb,
        Lab lab,
        @Nullable Xyz xyz,
        @Nullable Spectrum spectrum,
        int line) {

    /** The same by another name. */
    RawPatch named(String name) {
        return new RawPatch(name, rgb, lab, xyz, spectrum, line);
    }

    /** As a measured patch of these codes. */
    MeasuredPatch as(String name, Rgb8 codes, boolean placed) {
        return new MeasuredPatch(name, codes, lab, xyz, spectrum, null, 1, placed, line);
    }
}
