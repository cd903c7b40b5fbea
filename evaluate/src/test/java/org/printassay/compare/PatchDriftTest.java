package org.printassay.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.MadePrint;

/** Drift over all patches of simulated prints, known by making. */
class PatchDriftTest {
    private static final int PAIRS = 12;

    /** What is left of no drift after noise was taken off, dE00: the square root of little. */
    private static final double NOTHING = 0.1;

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.2, 0.4})
    void noiseAloneIsNoDrift(double noise) {
        MadePrint print = MadePrint.USUAL.withErrors(noise, 0);
        double mean = 0;
        double expected = 0;
        for (int i = 0; i < PAIRS; i++) {
            PatchDrift drift = drift(print, print, i);
            mean += drift.meanDeltaE00() / PAIRS;
            expected += drift.expected() / PAIRS;
            assertTrue(drift.drift() < NOTHING + 0.4 * noise, "drift " + drift.drift());
        }
        // The mean length of a sum of unequal normal errors is a little below that of equal ones.
        assertEquals(expected, mean, 0.05 * expected);
        assertTrue(mean > noise / 2, "noise shows in the mean before it is taken off");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.3})
    void findsARealDriftUnderNoise(double noise) {
        UnaryOperator<Lab> lighter = c -> new Lab(c.l() + 1, c.a(), c.b());
        UnaryOperator<Lab> warmer = c -> new Lab(c.l(), c.a(), c.b() + 1);
        for (UnaryOperator<Lab> change : List.of(lighter, warmer)) {
            MadePrint before = MadePrint.USUAL.withErrors(noise, 0);
            MadePrint after = before.withChange(change);
            double found = 0;
            double truth = 0;
            for (int i = 0; i < PAIRS; i++) {
                PatchDrift drift = drift(before, after, i);
                found += drift.drift() / PAIRS;
                truth = truth(before, after, drift);
            }
            // Squares add for equal differences; theirs differ from code to code.
            assertEquals(truth, found, 0.04 * truth);
        }
    }

    private static double truth(MadePrint before, MadePrint after, PatchDrift drift) {
        return drift.codes().stream()
                .mapToDouble(
                        c ->
                                DeltaE.ciede2000(
                                        before.change().apply(before.colour(c.rgb())),
                                        after.change().apply(after.colour(c.rgb()))))
                .average()
                .orElseThrow();
    }

    @Test
    void listsThePatchesFurthestApartFirst() {
        PatchDrift drift = drift(MadePrint.USUAL, MadePrint.USUAL.withShifts(4, 0), 1);
        for (int i = 1; i < drift.codes().size(); i++) {
            assertTrue(drift.codes().get(i - 1).deltaE00() >= drift.codes().get(i).deltaE00());
        }
        assertTrue(drift.codes().get(0).rgb().isNeutral(), "the dark greys moved");
        assertTrue(drift.noiseKnown());
    }

    @Test
    void aUsualNoiseIsSupposedWhereNothingWasReadTwice() {
        PatchDrift drift =
                PatchDrift.between(
                                side(MadePrint.USUAL.readOnce(1)),
                                side(MadePrint.USUAL.readOnce(2)))
                        .orElseThrow();
        assertFalse(drift.noiseKnown());
    }

    private static PatchDrift drift(MadePrint before, MadePrint after, int pair) {
        return PatchDrift.between(
                        side(before.evaluation(2L * pair)), side(after.evaluation(2L * pair + 1)))
                .orElseThrow();
    }

    private static Side side(Evaluation print) {
        return Side.of("print", List.of(print));
    }
}
