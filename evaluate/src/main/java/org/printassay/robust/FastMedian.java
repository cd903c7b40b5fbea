package org.printassay.robust;

/** Medians without sorting. */
public final class FastMedian {
    private FastMedian() {}

    /**
     * The median of the first {@code count} values, the higher of the middle two when their number
     * is even.
     *
     * @param values put into another order; must not hold NaN
     * @param count at least 1
     */
    public static float upper(float[] values, int count) {
        // Selection by Hoare's method (1961, Algorithm 65: Find; from memory).
        int wanted = count / 2;
        int from = 0;
        int to = count - 1;
        while (from < to) {
            float pivot = values[(from + to) >>> 1];
            int i = from;
            int j = to;
            while (i <= j) {
                while (values[i] < pivot) {
                    i++;
                }
                while (values[j] > pivot) {
                    j--;
                }
                if (i <= j) {
                    float held = values[i];
                    values[i++] = values[j];
                    values[j--] = held;
                }
            }
            if (wanted <= j) {
                to = j;
            } else if (wanted >= i) {
                from = i;
            } else {
                break;
            }
        }
        return values[wanted];
    }
}
