package org.printassay.colour;

/** ISO 5-3 spectral products every 10 nm: visual, status A red green blue, status T likewise. */
final class DensityWeights {
    private static final double[][] ROWS = NumberTable.rows("density-products-10nm.csv");

    private DensityWeights() {}

    /**
     * Reflectance factors as the receivers see them, perfect diffuser = 1; the end bands of the
     * spectrum stand for what lies beyond them.
     */
    static double[] factors(Spectrum spectrum) {
        double[] sums = new double[ROWS[0].length - 1];
        double[] totals = new double[sums.length];
        for (double[] row : ROWS) {
            double factor = spectrum.at((int) row[0]);
            for (int c = 0; c < sums.length; c++) {
                sums[c] += row[c + 1] * factor;
                totals[c] += row[c + 1];
            }
        }
        for (int c = 0; c < sums.length; c++) {
            sums[c] /= totals[c];
        }
        return sums;
    }
}
