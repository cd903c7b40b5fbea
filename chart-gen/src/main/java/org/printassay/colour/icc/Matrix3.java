package org.printassay.colour.icc;

/** Row-major 3 x 3 matrices. */
final class Matrix3 {
    /** Below this a matrix of colorants has lost a dimension. */
    private static final double SMALLEST_DETERMINANT = 1e-9;

    private Matrix3() {}

    static boolean hasInverse(double[] m) {
        return Math.abs(determinant(m)) > SMALLEST_DETERMINANT;
    }

    /** By cofactors; callers ask {@link #hasInverse} first. */
    static double[] inverse(double[] m) {
        double[] r = new double[9];
        for (int row = 0; row < 3; row++) {
            for (int col = 0; col < 3; col++) {
                r[3 * col + row] = cofactor(m, row, col) / determinant(m);
            }
        }
        return r;
    }

    /**
     * Replaces the first three numbers by the product of the matrix and them.
     *
     * @param v modified
     */
    static void apply(double[] m, double[] v) {
        double x = v[0];
        double y = v[1];
        double z = v[2];
        for (int i = 0; i < 3; i++) {
            v[i] = m[3 * i] * x + m[3 * i + 1] * y + m[3 * i + 2] * z;
        }
    }

    private static double determinant(double[] m) {
        return m[0] * cofactor(m, 0, 0) + m[1] * cofactor(m, 0, 1) + m[2] * cofactor(m, 0, 2);
    }

    /** Counting rows and columns round and round spares the signs. */
    private static double cofactor(double[] m, int row, int col) {
        int r1 = (row + 1) % 3 * 3;
        int r2 = (row + 2) % 3 * 3;
        int c1 = (col + 1) % 3;
        int c2 = (col + 2) % 3;
        return m[r1 + c1] * m[r2 + c2] - m[r1 + c2] * m[r2 + c1];
    }
}
