package org.printassay.colour;

import java.util.List;

/**
 * A colour in CIE 1976 L*a*b* (ISO/CIE 11664-4). Carries no white point; conversions take one.
 *
 * @param l lightness L*, nominally 0 to 100 (reference white)
 * @param a green-red axis a*
 * @param b blue-yellow axis b*
 */
public record Lab(double l, double a, double b) {
    /** Limit of the linear part, (6/29)^3 (CIE 15). */
    private static final double EPSILON = 216.0 / 24389;

    /** Slope of the linear part, (29/3)^3 (CIE 15). */
    private static final double KAPPA = 24389.0 / 27;

    public Lab {
        if (!Double.isFinite(l) || !Double.isFinite(a) || !Double.isFinite(b)) {
            throw new IllegalArgumentException(
                    "Lab needs three finite numbers, got L*=" + l + " a*=" + a + " b*=" + b);
        }
    }

    /** CIELAB of tristimulus values seen under a white (ISO/CIE 11664-4). */
    public static Lab of(Xyz xyz, Xyz white) {
        double fx = f(xyz.x() / white.x());
        double fy = f(xyz.y() / white.y());
        double fz = f(xyz.z() / white.z());
        return new Lab(116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz));
    }

    /**
     * Mean of each coordinate.
     *
     * @param labs at least one
     */
    public static Lab mean(List<Lab> labs) {
        return new Lab(
                labs.stream().mapToDouble(Lab::l).average().orElseThrow(),
                labs.stream().mapToDouble(Lab::a).average().orElseThrow(),
                labs.stream().mapToDouble(Lab::b).average().orElseThrow());
    }

    /** L* of a luminance factor (0 to 1; values below 0 continue the linear part). */
    public static double lightness(double luminanceFactor) {
        return 116 * f(luminanceFactor) - 16;
    }

    /** Slope of L* over the luminance factor. */
    public static double slope(double luminanceFactor) {
        return luminanceFactor <= EPSILON ? KAPPA : 116.0 / 3 * Math.pow(luminanceFactor, -2.0 / 3);
    }

    /** Luminance factor (0 to 1) of an L*; the inverse of {@link #lightness}. */
    public static double luminanceFactor(double lightness) {
        return inverseF((lightness + 16) / 116);
    }

    /** Tristimulus values under a white; the inverse of {@link #of}. */
    public Xyz toXyz(Xyz white) {
        double fy = (l + 16) / 116;
        return new Xyz(
                inverseF(fy + a / 500) * white.x(),
                inverseF(fy) * white.y(),
                inverseF(fy - b / 200) * white.z());
    }

    /** Chroma C*ab: distance from the neutral axis. */
    public double chroma() {
        return Math.hypot(a, b);
    }

    /** Hue angle h_ab in degrees, 0 to 360; 0 for an exact neutral. */
    public double hueDegrees() {
        double degrees = Math.toDegrees(Math.atan2(b, a));
        return degrees < 0 ? degrees + 360 : degrees;
    }

    private static double f(double t) {
        return t > EPSILON ? Math.cbrt(t) : (KAPPA * t + 16) / 116;
    }

    private static double inverseF(double f) {
        double cube = f * f * f;
        return cube > EPSILON ? cube : (116 * f - 16) / KAPPA;
    }
}
