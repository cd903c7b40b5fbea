package org.printassay.metric;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.printassay.colour.Lab;
import org.printassay.colour.PaperAim;
import org.printassay.colour.ToneZone;
import org.printassay.reading.ReadingSet;

/**
 * Tonal linearity: measured L* of neutrals against their aim, by default relative colorimetric with
 * black point compensation onto this paper's white and black.
 */
final class ToneJudge {
    private static final int FEWEST_LEVELS = 6;
    private static final double REVERSAL = 4;

    /** A fall that counts where nothing was read twice: one that the eye would just see. */
    private static final double VISIBLE_FALL = 0.5;

    private ToneJudge() {}

    /**
     * Judges tone; empty when there are too few neutrals.
     *
     * @param neutrals with paper and black among them
     * @param paper made of these two
     */
    static Optional<Tone> judge(
            Neutrals neutrals, PaperAim paper, ToneAim aim, List<Irregularity> irregularities) {
        List<LevelData> curve = neutrals.curve();
        if (curve.size() < FEWEST_LEVELS) {
            return Optional.empty();
        }
        TwinSpread spread = neutrals.spreads().printed(Lab::l);
        boolean twins = neutrals.spreads().of(0, 255, Lab::l).known();
        double[] shares = Neutrals.shares(curve);
        int n = curve.size();
        double[] delta = new double[n];
        double[] errors = new double[n];
        double[] aims = new double[n];
        List<Integer> reversals = new ArrayList<>();
        int worst = 0;
        for (int i = 0; i < n; i++) {
            LevelData data = curve.get(i);
            aims[i] = aim.l(neutrals.set(), paper, data.level());
            delta[i] = data.mean().l() - aims[i];
            errors[i] = spread.errorOf(data.count());
            worst = Math.abs(delta[i]) > Math.abs(delta[worst]) ? i : worst;
            if (i > 0) {
                double fall = curve.get(i - 1).mean().l() - data.mean().l();
                double real =
                        twins
                                ? REVERSAL
                                        * Math.hypot(
                                                Math.hypot(errors[i], errors[i - 1]),
                                                neutrals.assumedApart(data, curve.get(i - 1)))
                                : VISIBLE_FALL;
                if (fall > real) {
                    reversals.add(data.level());
                }
            }
        }
        ToneRms rms =
                ToneRms.of(
                        neutrals,
                        curve,
                        aim,
                        Arrays.stream(shares).boxed().toList(),
                        Arrays.stream(delta).boxed().toList(),
                        spread);
        Budget budget = budget(neutrals, curve, shares, rms);
        List<Tone.Point> points = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            int low = Math.max(0, i - 1);
            int high = Math.min(n - 1, i + 1);
            double rise = aims[high] - aims[low];
            double measured = curve.get(high).mean().l() - curve.get(low).mean().l();
            points.add(
                    new Tone.Point(
                            curve.get(i).level(),
                            curve.get(i).fileL(),
                            curve.get(i).mean().l(),
                            aims[i],
                            errors[i],
                            rise > 0 ? measured / rise : 1));
        }
        return Optional.of(
                new Tone(
                        aim.words(),
                        rms.value(),
                        budget.halfWidth(),
                        delta[worst],
                        curve.get(worst).level(),
                        mean(curve, shares, delta, ToneZone.SHADOWS),
                        mean(curve, shares, delta, ToneZone.MIDTONES),
                        mean(curve, shares, delta, ToneZone.HIGHLIGHTS),
                        reversals.isEmpty(),
                        reversals,
                        points,
                        irregularities,
                        List.of(budget)));
    }

    /**
     * A calibration is off alike in greys that are near each other: what it is off in the mean
     * counts in full. The scanner's light moves aim and curve together and is left to the stated
     * part.
     */
    private static Budget budget(
            Neutrals neutrals, List<LevelData> curve, double[] shares, ToneRms rms) {
        List<Budget.Part> parts = new ArrayList<>();
        parts.add(new Budget.Part(Budget.Kind.RANDOM, rms.halfWidth() / Coverage.NORMAL_95, null));
        double squares = 0;
        boolean calibrated = false;
        for (int i = 0; i < curve.size(); i++) {
            Lab error = curve.get(i).calibration();
            if (error != null) {
                calibrated = true;
                squares += shares[i] * error.l() * error.l();
            }
        }
        if (calibrated) {
            parts.add(new Budget.Part(Budget.Kind.CALIBRATION, Math.sqrt(squares), null));
        }
        parts.add(Budget.Part.stated(Systematic.curve(neutrals.set().trust())));
        return new Budget("tone.rmsDeltaL", "L*", rms.value(), parts);
    }

    /** Aim L* of a level, in the frame of the readings. */
    static double aimL(ReadingSet set, PaperAim aim, int level) {
        return ToneAim.PAPER.l(set, aim, level);
    }

    /** Weighted mean over the levels whose file L* lies in a zone; 0 when there are none. */
    private static double mean(
            List<LevelData> curve, double[] shares, double[] values, ToneZone zone) {
        double sum = 0;
        double total = 0;
        for (int i = 0; i < values.length; i++) {
            if (ToneZone.of(curve.get(i).fileL()) == zone) {
                sum += shares[i] * values[i];
                total += shares[i];
            }
        }
        return total == 0 ? 0 : sum / total;
    }
}
