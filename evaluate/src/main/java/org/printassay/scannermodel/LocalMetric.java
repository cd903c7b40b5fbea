package org.printassay.scannermodel;

import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;

/**
 * CIEDE2000 near one colour as a quadratic form: dE00^2 = d' M d for small CIELAB steps d. Found by
 * second differences of the formula itself.
 */
final class LocalMetric {
    /** Small against what the formula's weights change over, large against rounding. */
    private static final double STEP = 0.05;

    private LocalMetric() {}

    /**
     * A root of M: rows r with dE00^2 = sum of (r . d)^2.
     *
     * @return three rows of three, upper triangular
     */
    static double[][] rootAt(Lab lab) {
        double[] own = new double[3];
        for (int i = 0; i < 3; i++) {
            own[i] = square(lab, i, i);
        }
        double[][] m = new double[3][3];
        for (int i = 0; i < 3; i++) {
            m[i][i] = own[i];
            for (int k = 0; k < i; k++) {
                m[i][k] = (square(lab, i, k) - own[i] - own[k]) / 2;
                m[k][i] = m[i][k];
            }
        }
        return transposedCholesky(m);
    }

    /** dE00^2 over STEP^2 of a step along one axis, or along two at once. */
    private static double square(Lab lab, int axis, int other) {
        double[] step = new double[3];
        step[axis] = STEP / 2;
        step[other] = STEP / 2;
        Lab low = new Lab(lab.l() - step[0], lab.a() - step[1], lab.b() - step[2]);
        Lab high = new Lab(lab.l() + step[0], lab.a() + step[1], lab.b() + step[2]);
        double apart = DeltaE.ciede2000(low, high) / STEP;
        return apart * apart;
    }

    private static double[][] transposedCholesky(double[][] m) {
        double[][] upper = new double[3][3];
        for (int k = 0; k < 3; k++) {
            for (int i = k; i < 3; i++) {
                double sum = m[i][k];
                for (int j = 0; j < k; j++) {
                    sum -= upper[j][i] * upper[j][k];
                }
                // Where rounding leaves nothing the axis hardly counts, but it still does.
                upper[k][i] = i == k ? Math.sqrt(Math.max(sum, 1e-6)) : sum / upper[k][k];
            }
        }
        return upper;
    }
}
