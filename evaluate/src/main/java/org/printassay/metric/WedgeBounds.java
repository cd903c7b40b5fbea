package org.printassay.metric;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * Intervals of the distances D of levels from the anchor, L*.
 *
 * <p>Levels borrow strength from their neighbours through monotonicity alone: where tone does not
 * run backwards, D of a level is at most the mean of D over any window that begins there and goes
 * outwards, and at least the mean over any window that ends there. The upper bound is the least of
 * such window means plus their error, the lower bound the largest minus theirs. A sharp knee is not
 * smeared: a window that crosses it gives a weak bound, never a wrong one. (The idea of bands for
 * monotone curves: L. Duembgen, "New goodness-of-fit tests and their application to nonparametric
 * confidence sets", Ann. Statist. 26(1), 1998.)
 *
 * @param levels outwards, the anchor first
 * @param spread of one patch, L*
 */
record WedgeBounds(WedgeLevels levels, TwinSpread spread) {
    /** Tail of longer windows: smaller, because the best of several is taken. */
    private static final double WINDOW_TAIL = 0.965;

    static final int[] LONGER_WINDOWS = {2, 4, 8, 16};
    private static final int[] WINDOWS = {1, 2, 4, 8};

    /** Standard errors from which a step backwards counts as real. */
    private static final double REVERSAL = 4;

    /**
     * Standard errors from which a fall, however gentle, ends the borrowing from neighbours. The
     * largest of many is taken; this value costs wedges without reversals 7 to 10 percent of width.
     */
    private static final double DOUBTFUL_FALL = 3;

    /**
     * Best estimate of each D: as read, or where levels borrow from their neighbours the closest
     * that does not run backwards, and that keeps to the bounds.
     *
     * @param bounds of {@link #bounds}
     */
    double[] best(double[][] bounds) {
        double[] best = levels.d().clone();
        int n = best.length;
        if (!spread.known() || !monotone()) {
            return best;
        }
        // Black itself is no part of it: greys may be darker.
        double[] fit =
                Monotone.fit(
                        Arrays.copyOfRange(best, 1, n), Arrays.copyOfRange(levels.counts(), 1, n));
        for (int i = 1; i < n; i++) {
            best[i] = Math.max(bounds[0][i], Math.min(bounds[1][i], fit[i - 1]));
        }
        return best;
    }

    private boolean monotone() {
        return reversals().isEmpty() && largestFall() < DOUBTFUL_FALL;
    }

    /**
     * Lower and upper bounds of the 95 % interval of each D.
     *
     * @param anchors twins of the anchor
     */
    double[][] bounds(int anchors) {
        int n = levels.d().length;
        double[][] bounds = new double[2][n];
        double single = 0;
        double longer = 0;
        if (spread.known()) {
            TDistribution t = new TDistribution(null, spread.freedom());
            single = t.inverseCumulativeProbability(WedgeJudge.TAIL);
            longer = t.inverseCumulativeProbability(WINDOW_TAIL);
        }
        for (int i = 1; i < n; i++) {
            double width = width(anchors, single, i, 1);
            bounds[0][i] = levels.d()[i] - width;
            bounds[1][i] = levels.d()[i] + width;
        }
        if (!spread.known() || !monotone()) {
            return bounds;
        }
        for (int i = 1; i < n; i++) {
            for (int length : LONGER_WINDOWS) {
                if (i + length <= n) {
                    double width = width(anchors, longer, i, length);
                    bounds[1][i] = Math.min(bounds[1][i], levels.mean(i, length) + width);
                }
                if (i - length + 1 >= 1) {
                    int begin = i - length + 1;
                    double width = width(anchors, longer, begin, length);
                    bounds[0][i] = Math.max(bounds[0][i], levels.mean(begin, length) - width);
                }
            }
            if (bounds[0][i] > bounds[1][i]) {
                // Neighbours that contradict each other lend nothing.
                double width = width(anchors, single, i, 1);
                bounds[0][i] = levels.d()[i] - width;
                bounds[1][i] = levels.d()[i] + width;
            }
        }
        return bounds;
    }

    /** Half-width for the mean of a window. */
    private double width(int anchors, double tail, int begin, int length) {
        double random = spread.known() ? error(levels.sum(begin, length), anchors) : 0;
        double coded =
                Math.max(tail, WedgeJudge.NORMAL_TAIL) * levels.codedFromAnchor(begin, length);
        double own = Math.hypot(tail * random, coded);
        return Math.hypot(own, Coverage.NORMAL_95 * levels.shared(begin, length));
    }

    private double error(int count, int anchors) {
        return spread.sigma() * Math.sqrt(1.0 / count + 1.0 / anchors);
    }

    /**
     * Largest fall from any window of levels to any later one, in its standard errors: finds tone
     * that turns back gently, without a single large step.
     */
    private double largestFall() {
        double largest = 0;
        for (int before : WINDOWS) {
            for (int after : WINDOWS) {
                double highest = Double.NEGATIVE_INFINITY;
                int at = 0;
                for (int k = 1 + before; k + after <= levels.d().length; k++) {
                    double mean = levels.mean(k - before, before);
                    if (mean > highest) {
                        highest = mean;
                        at = k - before;
                    }
                    double fall = highest - levels.mean(k, after);
                    double random = error(levels.sum(k, after), levels.sum(at, before));
                    double own = Math.hypot(random, levels.codedApart(k, at));
                    double error = Math.hypot(own, levels.shared(k, after, at, before));
                    largest = Math.max(largest, fall / error);
                }
            }
        }
        return largest;
    }

    /** Levels that lie surely nearer the anchor than those before them, by their place. */
    List<Integer> reversals() {
        List<Integer> reversed = new ArrayList<>();
        if (!spread.known()) {
            return reversed;
        }
        double[] d = levels.d();
        for (int i = 2; i < d.length; i++) {
            double random = error(levels.counts()[i], levels.counts()[i - 1]);
            double own = Math.hypot(random, levels.codedApart(i, i - 1));
            double error = Math.hypot(own, levels.shared(i, 1, i - 1, 1));
            if (d[i] - d[i - 1] < -REVERSAL * error) {
                reversed.add(i);
            }
        }
        return reversed;
    }
}
