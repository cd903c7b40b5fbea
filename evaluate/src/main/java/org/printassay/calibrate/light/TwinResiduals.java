package org.printassay.calibrate.light;

import java.util.Arrays;
import org.printassay.colour.Lab;
import org.printassay.robust.Mad;
import org.printassay.robust.Median;

/**
 * How patches of one scan differ from the mean of their twins in one channel, paper 1, and how well
 * a change that varies over the page explains it (Huber's M-estimate; P. Huber, "Robust Estimation
 * of a Location Parameter", Annals of Mathematical Statistics 35, 1964, from memory).
 */
final class TwinResiduals {
    private static final double LEAST_SCALE = 0.02;

    /** Standard deviations from which residuals count by size instead of square. */
    private static final double HELD = 3;

    private static final int STEPS = 6;

    /** What shapes that hold only in about may take too much of a black, paper 1. */
    private static final double LESS_THAN_NONE = 0.1;

    /**
     * A shape fitted to the departures.
     *
     * @param amount of light, paper 1
     * @param significance amount over its standard error
     * @param largestL what it does to the lightness of the patch that it changes most, L*
     * @param gain by how much it explains the departures better than nothing, as chi-square
     */
    record Fit(double amount, double significance, double largestL, double gain) {
        static final Fit NONE = new Fit(0, 0, 0, 0);
    }

    private final TwinData data;
    private final int[] rows;
    private final double[] light;

    /** L* for each unit of light. */
    private final double[] slopes;

    private final double[] off;
    private final double scale;

    /**
     * Residuals of a scan.
     *
     * @param light of each patch, stray light removed, paper 1; not copied
     */
    TwinResiduals(TwinData data, double[] light) {
        this.data = data;
        this.rows = data.rows();
        this.light = light;
        this.off = fromMeans(light);
        this.slopes = Arrays.stream(light).map(one -> Lab.slope(Math.max(0, one))).toArray();
        double[] sizes =
                Arrays.stream(rows).mapToDouble(i -> Math.abs(off[i]) * slopes[i]).toArray();
        this.scale =
                sizes.length == 0
                        ? LEAST_SCALE
                        : Math.max(LEAST_SCALE, Mad.TO_SIGMA * Median.upper(sizes));
    }

    /** Light of a patch, paper 1. */
    double light(int patch) {
        return light[patch];
    }

    /** Standard deviation of a patch among its twins, robust, L*. */
    double scale() {
        return scale;
    }

    private double[] fromMeans(double[] values) {
        double[] sums = new double[data.groups()];
        double[] sizes = new double[data.groups()];
        for (int i : rows) {
            sums[data.group()[i]] += values[i];
            sizes[data.group()[i]]++;
        }
        double[] from = new double[values.length];
        for (int i : rows) {
            from[i] = values[i] - sums[data.group()[i]] / sizes[data.group()[i]];
        }
        return from;
    }

    /** Light that changes lightness at a patch by so many L*. */
    double lightOf(int patch, double deltaL) {
        return deltaL / slopes[patch];
    }

    /** Huber's fit; none where it leaves some patch with much less than no light. */
    Fit fit(double[] change) {
        double[] x = fromMeans(change);
        double amount = 0;
        double squares = 0;
        for (int step = 0; step < STEPS; step++) {
            squares = 0;
            double with = 0;
            for (int i : rows) {
                double z = slopes[i] / scale * (off[i] - amount * x[i]);
                double held = Math.min(1, HELD / Math.max(1e-9, Math.abs(z)));
                double weight = held * Math.pow(slopes[i] / scale, 2);
                squares += weight * x[i] * x[i];
                with += weight * x[i] * off[i];
            }
            if (!(squares > 0)) {
                return Fit.NONE;
            }
            amount = with / squares;
        }
        for (int i = 0; i < light.length; i++) {
            if (amount * change[i] - light[i] > LESS_THAN_NONE) {
                return Fit.NONE;
            }
        }
        double gain = 0;
        double largest = 0;
        for (int i : rows) {
            gain += huber(slopes[i] / scale * off[i]);
            gain -= huber(slopes[i] / scale * (off[i] - amount * x[i]));
            largest = Math.max(largest, change[i] * slopes[i]);
        }
        return new Fit(amount, amount * Math.sqrt(squares), amount * largest, gain);
    }

    /** What all departures come to, in units of a spread, L*. */
    double loss(double spread) {
        return Arrays.stream(rows).mapToDouble(i -> huber(slopes[i] / spread * off[i])).sum();
    }

    private static double huber(double z) {
        double size = Math.abs(z);
        return size <= HELD ? z * z : HELD * (2 * size - HELD);
    }
}
