package org.printassay.metric;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.math3.distribution.TDistribution;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.reading.ContrastDoubt;

/**
 * Which levels can be told from black, or from paper. One engine serves both ends: it walks
 * outwards from the anchor (level 0 or 255) over the tested levels and judges D, the distance in L*
 * from the pooled anchor.
 *
 * <p>Levels borrow strength from their neighbours through monotonicity alone: where tone does not
 * run backwards, D of a level is at most the mean of D over any window that begins there and goes
 * outwards, and at least the mean over any window that ends there. The upper bound is the least of
 * such window means plus their error, the lower bound the largest minus theirs. A sharp knee is not
 * smeared: a window that crosses it gives a weak bound, never a wrong one. (The idea of bands for
 * monotone curves: L. Duembgen, "New goodness-of-fit tests and their application to nonparametric
 * confidence sets", Ann. Statist. 26(1), 1998.)
 */
final class WedgeJudge {
    /** Tested levels reach this far from the anchor. */
    private static final int REACH = 48;

    /**
     * Tail of a single level. A result needs a whole run of levels to agree, which is rarer than
     * one level by itself: with these tails 98 % of simulated wedges hold the truth (see the
     * tests).
     */
    static final double TAIL = 0.95;

    /** Tail of longer windows: smaller, because the best of several is taken. */
    private static final double WINDOW_TAIL = 0.965;

    /** Half-width, in standard errors, of what could not be estimated and no twins show. */
    static final double UNESTIMATED_95 = 1.96;

    private static final int[] LONGER_WINDOWS = {2, 4, 8, 16};
    private static final int[] WINDOWS = {1, 2, 4, 8};

    /** Standard errors from which a step backwards counts as real. */
    private static final double REVERSAL = 4;

    /**
     * Standard errors from which a fall, however gentle, ends the borrowing from neighbours. The
     * largest of many is taken; this value costs wedges without reversals 7 to 10 percent of width.
     */
    private static final double DOUBTFUL_FALL = 3;

    /** As {@link #TAIL}, for an error that is known rather than seen in a spread. */
    private static final double NORMAL_TAIL = 1.645;

    private final Neutrals neutrals;
    private final boolean fromPaper;
    private final double threshold;
    private final IntToDoubleFunction aimL;

    private WedgeJudge(
            Neutrals neutrals, boolean fromPaper, double threshold, IntToDoubleFunction aimL) {
        this.neutrals = neutrals;
        this.fromPaper = fromPaper;
        this.threshold = threshold;
        this.aimL = aimL;
    }

    /**
     * Judges shadows.
     *
     * @param aimL aim L* of a level
     * @return empty when level 0 or the levels above it were not measured
     */
    static Optional<Wedge> shadows(Neutrals neutrals, double threshold, IntToDoubleFunction aimL) {
        return new WedgeJudge(neutrals, false, threshold, aimL).judge();
    }

    /** Judges highlights; the mirror of {@link #shadows}. */
    static Optional<Wedge> highlights(
            Neutrals neutrals, double threshold, IntToDoubleFunction aimL) {
        return new WedgeJudge(neutrals, true, threshold, aimL).judge();
    }

