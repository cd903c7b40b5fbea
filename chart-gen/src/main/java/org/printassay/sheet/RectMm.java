package org.printassay.sheet;

/**
 * An upright rectangle on the page.
 *
 * @param x left edge, millimetres
 * @param y top edge, millimetres
 * @param width millimetres
 * @param height millimetres
 */
public record RectMm(double x, double y, double width, double height) {
    /** The middle. */
    public PointMm centre() {
        return new PointMm(x + width / 2, y + height / 2);
    }

    /** Right edge. */
    public double right() {
        return x + width;
    }

    /** Bottom edge. */
    public double bottom() {
        return y + height;
    }

    /** The rectangle with every side moved inwards (outwards when negative). */
    public RectMm inset(double by) {
        return new RectMm(x + by, y + by, width - 2 * by, height - 2 * by);
    }

    /** Whether less than so many millimetres lie between the two; also where they overlap. */
    public boolean isNear(RectMm other, double mm) {
        return x < other.right() + mm
                && other.x() < right() + mm
                && y < other.bottom() + mm
                && other.y() < bottom() + mm;
    }
}
