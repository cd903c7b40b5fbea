package org.printassay.metric;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Density;
import org.printassay.colour.Lab;
import org.printassay.reading.Reading;
import org.printassay.reading.Trust;
import org.printassay.reading.Undoubted;

/**
 * Paper white and the darkest neutral, with uncertainties: the random part from the spread of
 * twins, else of repeated measurements, the systematic part by trust, combined as ISO/IEC Guide
 * 98-3 does ({@link Budget}).
 */
final class ExtremeJudge {
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
        String name = level == 255 ? "white.lab." : "black.lab.";
        double stated = Systematic.lightness(trust, data.mean().l());
        Budget l = budget(name + "l", neutrals, data, Lab::l, stated);
        Budget a = budget(name + "a", neutrals, data, Lab::a, Systematic.chroma(trust));
        Budget b = budget(name + "b", neutrals, data, Lab::b, Systematic.chroma(trust));
        Lab absolute = trust.absolute() && !neutrals.clipped(level) ? data.mean() : null;
        return Optional.of(
                new Extreme(
                        absolute,
                        relative(Undoubted.of(readings), data),
                        absolute == null ? null : density(readings, data),
                        new Lab(l.halfWidth(), a.halfWidth(), b.halfWidth()),
                        stated,
                        level,
                        data.count(),
                        List.of(l, a, b)));
    }

    /**
     * Density of the mean reflectance of the readings that the colour is the mean of: their own
     * densities, which come from spectra where there are any (ISO 5-3), and not quite from L*.
     */
    private static double density(List<Reading> readings, LevelData data) {
        double factor = 0;
        int n = 0;
        for (Reading reading : Undoubted.of(readings)) {
            Double density = reading.density();
            if (density != null && data.kept().contains(reading.best())) {
                factor += Math.pow(10, -density);
                n++;
            }
        }
        return Density.ofFactor(
                Math.max(1e-4, n == 0 ? Lab.luminanceFactor(data.mean().l()) : factor / n));
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

    private static Budget budget(
            String figure,
            Neutrals neutrals,
            LevelData data,
            ToDoubleFunction<Lab> value,
            double stated) {
        List<Budget.Part> parts = new ArrayList<>();
        int n = data.count();
        if (n >= 2) {
            double mean = data.kept().stream().mapToDouble(value).average().orElseThrow();
            double squares =
                    data.kept().stream()
                            .mapToDouble(lab -> Math.pow(value.applyAsDouble(lab) - mean, 2))
                            .sum();
            double error = Math.sqrt(squares / (n - 1) / n);
            parts.add(new Budget.Part(Budget.Kind.RANDOM, error, n - 1));
        } else if (neutrals.set().repeats() != null) {
            TwinSpread noise = neutrals.spreads().printed(value);
            parts.add(new Budget.Part(Budget.Kind.RANDOM, noise.sigma(), noise.freedom()));
        }
        if (!data.shared().isEmpty()) {
            parts.add(new Budget.Part(Budget.Kind.LIGHT, data.sharedError(value), null));
        }
        if (data.calibration() != null) {
            double error = value.applyAsDouble(data.calibration());
            parts.add(new Budget.Part(Budget.Kind.CALIBRATION, error, null));
        }
        parts.add(Budget.Part.stated(stated));
        return new Budget(figure, "CIELAB", value.applyAsDouble(data.mean()), parts);
    }
}
