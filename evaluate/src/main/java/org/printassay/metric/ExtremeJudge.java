package org.printassay.metric;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.distribution.TDistribution;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Density;
import org.printassay.colour.Lab;
import org.printassay.reading.Reading;
import org.printassay.reading.Trust;

/**
 * Paper white and the darkest neutral, with uncertainties: the random part from the spread of
 * twins, the systematic part by trust, combined as ISO/IEC Guide 98-3 does.
 */
final class ExtremeJudge {
    private static final double NORMAL_95 = 1.96;

    private ExtremeJudge() {}

    static Optional<Extreme> judge(Neutrals neutrals, int level) {
        Optional<LevelData> found = neutrals.level(level);
        if (found.isEmpty()) {
            return Optional.empty();
        }
        LevelData data = found.get();
        List<Reading> readings = new ArrayList<>();
        for (Reading reading : neutrals.set().readings()) {
            if (reading.rgb().isNeutral() && reading.rgb().r() == level) {
                readings.add(reading);
            }
        }
        Trust trust = neutrals.set().trust();
        double systematic = Systematic.lightness(trust);
        double systematicAb = Systematic.chroma(trust);
        Lab absolute = trust.absolute() && !neutrals.clipped(level) ? data.mean() : null;
        return Optional.of(
                new Extreme(
                        absolute,
                        relative(Neutrals.undoubted(readings), data),
                        absolute == null
                                ? null
                                : Density.ofFactor(
                                        Math.max(1e-4, Lab.luminanceFactor(absolute.l()))),
                        new Lab(
                                combined(half(data, Lab::l), systematic),
                                combined(half(data, Lab::a), systematicAb),
                                combined(half(data, Lab::b), systematicAb)),
                        systematic,
                        level,
                        data.count()));
    }

    private static Lab relative(List<Reading> readings, LevelData data) {
        double l = 0;
        double a = 0;
        double b = 0;
        int n = 0;
        for (Reading reading : readings) {
            @Nullable Lab relative = reading.labRelative();
            if (relative != null) {
                l += relative.l();
                a += relative.a();
                b += relative.b();
                n++;
            }
        }
        return n == 0 ? data.mean() : new Lab(l / n, a / n, b / n);
    }

    private static double combined(double random, double systematic) {
        return Math.hypot(random, systematic);
    }

    /** 95 % half-width of the mean of these twins, from their own spread and what they share. */
    private static double half(LevelData data, ToDoubleFunction<Lab> value) {
        double shared = NORMAL_95 * data.sharedError(value);
        int n = data.count();
        if (n < 2) {
            return shared;
        }
        double mean = data.kept().stream().mapToDouble(value).average().orElseThrow();
        double squares =
                data.kept().stream()
                        .mapToDouble(lab -> Math.pow(value.applyAsDouble(lab) - mean, 2))
                        .sum();
        double t = new TDistribution(null, n - 1).inverseCumulativeProbability(0.975);
        return Math.hypot(shared, t * Math.sqrt(squares / (n - 1) / n));
    }
}
