package org.printassay.metric;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.TDistribution;
import org.printassay.reading.ContrastDoubt;

/**
 * Uncertainty of the level from which shadows or highlights show: errors of its distance from the
 * anchor, L*, divided by how fast that distance grows there (ISO/IEC Guide 98-3, 5.1.3). The random
 * part is that of the bounds which the level's verdict goes by. Errors that grow with distance from
 * the anchor (a scanner's calibration, what is stated for the trust) count by the level's share of
 * the whole wedge.
 */
final class LevelBudget {
    private static final String UNIT = "level";

    private LevelBudget() {}

    /**
     * The budget; empty where there is no best level, nothing was read twice, or tone does not rise
     * around the level.
     *
     * @param fromPaper whether it is the highlight wedge
     */
    static Optional<Budget> of(Wedge wedge, Neutrals neutrals, boolean fromPaper) {
        List<LevelStep> outwards = new ArrayList<>(wedge.steps());
        if (fromPaper) {
            Collections.reverse(outwards);
        }
        Integer best = wedge.best();
        TwinSpread spread = WedgeJudge.spread(neutrals, fromPaper);
        if (best == null || !spread.known()) {
            return Optional.empty();
        }
        int at = 0;
        while (outwards.get(at).level() != best) {
            at++;
        }
        double range = outwards.get(outwards.size() - 1).difference();
        double slope = slope(outwards, wedge.threshold());
        if (at == 0 || !(slope > 0) || range <= wedge.threshold()) {
            return Optional.empty();
        }
        LevelStep step = outwards.get(at);
        LevelData level = neutrals.level(best).orElseThrow();
        LevelData anchor = neutrals.level(outwards.get(0).level()).orElseThrow();
        double single =
                new TDistribution(null, spread.freedom())
                        .inverseCumulativeProbability(WedgeJudge.TAIL);
        double share = wedge.threshold() / range;
        List<Budget.Part> parts = new ArrayList<>();
        ContrastDoubt.End doubt = neutrals.set().contrast().at(fromPaper);
        double half = Math.max(0, doubt.readHigh(step.high()) - doubt.readLow(step.low())) / 2;
        LevelCauses causes = LevelCauses.of(neutrals, level, anchor, share, !doubt.isNone());
        double light = causes.lightError();
        double calibrated = causes.calibration();
        double stated = causes.stated();
        double shared = Math.hypot(Coverage.NORMAL_95 * Math.hypot(light, calibrated), stated);
        double coded = Math.hypot(neutrals.codingError(best), neutrals.codingError(anchor.level()));
        // What is not random is in the bounds too, and has parts of its own below.
        double other = Math.hypot(shared, single * coded);
        double random = Math.sqrt(Math.max(0, half * half - other * other)) / single;
        parts.add(new Budget.Part(Budget.Kind.RANDOM, random / slope, spread.freedom()));
        if (light > 0) {
            parts.add(new Budget.Part(Budget.Kind.LIGHT, light / slope, null));
        }
        if (calibrated > 0) {
            parts.add(new Budget.Part(Budget.Kind.CALIBRATION, calibrated / slope, null));
        }
        if (coded > 0) {
            parts.add(new Budget.Part(Budget.Kind.SYSTEMATIC, coded / slope, null));
        }
        if (!doubt.isNone()) {
            // The level may be that of any difference from a part of the threshold to a multiple.
            double most = Math.max(doubt.stretched() - 1, 1 - 1 / doubt.squeezed());
            parts.add(Budget.Part.stated(wedge.threshold() * most / slope));
        }
        parts.add(Budget.Part.stated(stated / slope));
        String figure = fromPaper ? "highlights.lastVisible" : "shadows.firstVisible";
        return Optional.of(new Budget(figure, UNIT, best, parts));
    }

    /** L* a level where the rising curve passes from half to one and a half thresholds. */
    private static double slope(List<LevelStep> outwards, double threshold) {
        double[] d = outwards.stream().mapToDouble(LevelStep::difference).toArray();
        int[] counts = outwards.stream().mapToInt(LevelStep::twins).toArray();
        double[] fit = Monotone.fit(d, counts);
        int from = 0;
        while (from + 1 < fit.length && fit[from + 1] < threshold / 2) {
            from++;
        }
        int to = Math.min(from + 1, fit.length - 1);
        while (to + 1 < fit.length && fit[to] < 1.5 * threshold) {
            to++;
        }
        int levels = Math.abs(outwards.get(to).level() - outwards.get(from).level());
        return levels == 0 ? 0 : (fit[to] - fit[from]) / levels;
    }
}
