package org.printassay.metric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.reading.LabError;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.SharedError;
import org.printassay.reading.Trust;
import org.printassay.sheet.PointMm;

/** Budgets of level results and of evenness, on simulated readings with known errors. */
class LevelBudgetTest {
    private static final double T = 0.5;

    /** L* rises by this much a level from black on, and falls as much from paper. */
    private static final double SLOPE = 0.08;

    private static final double SPREAD = 0.2;
    private static final String SHADOWS = "shadows.firstVisible";
    private static final String HIGHLIGHTS = "highlights.lastVisible";
    private static final String TWINS = "evenness.maxDeltaE00";
    private static final String GRADIENT = "evenness.gradient.overSheet";

    /** What is stated agrees with how far the estimate really scatters. */
    @Test
    void levelsScatterAsTheirBudgetsSay() {
        for (String figure : List.of(SHADOWS, HIGHLIGHTS)) {
            List<Double> levels = new ArrayList<>();
            double stated = 0;
            for (int seed = 0; seed < 300; seed++) {
                Budget budget = budget(judged(print(SPREAD, seed)), figure);
                levels.add(budget.value());
                stated += budget.standard() / 300;
            }
            double seen = deviation(levels);
            // Sampling a standard deviation 300 times leaves 4 %; a borrowing fit is known less.
            assertTrue(
                    stated > 0.8 * seen && stated < 1.5 * seen,
                    figure + ": stated " + stated + ", seen " + seen);
        }
    }

    /** A veil that moves black by 1 L* and all else by 0.8. */
    private static ReadingSet veiled(ReadingSet set, boolean assumed) {
        List<Lab> shifts = new ArrayList<>();
        for (Reading reading : set.readings()) {
            shifts.add(new Lab(reading.rgb().r() == 0 ? 1 : 0.8, 0, 0));
        }
        return new ReadingSet(
                set.readings(),
                set.space(),
                set.trust(),
                true,
                List.of(new SharedError(shifts, assumed)));
    }

    /** A veil that moves dark levels apart counts by what it does to the difference from black. */
    @Test
    void lightCountsByItsDifferenceFromTheAnchor() {
        ReadingSet set = print(SPREAD, 3);
        ReadingSet veiled = veiled(set, false);
        Budget budget = budget(judged(veiled), SHADOWS);
        // 0.2 L* at 0.08 L* a level, as far as the noisy readings tell that slope.
        assertEquals(0.2 / SLOPE, part(budget, Budget.Kind.LIGHT), 0.7);
    }

    /** What widened the bounds already is not counted as random too. */
    @Test
    void whatCouldNotBeEstimatedCountsOnce() {
        ReadingSet set = print(SPREAD, 4);
        ReadingSet veiled = veiled(set, true);
        Budget plain = budget(judged(set), SHADOWS);
        Budget budget = budget(judged(veiled), SHADOWS);
        assertEquals(0.2 / SLOPE, part(budget, Budget.Kind.LIGHT), 0.7);
        double random = part(plain, Budget.Kind.RANDOM);
        assertEquals(random, part(budget, Budget.Kind.RANDOM), 0.5 * random);
    }

    @Test
    void withoutRepeatsThereIsNoBudgetOfLevels() {
        List<Reading> once = new ArrayList<>();
        Set<Rgb8> seen = new HashSet<>();
        for (Reading reading : print(SPREAD, 1).readings()) {
            if (seen.add(reading.rgb())) {
                once.add(reading);
            }
        }
        Judgement judged = judged(new ReadingSet(once, RgbSpace.SRGB, Trust.INSTRUMENT, true));
        assertTrue(judged.budgets().stream().noneMatch(b -> b.unit().equals("level")));
    }

