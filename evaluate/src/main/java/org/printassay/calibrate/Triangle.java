package org.printassay.calibrate;

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
        try {
            return new CholeskyDecomposition(
                            new Array2DRowRealMatrix(covariance, true), ASYMMETRY, 0)
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
