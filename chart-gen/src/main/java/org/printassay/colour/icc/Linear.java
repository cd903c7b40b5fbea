package org.printassay.colour.icc;

/** A matrix of three rows and columns as a step. */
final class Linear implements Step {
    /** How near to 1 and 0 makes a product of two matrices no change at all. */
    private static final double SAME = 1e-5;

    private final double[] m;

    /**
     * A matrix, row-major.
     *
     * @param m not copied
     */
    Linear(double[] m) {
        this.m = m;
    }

    @Override
    public void apply(double[] values) {
        Matrix3.apply(m, values);
    }

    /** This matrix, then another. */
    Linear then(Linear next) {
        double[] product = new double[9];
        for (int row = 0; row < 3; row++) {
            for (int col = 0; col < 3; col++) {
                for (int i = 0; i < 3; i++) {
                    product[3 * row + col] += next.m[3 * row + i] * m[3 * i + col];
                }
            }
        }
        return new Linear(product);
    }

    /** Whether it changes next to nothing. */
    boolean isIdentity() {
        for (int i = 0; i < 9; i++) {
            if (Math.abs(m[i] - (i % 4 == 0 ? 1 : 0)) >= SAME) {
                return false;
            }
        }
        return true;
    }
}
