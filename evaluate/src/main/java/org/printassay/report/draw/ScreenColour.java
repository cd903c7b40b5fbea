package org.printassay.report.draw;

import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.Xyz;

/**
 * Measured colours on a screen: CIELAB D50 to sRGB (IEC 61966-2-1) through the linear Bradford
 * adaptation of ISO 15076-1 Annex E. What the screen cannot show is clipped channel by channel.
 */
public final class ScreenColour {
    private static final double[] FROM_XYZ = inverse(RgbSpace.SRGB.matrix());

    private ScreenColour() {}

    /** The colour as {@code #rrggbb}. */
    public static String of(Lab lab) {
        Xyz xyz = lab.toXyz(Xyz.PCS_WHITE);
        StringBuilder out = new StringBuilder("#");
        for (int row = 0; row < 3; row++) {
            double linear =
                    (FROM_XYZ[3 * row] * xyz.x()
                                    + FROM_XYZ[3 * row + 1] * xyz.y()
                                    + FROM_XYZ[3 * row + 2] * xyz.z())
                            / 100;
            double encoded = RgbSpace.SRGB.encode(Math.min(1, Math.max(0, linear)));
            int code = (int) Math.round(encoded * 255);
            out.append(Character.forDigit(code >> 4, 16)).append(Character.forDigit(code & 15, 16));
        }
        return out.toString();
    }

    /** Inverse of a row-major 3 x 3 matrix by cofactors. */
    private static double[] inverse(double[] m) {
        double[] out = new double[9];
        double determinant = 0;
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                int r1 = (i + 1) % 3;
                int r2 = (i + 2) % 3;
                int c1 = (j + 1) % 3;
                int c2 = (j + 2) % 3;
                double cofactor = m[3 * r1 + c1] * m[3 * r2 + c2] - m[3 * r1 + c2] * m[3 * r2 + c1];
                out[3 * j + i] = cofactor;
                determinant += i == 0 ? m[j] * cofactor : 0;
            }
        }
        for (int i = 0; i < 9; i++) {
            out[i] /= determinant;
        }
        return out;
    }
}
