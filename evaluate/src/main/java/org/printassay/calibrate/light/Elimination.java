package org.printassay.calibrate.light;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;
import org.jspecify.annotations.Nullable;

/**
 * One step of separable least squares: numbers that belong to one group of rows each are eliminated
 * (variable projection), the few that all rows share are solved for.
 */
final class Elimination {
    private static final double SINGULAR = 1e-7;

    private Elimination() {}

    /**
     * Takes out of every vector what a change of the groups' own numbers could make.
     *
     * @param columns changed
     * @param residuals changed
     * @param factor change of each row by its group's number
     * @param group of each row
     */
    static void project(
            double[][] columns, double[] residuals, double[] factor, int[] group, int groups) {
        int n = factor.length;
        double[] squares = new double[groups];
        for (int i = 0; i < n; i++) {
            squares[group[i]] += factor[i] * factor[i];
        }
        for (double[] column : columns) {
            project(column, factor, group, squares);
        }
        project(residuals, factor, group, squares);
    }

    private static void project(double[] vector, double[] factor, int[] group, double[] squares) {
        double[] sums = new double[squares.length];
        for (int i = 0; i < vector.length; i++) {
            sums[group[i]] += factor[i] * vector[i];
        }
        for (int i = 0; i < vector.length; i++) {
            int g = group[i];
            if (squares[g] > 0) {
                vector[i] -= factor[i] * sums[g] / squares[g];
            }
        }
    }

    /** Least squares into {@code change} (modified); returns the covariance, null when singular. */
    static double @Nullable [][] solve(double[][] columns, double[] residuals, double[] change) {
        int p = columns.length;
        if (p == 0) {
            return new double[0][0];
        }
        double[][] normal = new double[p][p];
        double[] right = new double[p];
        double[] size = new double[p];
        for (int k = 0; k < p; k++) {
            size[k] = Math.sqrt(dot(columns[k], columns[k]));
            if (!(size[k] > 0)) {
                return null;
            }
        }
        for (int k = 0; k < p; k++) {
            right[k] = dot(columns[k], residuals) / size[k];
            for (int l = 0; l <= k; l++) {
                normal[k][l] = dot(columns[k], columns[l]) / (size[k] * size[l]);
                normal[l][k] = normal[k][l];
            }
        }
        try {
            RealMatrix inverse =
                    new CholeskyDecomposition(
                                    new Array2DRowRealMatrix(normal, false), 1e-10, SINGULAR)
                            .getSolver()
                            .getInverse();
            double[] solution = inverse.operate(right);
            double[][] covariance = inverse.getData();
            for (int k = 0; k < p; k++) {
                change[k] = solution[k] / size[k];
                for (int l = 0; l < p; l++) {
                    covariance[k][l] /= size[k] * size[l];
                }
            }
            return covariance;
        } catch (NonPositiveDefiniteMatrixException e) {
            return null;
        }
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
