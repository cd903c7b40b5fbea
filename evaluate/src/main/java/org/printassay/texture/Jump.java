package org.printassay.texture;

import java.util.Arrays;
import org.printassay.robust.Median;

/**
 * By how much values jump at a place: the difference there of the lines that they follow before and
 * after it. Lines are repeated medians (Siegel, Biometrika 69, 1982, from memory), which a hair or
 * a scratch across the values hardly moves as long as it is much less than half of a side.
 */
final class Jump {
    private Jump() {}

    /**
     * The jump at a place.
     *
     * @param values along a profile
     * @param at the first value after the place
     * @param gap values left out on each side of the place, where blur mixes both
     * @param count values on each side, fewer where the profile ends
     */
    static double at(double[] values, int at, int gap, int count) {
        double[] before =
                Arrays.copyOfRange(values, Math.max(0, at - gap - count), Math.max(0, at - gap));
        double[] after =
                Arrays.copyOfRange(
                        values,
                        Math.min(values.length, at + gap),
                        Math.min(values.length, at + gap + count));
        return line(after, -gap - 0.5) - line(before, before.length + gap - 0.5);
    }

    /** The value at a place, counted from the first, of the line that values follow. */
    private static double line(double[] values, double place) {
        double[] slopes = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            slopes[i] = medianSlope(values, i);
        }
        double slope = Median.of(slopes);
        double[] there = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            there[i] = values[i] + slope * (place - i);
        }
        return Median.of(there);
    }

    /** Of the lines from one value to the others. */
    private static double medianSlope(double[] values, int from) {
        double[] slopes = new double[values.length - 1];
        for (int i = 0; i < slopes.length; i++) {
            int other = i < from ? i : i + 1;
            slopes[i] = (values[other] - values[from]) / (other - from);
        }
        return Median.of(slopes);
    }
}
