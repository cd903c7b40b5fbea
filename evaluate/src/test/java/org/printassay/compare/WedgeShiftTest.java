package org.printassay.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.colour.Rgb8;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.MadePrint;

/** Shifts of simulated wedges, known by making. */
class WedgeShiftTest {
    private static final int PAIRS = 30;

    /** Of 30 intervals of 95 % fewer than 25 hold the truth once in 200 times (binomial). */
    private static final int LEAST_HELD = 25;

    /** Standard errors of a mean over the pairs that a lack of bias may seem to be off by. */
    private static final double BIAS = 3.5;

    @ParameterizedTest(name = "knee {0}, rise {1}, moved by {2}")
    @CsvSource({"6, 12, 0", "6, 12, 2", "6, 12, -3", "8, 0, 2", "8, 0, 0.5", "0, 0, 2"})
    void findsTheShiftOfShadowsWithinItsUncertainty(double knee, double rise, double moved) {
        MadePrint before = MadePrint.USUAL.withKnee(knee, rise).withShifts(3, 0);
        MadePrint after = before.withShifts(3 + moved, 0);
        Found found = new Found();
        for (int i = 0; i < PAIRS; i++) {
            found.add(
                    WedgeShift.ofShadows(
                                    side(before.evaluation(2L * i + 1000)),
                                    side(after.evaluation(2L * i + 1001)))
                            .orElseThrow(),
                    moved);
        }
        found.assertHonest();
    }

    @Test
    void findsTheShiftOfHighlightsToo() {
        MadePrint before = MadePrint.USUAL;
        MadePrint after = before.withShifts(0, 2);
        Found found = new Found();
        for (int i = 0; i < PAIRS; i++) {
            found.add(
                    WedgeShift.ofHighlights(
                                    side(before.evaluation(2L * i)),
                                    side(after.evaluation(2L * i + 1)))
                            .orElseThrow(),
                    2);
        }
        found.assertHonest();
    }

    @Test
    void levelsComeNearerToBlackByWhatTheyDo() {
        MadePrint before = MadePrint.USUAL.withKnee(0, 0);
        MadePrint after = before.withKnee(10, 14);
        double truth = 0;
        for (int level = 1; level <= 24; level++) {
            Rgb8 code = Rgb8.grey(level);
            truth += (after.colour(code).l() - before.colour(code).l()) / 24;
        }
        int held = 0;
        for (int i = 0; i < PAIRS; i++) {
            WedgeDepth depth =
                    WedgeDepth.ofShadows(
                                    side(before.evaluation(2L * i)),
                                    side(after.evaluation(2L * i + 1)))
                            .orElseThrow();
            Double standard = depth.standard();
            assertNotNull(standard);
            held += Math.abs(depth.deltaL() - truth) <= 1.96 * standard ? 1 : 0;
            assertTrue(standard < 0.15, "known to " + standard);
        }
        assertTrue(held >= LEAST_HELD, held + " of " + PAIRS + " intervals hold the truth");
    }

    @Test
    void turnedRoundTheShiftHasTheOtherSign() {
        MadePrint before = MadePrint.USUAL;
        MadePrint after = before.withShifts(2, 0);
        WedgeShift there =
                WedgeShift.ofShadows(side(before.evaluation(1)), side(after.evaluation(2)))
                        .orElseThrow();
        WedgeShift back =
                WedgeShift.ofShadows(side(after.evaluation(2)), side(before.evaluation(1)))
                        .orElseThrow();
        Double standard = there.standard();
        assertNotNull(standard);
        assertEquals(there.levels(), -back.levels(), standard);
    }

    @Test
    void aPrintAgainstItselfHasNotMoved() {
        var print = MadePrint.USUAL.evaluation(5);
        WedgeShift shift = WedgeShift.ofShadows(side(print), side(print)).orElseThrow();
        assertEquals(0, shift.levels(), 1e-9);
        assertEquals(0, shift.remaining(), 1e-9);
    }

    private static Side side(Evaluation print) {
        return Side.of("print", List.of(print));
    }

    /** Whole results over many pairs. */
    private static final class Found {
        private double sum;
        private double squares;
        private double stated;
        private int held;
        private int pairs;

        void add(WedgeShift shift, double truth) {
            double off = shift.levels() - truth;
            Double standard = shift.standard();
            assertNotNull(standard);
            sum += off;
            squares += off * off;
            stated += standard / PAIRS;
            held += Math.abs(off) <= 1.96 * standard ? 1 : 0;
            pairs++;
        }

        void assertHonest() {
            assertEquals(PAIRS, pairs);
            double spread = Math.sqrt(squares / PAIRS);
            assertTrue(held >= LEAST_HELD, held + " of " + PAIRS + " intervals hold the truth");
            assertEquals(0, sum / PAIRS, BIAS * spread / Math.sqrt(PAIRS), "bias");
            assertTrue(stated < 3 * spread, "states " + stated + ", spreads " + spread);
            assertTrue(stated < 0.5, "known to half a level or better, not " + stated);
        }
    }

    @Test
    void withoutTwinsItIsEstimatedAndNothingTellsHowSureItIs() {
        MadePrint before = MadePrint.USUAL.withErrors(0.05, 0);
        WedgeShift shift =
                WedgeShift.ofShadows(
                                side(before.readOnce(1)), side(before.withShifts(2, 0).readOnce(2)))
                        .orElseThrow();
        assertEquals(2, shift.levels(), 0.5);
        assertNull(shift.standard());
    }
}
