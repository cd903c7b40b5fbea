package org.printassay.surface;

/** What a robust deviation is worth that comes from few places. */
final class FewPlaces {
    /**
     * What a median absolute deviation tells of a normal deviation, against what a standard one
     * does (P. J. Rousseeuw, C. Croux, "Alternatives to the median absolute deviation", J. Am.
     * Stat. Assoc. 88, 1993).
     */
    private static final double EFFICIENCY = 0.37;

    private FewPlaces() {}

    /**
     * By how much a robust deviation from so many independent places must be enlarged for {@link
     * LineDetector#ALONE} deviations to be as rare as they are among normal numbers of known
     * deviation. Short tints tell little of their noise.
     */
    static double unsure(double places) {
        return student(LineDetector.ALONE, Math.max(1, EFFICIENCY * places)) / LineDetector.ALONE;
    }

    /**
     * Student's t that is as rare as a normal number, by the approximation of D. L. Wallace,
     * "Bounds on normal approximations to Student's and the chi-square distributions", Ann. Math.
     * Statist. 30, 1959 (from memory).
     */
    static double student(double normal, double freedom) {
        double z = normal * (8 * freedom + 3) / (8 * freedom + 1);
        return Math.sqrt(freedom * Math.expm1(z * z / freedom));
    }
}
