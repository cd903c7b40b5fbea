package org.printassay.demo.flatbed;

import org.printassay.colour.RgbSpace;

/** RGB encodings in which a flatbed delivers. The file carries the matching profile, or none. */
public enum Encoding {
    /** IEC 61966-2-1. */
    SRGB("sRGB", "sRGB (simulated print room)"),
    /** Adobe RGB (1998). */
    ADOBE_RGB("Adobe RGB (1998)", "Adobe RGB (1998) (simulated print room)"),
    /** The scanner's own red, green and blue and a pure power curve; an input class profile. */
    SCANNER("scanner RGB", "Simulated flatbed");

    /** Exponent of the scanner's own curve: the nearest a profile can hold to 1.8. */
    private static final double SCANNER_GAMMA = 461.0 / 256;

    /**
     * XYZ (connection space, Y of white 1) of the scanner's red, green and blue, row-major:
     * invented, wider than sRGB, and adding up to the D50 white.
     */
    private static final double[] SCANNER_TO_XYZ = {
        0.5950, 0.2452, 0.1240,
        0.2840, 0.6810, 0.0350,
        0.0080, 0.0389, 0.7780
    };

    private final String title;
    private final String profileName;

    Encoding(String title, String profileName) {
        this.title = title;
        this.profileName = profileName;
    }

    /** Name for people. */
    public String title() {
        return title;
    }

    /** Description text of its profile. */
    public String profileName() {
        return profileName;
    }

    /** Linear RGB to XYZ with Y of white = 1, row-major, a fresh copy. */
    public double[] toXyz() {
        return switch (this) {
            case SRGB -> RgbSpace.SRGB.matrix();
            case ADOBE_RGB -> RgbSpace.ADOBE_RGB.matrix();
            case SCANNER -> SCANNER_TO_XYZ.clone();
        };
    }

    /** Linear light (0-1) to encoded value (0-1). */
    public double encode(double linear) {
        return switch (this) {
            case SRGB -> RgbSpace.SRGB.encode(linear);
            case ADOBE_RGB -> RgbSpace.ADOBE_RGB.encode(linear);
            case SCANNER -> Math.pow(linear, 1 / SCANNER_GAMMA);
        };
    }

    /** Encoded value (0-1) to linear light (0-1). */
    public double decode(double encoded) {
        return switch (this) {
            case SRGB -> RgbSpace.SRGB.decode(encoded);
            case ADOBE_RGB -> RgbSpace.ADOBE_RGB.decode(encoded);
            case SCANNER -> Math.pow(encoded, SCANNER_GAMMA);
        };
    }

    /** XYZ (Y of white = 1) to linear RGB, row-major. */
    double[] fromXyz() {
        return inverse(toXyz());
    }

    private static double[] inverse(double[] m) {
        double c0 = m[4] * m[8] - m[5] * m[7];
        double c1 = m[5] * m[6] - m[3] * m[8];
        double c2 = m[3] * m[7] - m[4] * m[6];
        double det = m[0] * c0 + m[1] * c1 + m[2] * c2;
        return new double[] {
            c0 / det, (m[2] * m[7] - m[1] * m[8]) / det, (m[1] * m[5] - m[2] * m[4]) / det,
            c1 / det, (m[0] * m[8] - m[2] * m[6]) / det, (m[2] * m[3] - m[0] * m[5]) / det,
            c2 / det, (m[1] * m[6] - m[0] * m[7]) / det, (m[0] * m[4] - m[1] * m[3]) / det
        };
    }
}