    /** Two readings, 0.3 L* standard error each: their difference is known to 0.42 L*. */
    @Test
    void twinsAreKnownAsWellAsTheirReadings() {
        LabError error = new LabError(0.3, 0, 0);
        List<Reading> pair =
                List.of(
                        reading(Rgb8.grey(128), new Lab(50, 0, 0), error, new PointMm(10, 10)),
                        reading(Rgb8.grey(128), new Lab(52, 0, 0), error, new PointMm(90, 10)));
        Budget budget =
                budget(
                        Judgement.of(
                                new ReadingSet(pair, RgbSpace.SRGB, Trust.INSTRUMENT, true), T),
                        TWINS);
        // Near L* 50 a dE00 is a dL* within 2 % (its SL is 1 at 50).
        assertEquals(2, budget.value(), 0.04);
        assertEquals(0.424, part(budget, Budget.Kind.RANDOM), 0.02);
        assertEquals(2 * 0.3 / 116 / 1.96, part(budget, Budget.Kind.SYSTEMATIC), 1e-3);
    }

    /** A lamp that may fall off by 1 L* from left to right cannot be told from the print. */
    @Test
    void lightIsPartOfTheGradient() {
        ReadingSet set =
                Prints.print((code, at, aim) -> new Lab(aim.l() - 0.02 * at.x(), 0, 0), 0.2, 5);
        List<Lab> shifts = new ArrayList<>();
        for (Reading reading : set.readings()) {
            PointMm at = reading.centre();
            shifts.add(new Lab(at == null ? 0 : at.x() / 190, 0, 0));
        }
        ReadingSet lit =
                new ReadingSet(
                        set.readings(),
                        set.space(),
                        set.trust(),
                        true,
                        List.of(new SharedError(shifts)));
        Gradient.Fit fit = Gradient.of(lit).orElseThrow();
        Gradient gradient = fit.gradient();
        Budget budget = budget(Judgement.of(lit, T), GRADIENT);
        assertEquals(gradient.overSheet(), budget.value(), 1e-12);
        assertEquals(fit.standard(), part(budget, Budget.Kind.RANDOM), 1e-9);
        assertEquals(1, part(budget, Budget.Kind.LIGHT), 0.05);
    }

    private static Judgement judged(ReadingSet set) {
        return Judgement.of(set, T);
    }

    private static Budget budget(Judgement judged, String figure) {
        return judged.budgets().stream()
                .filter(b -> b.figure().equals(figure))
                .findFirst()
                .orElseThrow();
    }

    private static double part(Budget budget, Budget.Kind kind) {
        return budget.parts().stream()
                .filter(p -> p.kind() == kind)
                .findFirst()
                .orElseThrow()
                .standard();
    }

    /** Every level of both wedges four times. */
    private static ReadingSet print(double spread, long seed) {
        Random random = new Random(seed);
        List<Reading> readings = new ArrayList<>();
        for (int copy = 0; copy < 4; copy++) {
            for (int level = 0; level <= 48; level++) {
                double noise = spread * random.nextGaussian();
                add(readings, level, 10 + SLOPE * level + noise, random);
                add(readings, 255 - level, 95 - SLOPE * level - noise, random);
            }
            add(readings, 128, 53, random);
        }
        return new ReadingSet(readings, RgbSpace.SRGB, Trust.INSTRUMENT, true);
    }

    private static void add(List<Reading> readings, int level, double l, Random random) {
        PointMm at = new PointMm(200 * random.nextDouble(), 280 * random.nextDouble());
        readings.add(reading(Rgb8.grey(level), new Lab(l, 0, 0), new LabError(0.1, 0.1, 0.1), at));
    }

    private static Reading reading(Rgb8 code, Lab lab, LabError error, PointMm at) {
        return new Reading("p", Optional.empty(), code, lab, lab, error, null, Set.of(), at, 1);
    }

    private static double deviation(List<Double> values) {
        double mean = values.stream().mapToDouble(v -> v).average().orElseThrow();
        return Math.sqrt(
                values.stream().mapToDouble(v -> (v - mean) * (v - mean)).sum()
                        / (values.size() - 1));
    }
}
