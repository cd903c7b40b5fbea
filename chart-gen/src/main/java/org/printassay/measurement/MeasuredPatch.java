package org.printassay.measurement;

import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Spectrum;
import org.printassay.colour.Xyz;

/**
 * One measured patch.
 *
 * @param id the chart's name for it where it was matched to a chart, else the file's, or its row
 *     number
 * @param rgb codes that were printed
 * @param lab CIELAB, D50: from the spectrum, else from XYZ, else as the file has it; mean of the
 *     repeats
 * @param xyz tristimulus values: from the spectrum, else the file's, else null
 * @param spectrum reflectance, where the file has it
 * @param spread standard deviation of L*, a*, b* over the repeats; null when measured once
 * @param repeats how many measurements it is the mean of, at least 1
 * @param placed whether the id is that of a patch of the chart, so that its place is known
 * @param line line of the file, from 1
 */
public record MeasuredPatch(
        String id,
        Rgb8 rgb,
        Lab lab,
        @Nullable Xyz xyz,
        @Nullable Spectrum spectrum,
        @Nullable Lab spread,
        int repeats,
        boolean placed,
        int line) {}