    private Optional<Wedge> judge() {
        int anchorLevel = fromPaper ? 255 : 0;
        Optional<LevelData> anchor = neutrals.level(anchorLevel);
        List<LevelData> tested = new ArrayList<>();
        for (LevelData data : neutrals.all()) {
            boolean known =
                    data.level() == anchorLevel
                            || (!neutrals.covered(data.level())
                                    && !neutrals.outOfLine(data.level()));
            if (known && Math.abs(data.level() - anchorLevel) <= REACH) {
                tested.add(data);
            }
        }
        if (anchor.isEmpty() || tested.size() < 3) {
            return Optional.empty();
        }
        if (fromPaper) {
            Collections.reverse(tested);
        }
        TwinSpread spread = spread(neutrals, fromPaper);
        int n = tested.size();
        double[] d = new double[n];
        double[] aim = new double[n];
        int[] counts = new int[n];
        double[] coded = new double[n];
        double sign = fromPaper ? -1 : 1;
        for (int i = 0; i < n; i++) {
            d[i] = sign * (tested.get(i).mean().l() - anchor.get().mean().l());
            aim[i] =
                    sign
                            * (aimL.applyAsDouble(tested.get(i).level())
                                    - aimL.applyAsDouble(anchorLevel));
            counts[i] = tested.get(i).count();
            coded[i] = neutrals.codingError(tested.get(i).level());
        }
        WedgeLevels levels = new WedgeLevels(d, counts, coded, assumed(tested, anchor.get()));
        List<Integer> reversals = reversals(tested, levels, spread);
        boolean monotone = reversals.isEmpty() && largestFall(levels, spread) < DOUBTFUL_FALL;
        double[][] bounds = bounds(levels, spread, anchor.get().count(), monotone);
        double[] fit = Monotone.fit(d, counts);
        ContrastDoubt.End doubt = neutrals.set().contrast().at(fromPaper);
        List<LevelStep> steps = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double low = doubt.low(bounds[0][i]);
            double high = doubt.high(bounds[1][i]);
            Verdict verdict = verdict(low, high);
            steps.add(
                    new LevelStep(
                            tested.get(i).level(),
                            d[i],
                            low,
                            high,
                            aim[i],
                            verdict,
                            tested.get(i).mean(),
                            counts[i]));
        }
        return Optional.of(summary(steps, fit, aim, spread.known(), reversals));
    }

    private double[][] assumed(List<LevelData> tested, LevelData anchor) {
        double[] black = neutrals.assumed(anchor);
        double[][] causes = new double[black.length][tested.size()];
        for (int i = 0; i < tested.size(); i++) {
            double[] own = neutrals.assumed(tested.get(i));
            for (int cause = 0; cause < own.length; cause++) {
                causes[cause][i] = own[cause] - black[cause];
            }
        }
        return causes;
    }

    /** Spread of one patch at an end of the tone scale, L*. */
    static TwinSpread spread(Neutrals neutrals, boolean fromPaper) {
        return neutrals.spreads().of(fromPaper ? 255 - REACH : 0, fromPaper ? 254 : REACH, Lab::l);
    }

    private Verdict verdict(double low, double high) {
        if (low >= threshold) {
            return Verdict.SEPARATED;
        }
        return high < threshold ? Verdict.MERGED : Verdict.UNCERTAIN;
    }

    /**
     * Whether the steps of coding alone may hide, or make, a visible difference from the anchor:
     * then no level can be said to merge.
     */
    static boolean lost(Neutrals neutrals, boolean fromPaper, double threshold) {
        double error = neutrals.codingError(fromPaper ? 255 : 0);
        return NORMAL_TAIL * Math.sqrt(2) * error > threshold;
    }

    /** Lower and upper bounds of the 95 % interval of each D. */
    private static double[][] bounds(
            WedgeLevels levels, TwinSpread spread, int anchors, boolean monotone) {
        int n = levels.d().length;
        double[][] bounds = new double[2][n];
        double single = 0;
        double longer = 0;
        if (spread.known()) {
            TDistribution t = new TDistribution(null, spread.freedom());
            single = t.inverseCumulativeProbability(TAIL);
            longer = t.inverseCumulativeProbability(WINDOW_TAIL);
        }
        for (int i = 1; i < n; i++) {
            double width = width(levels, spread, anchors, single, i, 1);
            bounds[0][i] = levels.d()[i] - width;
            bounds[1][i] = levels.d()[i] + width;
        }
        if (!monotone || !spread.known()) {
            return bounds;
        }
        for (int i = 1; i < n; i++) {
            for (int length : LONGER_WINDOWS) {
                if (i + length <= n) {
                    double width = width(levels, spread, anchors, longer, i, length);
                    bounds[1][i] = Math.min(bounds[1][i], levels.mean(i, length) + width);
                }
                if (i - length + 1 >= 1) {
                    int begin = i - length + 1;
                    double width = width(levels, spread, anchors, longer, begin, length);
                    bounds[0][i] = Math.max(bounds[0][i], levels.mean(begin, length) - width);
                }
            }
        }
        return bounds;
    }

    /** Half-width for the mean of a window. */
    private static double width(
            WedgeLevels levels,
            TwinSpread spread,
            int anchors,
            double tail,
            int begin,
            int length) {
        double random = spread.known() ? error(spread, levels.sum(begin, length), anchors) : 0;
        double coded = Math.max(tail, NORMAL_TAIL) * levels.codedFromAnchor(begin, length);
        double own = Math.hypot(tail * random, coded);
        return Math.hypot(own, UNESTIMATED_95 * levels.unestimated(begin, length));
    }

    private static double error(TwinSpread spread, int count, int anchors) {
        return spread.sigma() * Math.sqrt(1.0 / count + 1.0 / anchors);
    }

    /**
     * Largest fall from any window of levels to any later one, in its standard errors: finds tone
     * that turns back gently, without a single large step.
     */
    private static double largestFall(WedgeLevels levels, TwinSpread spread) {
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
                    double random = error(spread, levels.sum(k, after), levels.sum(at, before));
                    double own = Math.hypot(random, levels.codedApart(k, at));
                    double error = Math.hypot(own, levels.unestimated(k, after, at, before));
                    largest = Math.max(largest, fall / error);
                }
            }
        }
        return largest;
    }

    private static List<Integer> reversals(
            List<LevelData> tested, WedgeLevels levels, TwinSpread spread) {
        List<Integer> reversed = new ArrayList<>();
        if (!spread.known()) {
            return reversed;
        }
        double[] d = levels.d();
        for (int i = 2; i < d.length; i++) {
            double random = error(spread, levels.counts()[i], levels.counts()[i - 1]);
            double own = Math.hypot(random, levels.codedApart(i, i - 1));
            double error = Math.hypot(own, levels.unestimated(i, 1, i - 1, 1));
            if (d[i] - d[i - 1] < -REVERSAL * error) {
                reversed.add(tested.get(i).level());
            }
        }
        return reversed;
    }

    private Wedge summary(
            List<LevelStep> steps,
            double[] fit,
            double[] aim,
            boolean repeats,
            List<Integer> reversals) {
        int lastMerged = -1;
        while (lastMerged + 1 < steps.size()
                && steps.get(lastMerged + 1).verdict() == Verdict.MERGED) {
            lastMerged++;
        }
        int firstSeparated = steps.size();
        while (firstSeparated > 0 && steps.get(firstSeparated - 1).verdict() == Verdict.SEPARATED) {
            firstSeparated--;
        }
        int best = fit.length;
        while (best > 0 && fit[best - 1] >= threshold) {
            best--;
        }
        best = Math.max(lastMerged + 1, Math.min(firstSeparated, best));
        Integer merged = lastMerged < 0 ? null : steps.get(lastMerged).level();
        Integer separated =
                firstSeparated < steps.size() ? steps.get(firstSeparated).level() : null;
        Integer bestLevel = best < steps.size() ? steps.get(best).level() : null;
        Wedge.Interval interval = null;
        if (repeats && merged != null && separated != null) {
            interval =
                    fromPaper
                            ? new Wedge.Interval(separated, merged - 1)
                            : new Wedge.Interval(merged + 1, separated);
        }
        List<LevelStep> ascending = new ArrayList<>(steps);
        if (fromPaper) {
            Collections.reverse(ascending);
        }
        return new Wedge(
                threshold,
                merged,
                separated,
                bestLevel,
                interval,
                chain(fit),
                chain(aim),
                slope(fit, aim, best),
                reversals,
                ascending);
    }

    /** Levels of a greedy chain, each at least the threshold beyond the last. */
    private int chain(double[] d) {
        double last = 0;
        int count = 0;
        for (double value : d) {
            if (value >= last + threshold) {
                count++;
                last = value;
            }
        }
        return count;
    }

    /** Rise of the print over rise of the aim, beyond the first visible level. */
    private static @Nullable Double slope(double[] fit, double[] aim, int best) {
        int from = Math.max(0, best);
        int to = fit.length - 1;
        if (to - from < 3 || aim[to] - aim[from] <= 0) {
            return null;
        }
        return (fit[to] - fit[from]) / (aim[to] - aim[from]);
    }
}
