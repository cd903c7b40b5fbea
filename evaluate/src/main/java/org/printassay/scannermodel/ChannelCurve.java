package org.printassay.scannermodel;

import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Straightens one channel: a rising curve from light as its codes were taken to mean to light as
 * the measured greys say. Fitted to cube roots, in which noise and eyes are about even, as straight
 * pieces with a penalty on bends (P. H. C. Eilers, B. D. Marx, Statist. Sci. 11, 1996) that
 * generalised cross-validation chooses (G. H. Golub, M. Heath, G. Wahba, Technometrics 21, 1979).
 */
final class ChannelCurve {
    private static final int PIECES = 16;
    private static final double[] PENALTIES = {1e-5, 1e-4, 1e-3, 1e-2, 0.1, 1, 10, 100, 1000};

    /** Rise of any piece, at least: a scanner that stands still is not straightened but clipped. */
    private static final double LEAST_SLOPE = 0.05;

    /** Cube roots reach a little beyond those of paper. */
    private static final double TOP = 1.05;

    private final double[] knots;

    private ChannelCurve(double[] knots) {
        this.knots = knots;
    }

    /**
     * Fits.
     *
     * @param from light as the codes were taken to mean
     * @param to light as it should be, on the same scale
     */
    static ChannelCurve fit(List<Double> from, List<Double> to) {
        int n = from.size();
        int m = PIECES + 1;
        double[][] basis = new double[n][m];
        double[] off = new double[n];
        for (int i = 0; i < n; i++) {
            double u = root(from.get(i));
            double at = place(u);
            int low = Math.min(PIECES - 1, (int) at);
            basis[i][low] = 1 - (at - low);
            basis[i][low + 1] = at - low;
            off[i] = root(to.get(i)) - u;
        }
        double least = Double.POSITIVE_INFINITY;
        double[] best = new double[m];
        for (double penalty : PENALTIES) {
            double[][] normal = new double[m][m];
            double[] right = new double[m];
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < m; j++) {
                    right[j] += basis[i][j] * off[i];
                    for (int k = 0; k < m; k++) {
                        normal[j][k] += basis[i][j] * basis[i][k];
                    }
                }
            }
            bends(normal, penalty * n / m);
            CholeskyDecomposition solved =
                    new CholeskyDecomposition(new Array2DRowRealMatrix(normal, false), 1e-6, 0);
            double[] knots = solved.getSolver().solve(new ArrayRealVector(right, false)).toArray();
            RealMatrix inverse = solved.getSolver().getInverse();
            double squares = 0;
            double freedom = 0;
            for (int i = 0; i < n; i++) {
                double fitted = 0;
                for (int j = 0; j < m; j++) {
                    fitted += basis[i][j] * knots[j];
                    for (int k = 0; k < m; k++) {
                        freedom += basis[i][j] * inverse.getEntry(j, k) * basis[i][k];
                    }
                }
                squares += (off[i] - fitted) * (off[i] - fitted);
            }
            double left = Math.max(1e-9, 1 - freedom / n);
            double score = squares / (left * left);
            if (score < least) {
                least = score;
                best = knots;
            }
        }
        return rising(best);
    }

    /** Second differences, and next to nothing on size so that the equations always have an end. */
    private static void bends(double[][] normal, double penalty) {
        for (int k = 1; k < PIECES; k++) {
            int[] at = {k - 1, k, k + 1};
            double[] weight = {1, -2, 1};
            for (int i = 0; i < 3; i++) {
                for (int j = 0; j < 3; j++) {
                    normal[at[i]][at[j]] += penalty * weight[i] * weight[j] * PIECES * PIECES;
                }
            }
        }
        for (int k = 0; k <= PIECES; k++) {
            normal[k][k] += 1e-9;
        }
    }

    private static ChannelCurve rising(double[] off) {
        double[] knots = new double[off.length];
        double step = TOP / PIECES;
        for (int k = 0; k < knots.length; k++) {
            knots[k] = k * step + off[k];
            if (k > 0) {
                knots[k] = Math.max(knots[k], knots[k - 1] + LEAST_SLOPE * step);
            }
        }
        return new ChannelCurve(knots);
    }

    /** Straightened light; not below nothing. */
    double at(double light) {
        double at = place(root(light));
        int low = Math.min(PIECES - 1, (int) at);
        double u = knots[low] + (at - low) * (knots[low + 1] - knots[low]);
        return u <= 0 ? 0 : u * u * u;
    }

    /** Largest change of a cube root between two lights. */
    double largestChange(double from, double to) {
        double most = 0;
        for (double u = root(from); u <= root(to); u += 0.01) {
            most = Math.max(most, Math.abs(Math.cbrt(at(u * u * u)) - u));
        }
        return most;
    }

    private static double place(double u) {
        return Math.max(0, u) / TOP * PIECES;
    }

    private static double root(double light) {
        return Math.cbrt(Math.max(0, light));
    }
}
