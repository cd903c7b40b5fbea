package org.printassay.colour.icc;

import org.printassay.colour.Lab;
import org.printassay.colour.Xyz;

/**
 * How colours of the connection space stand as fractions 0-1 in tables. Colours outside tables are
 * media-relative XYZ with Y = 1 for white in arrays of steps.
 */
enum PcsCode {
    /** L* 0-100, a* and b* -128 to 127 (ISO 15076-1, 6.3.4.2, and lut8 of both versions). */
    LAB {
        @Override
        void decode(double[] v) {
            toXyz(v, 100 * v[0], 255 * v[1] - 128, 255 * v[2] - 128);
        }

        @Override
        void encode(double[] v) {
            Lab lab = toLab(v);
            v[0] = lab.l() / 100;
            v[1] = (lab.a() + 128) / 255;
            v[2] = (lab.b() + 128) / 255;
        }
    },
    /** The older CIELAB, kept by lut16 in version 4 too: 0xFF00 is L* 100 (10.10, table 42). */
    LAB_LUT16 {
        @Override
        void decode(double[] v) {
            toXyz(v, v[0] * 65535 / 652.8, v[1] * 65535 / 256 - 128, v[2] * 65535 / 256 - 128);
        }

        @Override
        void encode(double[] v) {
            Lab lab = toLab(v);
            v[0] = lab.l() * 652.8 / 65535;
            v[1] = (lab.a() + 128) * 256 / 65535;
            v[2] = (lab.b() + 128) * 256 / 65535;
        }
    },
    /** 0 to 1 + 32767/32768. */
    XYZ {
        @Override
        void decode(double[] v) {
            scale(v, XYZ_RANGE);
        }

        @Override
        void encode(double[] v) {
            scale(v, 1 / XYZ_RANGE);
        }
    };

    /** Largest XYZ of the 16-bit encoding. */
    private static final double XYZ_RANGE = 65535.0 / 32768;

    /** Newer CIELAB fractions to older ones, 65280/65535. */
    static final double TO_LUT16 = 65280.0 / 65535;

    /** Fractions to XYZ. */
    abstract void decode(double[] v);

    /** XYZ to fractions, which may lie outside 0-1. */
    abstract void encode(double[] v);

    static void scale(double[] v, double factor) {
        for (int i = 0; i < 3; i++) {
            v[i] *= factor;
        }
    }

    static Lab toLab(double[] v) {
        return Lab.of(new Xyz(100 * v[0], 100 * v[1], 100 * v[2]), Xyz.PCS_WHITE);
    }

    static void toXyz(double[] v, double l, double a, double b) {
        set(v, new Lab(l, a, b).toXyz(Xyz.PCS_WHITE));
    }

    static void set(double[] v, Xyz xyz) {
        v[0] = xyz.x() / 100;
        v[1] = xyz.y() / 100;
        v[2] = xyz.z() / 100;
    }

    static Xyz get(double[] v) {
        return new Xyz(100 * v[0], 100 * v[1], 100 * v[2]);
    }
}
