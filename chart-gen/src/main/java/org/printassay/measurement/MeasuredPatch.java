package org.printassay.measurement;

import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Spectrum;
import org.printassay.colour.Xyz;

/**
 * One measured patch.
 *
 * @param id the file's name for it, or its row number
 * @param rgb codes that were printed
 * @param lab CIELAB, D50: from the spectrum, else from XYZ, else as the file has it
 * @param xyz tristimulus values: from the spectrum, else the file's, else null
 * @param spectrum reflectance, where the file has it
 * @param line line of the file, from 1
 */
public record MeasuredPatch(
        String id, Rgb8 rgb, Lab lab, @Nullable Xyz xyz, @Nullable Spectrum spectrum, int line) {}
