package org.printassay.locate;

/**
 * A point in a full-resolution scan; the outer corner of the top left pixel is (0, 0).
 *
 * @param x pixels to the right
 * @param y pixels down
 */
public record PointPx(double x, double y) {}
