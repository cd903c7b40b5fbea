package org.printassay.surface;

import java.util.Arrays;
import org.printassay.robust.Mad;
import org.printassay.robust.Median;

/** Slow changes of a profile, and robust numbers over values. */
final class RunningMedian {
    private static final double BLOCK_MM = 0.5;

    /** Blocks whose median makes one point of the baseline: 4.5 mm. */
    private static final int BLOCKS = 9;

    private RunningMedian() {}

    /**
     * Departures from a running median, relative to it: lines up to a millimetre or two stay whole,
     * tone and slow unevenness go.
     */
    static double[] departures(double[] values, double stepMm) {
        int size = Math.max(1, (int) Math.round(BLOCK_MM / stepMm));
        int count = Math.max(1, values.length / size);
        double[] medians = new double[count];
        for (int b = 0; b < count; b++) {
            int to = b == count - 1 ? values.length : (b + 1) * size;
            medians[b] = Median.of(Arrays.copyOfRange(values, b * size, to));
        }
        double[] smooth = new double[count];
        for (int b = 0; b < count; b++) {
            int half = Math.min(BLOCKS / 2, Math.min(b, count - 1 - b));
            smooth[b] = Median.of(Arrays.copyOfRange(medians, b - half, b + half + 1));
        }
        double[] departures = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            double at = (i + 0.5) / size - 0.5;
            int left = (int) Math.max(0, Math.min(count - 1.0, Math.floor(at)));
            int right = Math.min(count - 1, left + 1);
            double share = Math.min(1, Math.max(0, at - left));
            double base = (1 - share) * smooth[left] + share * smooth[right];
            departures[i] = base > 0 ? values[i] / base - 1 : 0;
        }
        return departures;
    }

    /** Robust standard deviation about zero. */
    static double deviation(double[] values) {
        return Mad.sigma(values);
    }

    /** Mean of the middle half of values, at least two: one strip with dust has no say. */
    static double middle(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int cut = sorted.length / 4;
        double sum = 0;
        for (int i = cut; i < sorted.length - cut; i++) {
            sum += sorted[i];
        }
        return sum / (sorted.length - 2 * cut);
    }

    /** {@link #middle} of all strips, bin by bin. */
    static double[] middle(double[][] strips) {
        double[] out = new double[strips[0].length];
        double[] at = new double[strips.length];
        for (int i = 0; i < out.length; i++) {
            for (int s = 0; s < at.length; s++) {
                at[s] = strips[s][i];
            }
            out[i] = middle(at);
        }
        return out;
    }
}
