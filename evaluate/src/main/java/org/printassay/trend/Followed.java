package org.printassay.trend;

/**
 * What is followed over time.
 *
 * @param key name in files and on the command line
 * @param label in a few words
 * @param unit for readers; empty where there is none
 * @param decimals worth showing
 * @param step smallest step that it can take, 1 for levels and counts; above 0
 */
public record Followed(String key, String label, String unit, int decimals, double step) {
    public Followed {
        if (!(step > 0) || !Double.isFinite(step)) {
            throw new IllegalArgumentException(key + " needs a step above 0, got " + step);
        }
    }
}
