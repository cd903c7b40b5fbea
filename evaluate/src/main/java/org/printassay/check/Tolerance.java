package org.printassay.check;

/**
 * What is allowed of one quantity, and how far unchanged prints lie apart. A share counts of the
 * baseline's figure; of limit and share the larger one holds.
 *
 * @param limit largest change, in the unit of the quantity
 * @param limitPercent the same as a share of the baseline's figure
 * @param spread standard deviation between unchanged prints, without what reading adds
 * @param spreadPercent the same as a share
 */
public record Tolerance(double limit, double limitPercent, double spread, double spreadPercent) {
    private static final double PERCENT = 100;

    public Tolerance {
        for (double value : new double[] {limit, limitPercent, spread, spreadPercent}) {
            if (!(value >= 0 && Double.isFinite(value))) {
                throw new IllegalArgumentException("a tolerance holds no " + value);
            }
        }
        if (limit == 0 && limitPercent == 0) {
            throw new IllegalArgumentException("a tolerance needs a limit");
        }
    }

    /** Largest change from a baseline's figure. */
    double limitFrom(double baseline) {
        return Math.max(limit, limitPercent / PERCENT * Math.abs(baseline));
    }

    /** Standard deviation between unchanged prints around a baseline's figure. */
    double spreadAround(double baseline) {
        return Math.max(spread, spreadPercent / PERCENT * Math.abs(baseline));
    }
}
