package org.printassay.layout;

import org.printassay.colour.Rgb8;
import org.printassay.sheet.Section;

/**
 * A patch that has no place yet.
 *
 * @param id unique in the chart
 * @param section what it is for
 * @param rgb codes in the chart's encoding
 */
record Ink(String id, Section section, Rgb8 rgb) {}
