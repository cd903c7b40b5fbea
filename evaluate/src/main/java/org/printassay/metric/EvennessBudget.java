package org.printassay.metric;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.reading.LabError;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Repeatability;
import org.printassay.reading.SharedError;

/**
 * Uncertainty of how even a print is. Causes that move many readings are moved by one standard
 * error each (ISO/IEC Guide 98-3, 5.1.3, note 2). Gains shrink differences in proportion, which is
 * what is stated for the trust.
 */
final class EvennessBudget {
    /** L* + 16 of paper: what a gain is a share of. */
    private static final double WHITE = 116;

    private static final String GRADIENT = "evenness.gradient.overSheet";

    private EvennessBudget() {}

    /**
     * Of the largest difference between twins. The random part is the two readings' own: grain and
     * noise within a patch, or how well an instrument repeats. Empty where neither is known.
     */
    static Optional<Budget> ofTwins(ReadingSet set) {
        return ColourJudge.furthestTwins(set)
                .flatMap(
                        pair -> {
                            Lab one = error(pair.one(), set.repeats());
                            Lab other = error(pair.other(), set.repeats());
                            if (one == null || other == null) {
                                return Optional.empty();
                            }
                            double random =
                                    Math.hypot(
                                            moved(pair.one(), pair.other(), one),
                                            moved(pair.other(), pair.one(), other));
                            return Optional.of(
                                    budget(
                                            "evenness.maxDeltaE00",
                                            "dE00",
                                            set,
                                            pair.deltaE00(),
                                            new Budget.Part(Budget.Kind.RANDOM, random, null),
                                            moved ->
                                                    ColourJudge.largestTwinDifference(moved)
                                                            .orElse(0.0)));
                        });
    }

    /** Of the lightness between the sheet's lightest and darkest corner. */
    static Budget ofGradient(ReadingSet set, Gradient.Fit fit) {
        return budget(
                GRADIENT,
                "L*",
                set,
                fit.gradient().overSheet(),
                new Budget.Part(Budget.Kind.RANDOM, fit.standard(), fit.freedom()),
                moved -> Gradient.of(moved).map(m -> m.gradient().overSheet()).orElse(0.0));
    }

    private static Budget budget(
            String figure,
            String unit,
            ReadingSet set,
            double value,
            Budget.Part random,
            Function<ReadingSet, Double> measured) {
        List<Budget.Part> parts = new ArrayList<>();
        parts.add(random);
        double light = 0;
        for (SharedError cause : set.shared()) {
            ReadingSet moved = ColourBudget.shifted(set, cause.shifts()::get);
            light += Math.pow(measured.apply(moved) - value, 2);
        }
        if (!set.shared().isEmpty()) {
            parts.add(new Budget.Part(Budget.Kind.LIGHT, Math.sqrt(light), null));
        }
        parts.add(Budget.Part.stated(value * Systematic.lightness(set.trust()) / WHITE));
        return new Budget(figure, unit, value, parts);
    }

    private static @Nullable Lab error(Reading reading, @Nullable Repeatability repeats) {
        LabError own = reading.standardError();
        if (own != null) {
            return new Lab(own.l(), own.a(), own.b());
        }
        return repeats == null ? null : repeats.each();
    }

    /** What errors of one reading do to its distance from another, dE00. */
    private static double moved(Reading reading, Reading from, Lab error) {
        Lab lab = reading.best();
        Lab other = from.best();
        double now = DeltaE.ciede2000(lab, other);
        double l = DeltaE.ciede2000(new Lab(lab.l() + error.l(), lab.a(), lab.b()), other);
        double a = DeltaE.ciede2000(new Lab(lab.l(), lab.a() + error.a(), lab.b()), other);
        double b = DeltaE.ciede2000(new Lab(lab.l(), lab.a(), lab.b() + error.b()), other);
        return Math.sqrt(Math.pow(l - now, 2) + Math.pow(a - now, 2) + Math.pow(b - now, 2));
    }
}
