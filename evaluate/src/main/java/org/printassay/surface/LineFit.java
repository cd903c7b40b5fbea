package org.printassay.surface;

/**
 * Least squares of a known shape on a ground that may slope.
 *
 * @param height of the shape
 * @param error its standard error, from what is left
 * @param explained sum of squares that the shape accounts for
 * @param left sum of squares that is left
 */
record LineFit(double height, double error, double explained, double left) {
    /** Numbers that a ground and a height take from the values. */
    private static final int TAKEN = 3;

    static LineFit of(double[] shape, double[] values) {
        double[] s = level(shape);
        double[] v = level(values);
        double product = 0;
        double squares = 0;
        double all = 0;
        for (int i = 0; i < s.length; i++) {
            product += s[i] * v[i];
            squares += s[i] * s[i];
            all += v[i] * v[i];
        }
        if (squares == 0) {
            return new LineFit(0, Double.POSITIVE_INFINITY, 0, all);
        }
        double explained = product * product / squares;
        double left = Math.max(0, all - explained);
        double variance = left / Math.max(1, s.length - TAKEN);
        return new LineFit(product / squares, Math.sqrt(variance / squares), explained, left);
    }

    /** Values less the straight line that fits them. */
    private static double[] level(double[] values) {
        int n = values.length;
        double middle = (n - 1) / 2.0;
        double mean = 0;
        double slope = 0;
        double squares = 0;
        for (int i = 0; i < n; i++) {
            mean += values[i] / n;
            slope += (i - middle) * values[i];
            squares += (i - middle) * (i - middle);
        }
        slope = squares == 0 ? 0 : slope / squares;
        double[] out = new double[n];
        for (int i = 0; i < n; i++) {
            out[i] = values[i] - mean - slope * (i - middle);
        }
        return out;
    }
}
