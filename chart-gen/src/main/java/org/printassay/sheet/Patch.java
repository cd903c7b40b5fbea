package org.printassay.sheet;

import org.printassay.colour.Rgb8;

/**
 * A flat area printed from one RGB value. A paper window is a patch of code 255 that nothing is
 * drawn in.
 *
 * @param id unique in the chart, short, letters and digits
 * @param section what it is for
 * @param rgb codes in the chart's RGB encoding
 * @param area where it stands; the reader takes the middle of it
 */
public record Patch(String id, Section section, Rgb8 rgb, RectMm area) {}
