package org.printassay.trend;

import java.util.ArrayList;
import java.util.List;

/**
 * Exponentially weighted moving average: finds small lasting shifts that single values hide.
 *
 * <p>Source: NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.4, "EWMA Control
 * Charts": the average starts at the centre; its limits are 3 s sqrt(w / (2 - w)) from there.
 */
public final class RunningMean {
    /** Share of the newest value; the source recommends 0.2 to 0.3. */
    public static final double WEIGHT = 0.2;

    private RunningMean() {}

    /** The average after each value. */
    public static List<Double> over(List<Double> values, double start, double weight) {
        List<Double> out = new ArrayList<>(values.size());
        double mean = start;
        for (double value : values) {
            mean = weight * value + (1 - weight) * mean;
            out.add(mean);
        }
        return out;
    }

    /** How far from the centre its limits are. */
    public static double reach(double sigma, double weight) {
        return ControlLimits.WIDTH * sigma * Math.sqrt(weight / (2 - weight));
    }
}
