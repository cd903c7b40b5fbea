package org.printassay.sheet;

/**
 * A point on the page.
 *
 * @param x millimetres to the right of the page's left edge
 * @param y millimetres below the page's top edge
 */
public record PointMm(double x, double y) {}
