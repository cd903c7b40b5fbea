package org.printassay.colour;

import java.util.Locale;
import java.util.Optional;

/**
 * RGB encodings a chart can be made in. Colorimetry is relative to the D50 profile connection
 * space; D65 spaces are adapted by the linear Bradford transform (ISO 15076-1 Annex E).
 */
public enum RgbSpace {
    /** IEC 61966-2-1:1999. */
    SRGB("sRGB", "srgb", Primaries.SRGB, true),
    /** Adobe RGB (1998) Color Image Encoding, 2005. Decoding exponent 563/256. */
    ADOBE_RGB("Adobe RGB (1998)", "adobe-rgb", Primaries.ADOBE_RGB, true),
    /** SMPTE EG 432-1 primaries with D65 white and the sRGB curve. */
    DISPLAY_P3("Display P3", "display-p3", Primaries.DISPLAY_P3, true),
    /** ROMM RGB, ISO 22028-2:2013. */
    ROMM("ROMM RGB", "romm", Primaries.ROMM, false);

    private static final class Primaries {
        static final double[] SRGB = {.64, .33, .30, .60, .15, .06};
        static final double[] ADOBE_RGB = {.64, .33, .21, .71, .15, .06};
        static final double[] DISPLAY_P3 = {.680, .320, .265, .690, .150, .060};
        static final double[] ROMM = {.7347, .2653, .1596, .8404, .0366, .0001};
    }

    private final String title;
    private final String key;
    private final boolean d65;

    /** Never handed out: {@link #matrix} copies. */
    @SuppressWarnings("ImmutableEnumChecker")
    private final double[] toXyz;

    RgbSpace(String title, String key, double[] primaries, boolean d65) {
        this.title = title;
        this.key = key;
        this.d65 = d65;
        this.toXyz = RgbMatrix.toPcs(primaries, d65);
    }

    /** Name for people. */
    public String title() {
        return title;
    }

    /** Name in files and options, lower case. */
    public String key() {
        return key;
    }

    /** The space of a {@link #key}, any case. */
    public static Optional<RgbSpace> ofKey(String key) {
        for (RgbSpace space : values()) {
            if (space.key.equals(key.toLowerCase(Locale.ROOT))) {
                return Optional.of(space);
            }
        }
        return Optional.empty();
    }

    /** Encoded value (0-1) to linear light (0-1). */
    public double decode(double encoded) {
        return switch (this) {
            case SRGB, DISPLAY_P3 ->
                    encoded <= 0.04045 ? encoded / 12.92 : Math.pow((encoded + 0.055) / 1.055, 2.4);
            case ADOBE_RGB -> Math.pow(encoded, 563.0 / 256);
            case ROMM -> encoded < 16.0 / 512 ? encoded / 16 : Math.pow(encoded, 1.8);
        };
    }

    /** Linear light (0-1) to encoded value (0-1). */
    public double encode(double linear) {
        return switch (this) {
            case SRGB, DISPLAY_P3 ->
                    linear <= 0.0031308
                            ? linear * 12.92
                            : 1.055 * Math.pow(linear, 1 / 2.4) - 0.055;
            case ADOBE_RGB -> Math.pow(linear, 256.0 / 563);
            case ROMM -> linear < 1.0 / 512 ? linear * 16 : Math.pow(linear, 1 / 1.8);
        };
    }

    /** XYZ under the D50 connection space white of linear light (each 0-1). */
    public Xyz linearToXyz(double r, double g, double b) {
        double[] m = toXyz;
        return new Xyz(
                100 * (m[0] * r + m[1] * g + m[2] * b),
                100 * (m[3] * r + m[4] * g + m[5] * b),
                100 * (m[6] * r + m[7] * g + m[8] * b));
    }

    /** XYZ of 8-bit codes. */
    public Xyz toXyz(Rgb8 codes) {
        return linearToXyz(
                decode(codes.r() / 255.0), decode(codes.g() / 255.0), decode(codes.b() / 255.0));
    }

    /** CIELAB (D50) of 8-bit codes. */
    public Lab toLab(Rgb8 codes) {
        return Lab.of(toXyz(codes), Xyz.PCS_WHITE);
    }

    /**
     * Row-major 3 x 3 Bradford matrix from the encoding's own white to the connection space white;
     * the identity for D50 encodings.
     */
    public double[] adaptation() {
        return d65 ? RgbMatrix.d65ToPcs() : new double[] {1, 0, 0, 0, 1, 0, 0, 0, 1};
    }

    /** Row-major 3 x 3 matrix, linear RGB (0-1) to XYZ (Y of white = 1), a fresh copy. */
    public double[] matrix() {
        return toXyz.clone();
    }
}
