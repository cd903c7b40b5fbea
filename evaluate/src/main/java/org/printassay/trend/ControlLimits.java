package org.printassay.trend;

import java.util.List;

/**
 * Where single values lie while nothing changes: mean and three standard deviations, the deviation
 * told from the mean difference between neighbours, which a slow drift or a few steps hardly widen.
 *
 * <p>Source: NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.2, "Individuals Control
 * Charts": limits are the mean plus and minus 3 MR / 1.128.
 *
 * @param centre what is usual
 * @param sigma standard deviation of single values; above 0
 * @param values how many values the deviation was told from
 * @param centreError standard error of the centre
 * @param halfWidth how far the limits are from the centre
 */
public record ControlLimits(
        double centre, double sigma, int values, double centreError, double halfWidth) {
    /** Mean range of two normal values in standard deviations (d2 for n = 2, same source). */
    public static final double RANGE_OF_TWO = 1.128;

    /** How many standard deviations the limits are from the centre. */
    public static final double WIDTH = 3;

    /** With fewer values than this the limits would say next to nothing (common practice). */
    public static final int FEWEST = 8;

    /** With fewer values than this the limits are provisional (common practice). */
    public static final int ENOUGH = 20;

    /**
     * Limits around the mean of values.
     *
     * @param values in the order of time, at least two
     * @param step smallest step of the values: limits are never nearer to the centre, or a value at
     *     the edge between two steps would be told as a change
     */
    public static ControlLimits of(List<Double> values, double step) {
        double sigma = sigma(values, step);
        double error = sigma / Math.sqrt(values.size());
        return new ControlLimits(mean(values), sigma, values.size(), error, WIDTH * sigma);
    }

    /**
     * Limits around the mean of a few values that are no series. They are wider, by the error of
     * that mean: with one value by sqrt(2), for both it and what is compared with it vary.
     *
     * @param few the values that the centre is the mean of
     * @param values a series that tells the spread, as for {@link #of}
     */
    public static ControlLimits around(List<Double> few, List<Double> values, double step) {
        double sigma = sigma(values, step);
        double error = sigma / Math.sqrt(few.size());
        return new ControlLimits(
                mean(few), sigma, values.size(), error, WIDTH * Math.hypot(sigma, error));
    }

    private static double sigma(List<Double> values, double step) {
        return Math.max(meanMovingRange(values) / RANGE_OF_TWO, step / WIDTH);
    }

    /** Mean difference between neighbours, always positive. */
    public static double meanMovingRange(List<Double> values) {
        if (values.size() < 2) {
            throw new IllegalArgumentException("a range needs two values, got " + values.size());
        }
        double sum = 0;
        for (int i = 1; i < values.size(); i++) {
            sum += Math.abs(values.get(i) - values.get(i - 1));
        }
        return sum / (values.size() - 1);
    }

    /**
     * Degrees of freedom that a deviation told from mean differences between neighbours is worth:
     * those of a sample deviation of the same relative variance.
     *
     * <p>The variance of the mean of m = n - 1 ranges follows from those of one range of two normal
     * values, 4/pi (pi/2 - 1), and from the covariance of neighbouring ranges, whose differences
     * have the correlation -1/2: 4/pi (sqrt(3)/2 + pi/12 - 1), in squares of the deviation. The
     * approximation of variances by degrees of freedom is that of ISO/IEC Guide 98-3, G.4.
     *
     * @param values how many values, at least two
     */
    public static int freedom(int values) {
        double ranges = values - 1.0;
        double own = Math.PI / 2 - 1;
        double neighbours = Math.sqrt(3) / 2 + Math.PI / 12 - 1;
        double relative = (ranges * own + 2 * (ranges - 1) * neighbours) / (ranges * ranges);
        return (int) Math.max(1, Math.floor(1 / (2 * relative)));
    }

    static double mean(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    }

    /** Lower limit. */
    public double lower() {
        return centre - halfWidth;
    }

    /** Upper limit. */
    public double upper() {
        return centre + halfWidth;
    }

    /** Whether a value lies outside. */
    public boolean beyond(double value) {
        // Sums of decimals: a value that is exactly on a limit must not fall outside by a last bit.
        return Math.abs(value - centre) > halfWidth * (1 + 1e-9);
    }

    /** The value, or the limit that it lies beyond. */
    double held(double value) {
        return Math.min(upper(), Math.max(lower(), value));
    }

    /** Whether too few values were there for limits to rely on. */
    public boolean provisional() {
        return values < ENOUGH;
    }
}
