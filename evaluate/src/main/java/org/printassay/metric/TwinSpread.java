package org.printassay.metric;

/**
 * Spread of one patch between twins.
 *
 * @param sigma standard deviation; NaN when nothing was measured twice
 * @param freedom degrees of freedom it rests on
 */
record TwinSpread(double sigma, int freedom) {
    /** Fewer degrees of freedom than this, as two whites and two blacks give, tell no spread. */
    private static final int FEWEST_KNOWN = 5;

    boolean known() {
        return freedom >= FEWEST_KNOWN;
    }

    /** Part of a budget: so many times the spread; none where it is not known. */
    Budget.Part part(double times) {
        return new Budget.Part(Budget.Kind.RANDOM, times * errorOf(1), freedom);
    }

    /** Standard error of a mean of n patches; 0 where the spread is not known. */
    double errorOf(int n) {
        return known() ? sigma / Math.sqrt(n) : 0;
    }
}
