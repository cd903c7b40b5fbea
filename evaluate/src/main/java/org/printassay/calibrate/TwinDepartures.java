package org.printassay.calibrate;

/**
 * How patches of one code depart from each other in two readings, put side by side: a print's
 * fingerprint. Two readings of one print agree on it, whatever made them; those of two prints do
 * not.
 */
public final class TwinDepartures {
    /** A patch that dirt or an edge spoiled in one reading would drown all others. */
    private static final double LARGEST = 1.5;

    private double product;
    private double squareFirst;
    private double squareSecond;
    private double noiseFirst;
    private double noiseSecond;
    private int count;

    /**
     * Adds one coordinate of all twins of one code.
     *
     * @param first in the first reading; not modified
     * @param second in the second, in the same order; not modified
     * @param errorsFirst standard errors in the first; not modified
     * @param errorsSecond standard errors in the second; not modified
     */
    public void add(double[] first, double[] second, double[] errorsFirst, double[] errorsSecond) {
        double meanFirst = mean(first);
        double meanSecond = mean(second);
        for (int i = 0; i < first.length; i++) {
            double a = first[i] - meanFirst;
            double b = second[i] - meanSecond;
            if (Math.abs(a) < LARGEST && Math.abs(b) < LARGEST) {
                product += a * b;
                squareFirst += a * a;
                squareSecond += b * b;
                noiseFirst += errorsFirst[i] * errorsFirst[i];
                noiseSecond += errorsSecond[i] * errorsSecond[i];
                count++;
            }
        }
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }

    /** How many departures there are. */
    public int count() {
        return count;
    }

    /** Their correlation; 0 where one reading has none. */
    public double agreement() {
        return squareFirst > 0 && squareSecond > 0
                ? product / Math.sqrt(squareFirst * squareSecond)
                : 0;
    }

    /** The correlation that readings of one print would have, if they err as they say. */
    public double expected() {
        return squareFirst > 0 && squareSecond > 0
                ? Math.sqrt(
                        Math.max(0, 1 - noiseFirst / squareFirst)
                                * Math.max(0, 1 - noiseSecond / squareSecond))
                : 0;
    }

    /**
     * The least correlation that readings of one print would have, if the print departs as much as
     * the second reading says, less its noise, or as the first says, whichever is less: what else
     * the first shows is its own.
     */
    public double leastExpected() {
        double print = Math.min(squareSecond - noiseSecond, squareFirst);
        return print > 0 ? print / Math.sqrt(squareFirst * squareSecond) : 0;
    }
}
