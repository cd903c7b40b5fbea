package org.printassay.robust;

import java.util.Arrays;

/** Standard deviations by the median of distances, which outliers hardly move. */
public final class Mad {
    /** Standard deviations in one median absolute deviation of a normal distribution. */
    public static final double TO_SIGMA = 1.4826;

    private Mad() {}

    /**
     * The standard deviation of normal values; NaN of nothing.
     *
     * @param departures of each from the middle of all, or from what it should be; left as they
     *     are; must not hold NaN
     */
    public static double sigma(double... departures) {
        return TO_SIGMA * Median.of(Arrays.stream(departures).map(Math::abs).toArray());
    }
}
