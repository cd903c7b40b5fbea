package org.printassay.colour;

/** Matrices of RGB encodings from their published chromaticities. Row-major 3 x 3. */
final class RgbMatrix {
    /** Linear Bradford cone matrix, ISO 15076-1:2010 Annex E. */
    private static final double[] BRADFORD = {
        0.8951, 0.2664, -0.1614, -0.7502, 1.7135, 0.0367, 0.0389, -0.0685, 1.0296
    };

    private static final double[] D65 = {0.3127 / 0.3290, 1, (1 - 0.3127 - 0.3290) / 0.3290};
    private static final double[] PCS = {0.9642, 1, 0.8249};

    private RgbMatrix() {}

    /**
     * Linear RGB to XYZ under the connection space white (Y = 1).
     *
     * @param xy chromaticities x, y of red, green and blue
     * @param d65 whether the encoding's white is D65 (adapted by Bradford) rather than D50
     */
    static double[] toPcs(double[] xy, boolean d65) {
        double[] white = d65 ? D65 : PCS;
        double[] m = new double[9];
        for (int i = 0; i < 3; i++) {
            double x = xy[2 * i];
            double y = xy[2 * i + 1];
            m[i] = x / y;
            m[3 + i] = 1;
            m[6 + i] = (1 - x - y) / y;
        }
        double[] scale = apply(inverse(m), white);
        for (int row = 0; row < 3; row++) {
            for (int i = 0; i < 3; i++) {
                m[3 * row + i] *= scale[i];
            }
        }
        return d65 ? multiply(d65ToPcs(), m) : m;
    }

    /** Bradford adaptation from D65 to the connection space white. */
    static double[] d65ToPcs() {
        return bradford(D65, PCS);
    }

    /** Bradford adaptation from one white to another. */
    static double[] bradford(double[] from, double[] to) {
        double[] coneFrom = apply(BRADFORD, from);
        double[] coneTo = apply(BRADFORD, to);
        double[] scaled = BRADFORD.clone();
        for (int row = 0; row < 3; row++) {
            for (int i = 0; i < 3; i++) {
                scaled[3 * row + i] *= coneTo[row] / coneFrom[row];
            }
        }
        return multiply(inverse(BRADFORD), scaled);
    }

    static double[] apply(double[] m, double[] v) {
        return new double[] {
            m[0] * v[0] + m[1] * v[1] + m[2] * v[2],
            m[3] * v[0] + m[4] * v[1] + m[5] * v[2],
            m[6] * v[0] + m[7] * v[1] + m[8] * v[2]
        };
    }

    static double[] multiply(double[] p, double[] q) {
        double[] r = new double[9];
        for (int row = 0; row < 3; row++) {
            for (int col = 0; col < 3; col++) {
                for (int k = 0; k < 3; k++) {
                    r[3 * row + col] += p[3 * row + k] * q[3 * k + col];
                }
            }
        }
        return r;
    }

    static double[] inverse(double[] m) {
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
