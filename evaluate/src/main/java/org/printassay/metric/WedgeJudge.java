package org.printassay.metric;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.reading.ContrastDoubt;

/**
 * Which levels can be told from black, or from paper. One engine serves both ends: it walks
 * outwards from the anchor (level 0 or 255) over the tested levels and judges D, the distance in L*
 * from the pooled anchor.
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

    /** As {@link #TAIL}, for an error that is known rather than seen in a spread. */
    static final double NORMAL_TAIL = Coverage.ONE_SIDED_95;

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
        WedgeLevels levels = new WedgeLevels(d, counts, coded, shared(tested, d));
        WedgeBounds ofLevels = new WedgeBounds(levels, spread);
        double[][] bounds = ofLevels.bounds(anchor.get().count());
        double[] estimates = ofLevels.best(bounds);
        List<Integer> reversals =
                ofLevels.reversals().stream().map(i -> tested.get(i).level()).toList();
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
                            estimates[i],
                            low,
                            high,
                            aim[i],
                            verdict,
                            tested.get(i).mean(),
                            counts[i]));
        }
        return Optional.of(summary(steps, fit, aim, spread.known(), reversals));
    }

    /** What moves levels together, cause by cause, one standard error each. */
    private double[][] shared(List<LevelData> tested, double[] d) {
        LevelData anchor = tested.get(0);
        int light = anchor.shared().size();
        int n = tested.size();
        double range = Math.max(threshold, d[n - 1]);
        boolean edited = !neutrals.set().contrast().at(fromPaper).isNone();
        double[][] causes = new double[light + 2][n];
        for (int i = 0; i < n; i++) {
            LevelCauses own = LevelCauses.of(neutrals, tested.get(i), anchor, d[i] / range, edited);
            for (int cause = 0; cause < light; cause++) {
                causes[cause][i] = own.light().get(cause);
            }
            causes[light][i] = own.calibration();
            causes[light + 1][i] = own.stated() / Coverage.NORMAL_95;
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
