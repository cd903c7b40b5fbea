package org.printassay.texture;

import java.util.Arrays;

/** Order statistics. */
public final class Order {
    private Order() {}

    /** Median; NaN of nothing. */
    public static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int n = sorted.length;
        return n == 0 ? Double.NaN : (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
    }
}
