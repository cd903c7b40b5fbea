package org.printassay.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** Many differences looked at together, against the example of the paper that gives the rule. */
class VerdictsTest {
    /**
     * Benjamini, Hochberg (1995), J. R. Statist. Soc. B 57(1), 289-300, section 4.1: fifteen
     * ordered p-values; at 0.05 their procedure holds the first four (Bonferroni's the first
     * three). From memory.
     */
    private static final double[] PUBLISHED = {
        0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.3240, 0.4262,
        0.5719, 0.6528, 0.7590, 1.0
    };

    private static Difference withChance(double p) {
        double size = p == 1 ? 0 : -new NormalDistribution().inverseCumulativeProbability(p / 2);
        return Difference.of(Figure.WHITE_L, 0, size, 1.0, null, Difference.Basis.THESE_PRINTS);
    }

    @Test
    void agreesWithThePublishedExample() {
        List<Difference> all = Arrays.stream(PUBLISHED).mapToObj(VerdictsTest::withChance).toList();
        List<Judged> verdicts = Verdicts.of(all);
        for (int i = 0; i < PUBLISHED.length; i++) {
            assertEquals(PUBLISHED[i], all.get(i).chance(), 1e-9);
            DifferenceVerdict expected =
                    i < 4
                            ? DifferenceVerdict.DIFFERS
                            : i < 9 ? DifferenceVerdict.UNSURE : DifferenceVerdict.NOT_MEASURABLE;
            assertEquals(expected, verdicts.get(i).verdict(), "p = " + PUBLISHED[i]);
        }
    }

    @Test
    void whatHasNoIntervalIsNotCounted() {
        Difference none =
                Difference.of(Figure.LINES, 0, 2, null, null, Difference.Basis.THESE_PRINTS);
        // Alone, 0.04 holds; one of two it would not.
        Difference alone = withChance(0.04);
        List<Judged> verdicts = Verdicts.of(List.of(none, alone));
        assertEquals(DifferenceVerdict.NOT_TOLD, verdicts.get(0).verdict());
        assertEquals(DifferenceVerdict.DIFFERS, verdicts.get(1).verdict());
    }

    /** Where nothing differs, at most one comparison in twenty says that anything does. */
    @Test
    void equalSidesDifferByChanceInOneOfTwentyComparisons() {
        Random random = new Random(21);
        int trials = 2000;
        int wrong = 0;
        for (int i = 0; i < trials; i++) {
            List<Difference> all = new ArrayList<>();
            IntStream.range(0, 40)
                    .forEach(
                            k ->
                                    all.add(
                                            Difference.of(
                                                    Figure.WHITE_L,
                                                    random.nextGaussian() / Math.sqrt(2),
                                                    random.nextGaussian() / Math.sqrt(2),
                                                    1.0,
                                                    null,
                                                    Difference.Basis.THESE_PRINTS)));
            boolean any =
                    Verdicts.of(all).stream()
                            .anyMatch(j -> j.verdict() == DifferenceVerdict.DIFFERS);
            wrong += any ? 1 : 0;
        }
        assertEquals(0.05, wrong / (double) trials, 3 * Math.sqrt(0.05 * 0.95 / trials));
    }
}
