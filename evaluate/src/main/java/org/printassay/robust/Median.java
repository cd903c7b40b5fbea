package org.printassay.robust;

import java.util.Arrays;

/** The middle of values. */
public final class Median {
    private Median() {}

    /**
     * The median, the mean of the middle two when their number is even; NaN of nothing.
     *
     * @param values left as they are; must not hold NaN
     */
    public static double of(double... values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int n = sorted.length;
        return n == 0 ? Double.NaN : (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
    }

    /**
     * The median as one of the values, the higher of the middle two when their number is even; NaN
     * of nothing.
     *
     * @param values left as they are; must not hold NaN
     */
    public static double upper(double... values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted.length == 0 ? Double.NaN : sorted[sorted.length / 2];
    }
}
