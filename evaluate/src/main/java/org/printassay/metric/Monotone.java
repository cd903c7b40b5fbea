package org.printassay.metric;

/** Least squares fit of a rising sequence by pooling neighbours that run backwards. */
final class Monotone {
    private Monotone() {}

    /**
     * Isotonic regression (R. E. Barlow et al., Statistical Inference under Order Restrictions,
     * 1972; pool adjacent violators).
     *
     * @param values in order
     * @param weights positive, as many
     */
    static double[] fit(double[] values, int[] weights) {
        int n = values.length;
        double[] mean = new double[n];
        double[] weight = new double[n];
        int[] size = new int[n];
        int blocks = 0;
        for (int i = 0; i < n; i++) {
            mean[blocks] = values[i];
            weight[blocks] = weights[i];
            size[blocks] = 1;
            while (blocks > 0 && mean[blocks - 1] > mean[blocks]) {
                double total = weight[blocks - 1] + weight[blocks];
                mean[blocks - 1] =
                        (weight[blocks - 1] * mean[blocks - 1] + weight[blocks] * mean[blocks])
                                / total;
                weight[blocks - 1] = total;
                size[blocks - 1] += size[blocks];
                blocks--;
            }
            blocks++;
        }
        double[] fit = new double[n];
        int at = 0;
        for (int b = 0; b < blocks; b++) {
            for (int k = 0; k < size[b]; k++) {
                fit[at++] = mean[b];
            }
        }
        return fit;
    }
}
