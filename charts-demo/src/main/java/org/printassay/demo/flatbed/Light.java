package org.printassay.demo.flatbed;

/**
 * Evenness of the lamp over the bed.
 *
 * @param falloff darkest over brightest place, taken from 1: 0 to 0.5; the scanner was set up so
 *     that the middle is right
 * @param shape how it falls off
 * @param directionDegrees for {@link Shape#SLOPE} where it gets darker: 0 to the right, 90 down;
 *     for {@link Shape#ENDS} the axis between the ends
 */
public record Light(double falloff, Shape shape, double directionDegrees) {
    /** Even light. */
    public static final Light EVEN = new Light(0, Shape.SLOPE, 0);

    /** What {@link Shape#ENDS} loses at an end, before scaling. */
    private static final double LOSS_AT_END = Math.cosh(2.5) - 1;

    public Light {
        if (falloff < 0 || falloff > 0.5) {
            throw new IllegalArgumentException("fall-off goes from 0 to 0.5, got " + falloff);
        }
    }

    /** Kinds of fall-off. */
    public enum Shape {
        /** A straight slope. */
        SLOPE,
        /** Darker towards both ends of an axis, like the ends of a tube. */
        ENDS,
        /** Darker towards the corners. */
        CORNERS
    }

    /**
     * Light at a place of the full frame.
     *
     * @param x -1 at the left edge, 1 at the right
     * @param y -1 at the top, 1 at the bottom
     * @return 1 in the middle
     */
    double at(double x, double y) {
        double cos = Math.cos(Math.toRadians(directionDegrees));
        double sin = Math.sin(Math.toRadians(directionDegrees));
        double reach = Math.abs(cos) + Math.abs(sin);
        double along = (x * cos + y * sin) / reach;
        double loss =
                switch (shape) {
                    case SLOPE -> (1 + along) / 2;
                    // Flat in the middle, steep at the ends: no low-order polynomial.
                    case ENDS -> (Math.cosh(2.5 * along) - 1) / LOSS_AT_END;
                    case CORNERS -> 1 - 1 / Math.pow(1 + (x * x + y * y) / 2, 2);
                };
        double middle = shape == Shape.SLOPE ? 0.5 : 0;
        return (1 - falloff * (shape == Shape.CORNERS ? loss / 0.75 : loss))
                / (1 - falloff * middle);
    }
}
