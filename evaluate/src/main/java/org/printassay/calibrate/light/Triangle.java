package org.printassay.calibrate.light;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;

/** Lower triangles whose square is a covariance: one column for each independent cause. */
final class Triangle {
    private static final double ASYMMETRY = 1e-6;

    private Triangle() {}

    /** Of a covariance; its diagonal alone where it is none by rounding. */
    static double[][] of(double[][] covariance) {
        int p = covariance.length;
        if (p == 0) {
            return covariance;
        }
        // Rounding leaves tiny numbers on both sides that are not alike at all.
        double[][] even = new double[p][p];
        for (int k = 0; k < p; k++) {
            for (int l = 0; l < p; l++) {
                even[k][l] = (covariance[k][l] + covariance[l][k]) / 2;
            }
        }
        try {
            return new CholeskyDecomposition(new Array2DRowRealMatrix(even, false), ASYMMETRY, 0)
                    .getL()
                    .getData();
        } catch (NonPositiveDefiniteMatrixException e) {
            double[][] diagonal = new double[p][p];
            for (int k = 0; k < p; k++) {
                diagonal[k][k] = Math.sqrt(Math.max(0, covariance[k][k]));
            }
            return diagonal;
        }
    }
}
