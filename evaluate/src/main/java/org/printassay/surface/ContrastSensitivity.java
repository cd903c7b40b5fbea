package org.printassay.surface;

/**
 * How small a contrast an eye sees at one distance in one light: the formula of Barten, Formula for
 * the contrast sensitivity of the human eye, Proc. SPIE 5294, 231 (2004), for gratings of long
 * exposure seen with both eyes; constants from memory.
 *
 * @param distanceMm from eye to print
 * @param illuminanceLux on the print
 */
public record ContrastSensitivity(double distanceMm, double illuminanceLux) {
    /** A print held to be read, under the practical appraisal condition P2 of ISO 3664:2009. */
    public static final ContrastSensitivity USUAL = new ContrastSensitivity(400, 500);

    /** Side of the field that bands fill, degrees: about 70 mm at reading distance. */
    private static final double FIELD_DEGREES = 10;

    /**
     * Sensitivity: the reciprocal of the smallest modulation (amplitude over mean) that is seen.
     *
     * @param periodMm of the grating on the print
     * @param reflectance luminance factor of the tint, 0 to 1
     */
    public double at(double periodMm, double reflectance) {
        double luminance = Math.max(0.01, illuminanceLux * reflectance / Math.PI);
        return barten(cyclesPerDegree(periodMm), luminance, FIELD_DEGREES);
    }

    /** Spatial frequency of a period as the eye sees it. */
    public double cyclesPerDegree(double periodMm) {
        return 2 * distanceMm * Math.tan(Math.toRadians(0.5)) / periodMm;
    }

    /**
     * Barten's formula.
     *
     * @param u spatial frequency, cycles per degree, above 0
     * @param luminance cd/m2
     * @param field side of the square field, degrees
     */
    static double barten(double u, double luminance, double field) {
        double optics = Math.exp(-0.0016 * u * u * Math.pow(1 + 100 / luminance, 0.08));
        double size = 1 + 144 / (field * field) + 0.64 * u * u;
        double noise = 63 / Math.pow(luminance, 0.83) + 1 / (1 - Math.exp(-0.02 * u * u));
        return 5200 * optics / Math.sqrt(size * noise);
    }
}
