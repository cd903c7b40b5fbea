package org.printassay.colour.icc;

import org.printassay.colour.Lab;
import org.printassay.colour.Xyz;

/**
 * How colours stand as fractions 0-1 between profiles, as encodings of 16 bits have them: CIELAB as
 * L* / 100, (a* + 128) / 255, (b* + 128) / 255 (ISO 15076-1, 6.3.4.2), XYZ as X / (1 + 32767/32768)
 * with Y = 1 for white. Fractions may lie outside 0-1.
 */
final class PcsCode {
    /** Largest XYZ of the 16-bit encoding. */
    static final double XYZ_RANGE = 65535.0 / 32768;

    /** a* and b* of 0. */
    static final double NO_TINT = 128 / 255.0;

    /**
     * To the older CIELAB, kept by lut16 in version 4 too: 65280/65535 is L* 100 (10.10, table 42).
     */
    static final Step TO_LUT16 = v -> scale(v, 65280.0 / 65535);

    /** From the older CIELAB. */
    static final Step FROM_LUT16 = v -> scale(v, 65535.0 / 65280);

    private PcsCode() {}

    /** CIELAB to XYZ, in place. */
    static void labToXyz(double[] v) {
        Xyz xyz = lab(v).toXyz(Xyz.PCS_WHITE);
        set(v, xyz);
    }

    /** XYZ to CIELAB, in place. */
    static void xyzToLab(double[] v) {
        set(v, Lab.of(xyz(v), Xyz.PCS_WHITE));
    }

    /** The colour of CIELAB fractions. */
    static Lab lab(double[] v) {
        return new Lab(100 * v[0], 255 * v[1] - 128, 255 * v[2] - 128);
    }

    /** The colour of XYZ fractions. */
    static Xyz xyz(double[] v) {
        double whole = 100 * XYZ_RANGE;
        return new Xyz(whole * v[0], whole * v[1], whole * v[2]);
    }

    /** Puts CIELAB fractions in. */
    static void set(double[] v, Lab lab) {
        v[0] = lab.l() / 100;
        v[1] = (lab.a() + 128) / 255;
        v[2] = (lab.b() + 128) / 255;
    }

    /** Puts XYZ fractions in. */
    static void set(double[] v, Xyz xyz) {
        double whole = 100 * XYZ_RANGE;
        v[0] = xyz.x() / whole;
        v[1] = xyz.y() / whole;
        v[2] = xyz.z() / whole;
    }

    private static void scale(double[] v, double factor) {
        for (int i = 0; i < 3; i++) {
            v[i] *= factor;
        }
    }
}
