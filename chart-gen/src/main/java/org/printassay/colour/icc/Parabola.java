package org.printassay.colour.icc;

/** Least-squares parabola t x^2 + u x + v. */
final class Parabola {
    /** Highest foot, L*. */
    private static final double HIGHEST = 50;

    /** Curvature below which the parabola is a line. */
    private static final double FLAT = 1e-10;

    private int points;

    /** Sums of powers of x, 0 to 4, and of those times y. */
    private final double[] x = new double[5];

    private final double[] y = new double[3];

    void add(double atX, double valueY) {
        points++;
        double power = 1;
        for (int i = 0; i < x.length; i++) {
            x[i] += power;
            if (i < y.length) {
                y[i] += power * valueY;
            }
            power *= atX;
        }
    }

    int points() {
        return points;
    }

    /** Where it crosses zero on its rising side, 0-50; 0 when it never does. */
    double foot() {
        double[] m = {x[4], x[3], x[2], x[3], x[2], x[1], x[2], x[1], x[0]};
        double[] v = {y[2], y[1], y[0]};
        if (!Matrix3.hasInverse(m)) {
            return 0;
        }
        Matrix3.apply(Matrix3.inverse(m), v);
        double foot;
        if (Math.abs(v[0]) < FLAT) {
            foot = -v[2] / v[1];
        } else {
            double root = v[1] * v[1] - 4 * v[0] * v[2];
            foot = root <= 0 ? 0 : (-v[1] + Math.sqrt(root)) / (2 * v[0]);
        }
        return Math.max(0, Math.min(HIGHEST, foot)); // NaN cannot arise: v[1] is not 0 then
    }
}
