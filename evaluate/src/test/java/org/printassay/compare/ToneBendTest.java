package org.printassay.compare;

import static java.util.Objects.requireNonNull;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.UnaryOperator;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.MadePrint;

/** Local changes of simulated tone curves, known by making. */
class ToneBendTest {
    private static final int PAIRS = 10;

    /** Chance that any of the departures of a pair seems real where none is. */
    private static final double CHANCE = 0.01;

    private static final MadePrint PRINT = MadePrint.USUAL;

    private static ToneBend bend(Evaluation before, Evaluation after) {
        return ToneBend.between(
                        Side.of("before", List.of(before)), Side.of("after", List.of(after)))
                .orElseThrow();
    }

    /** How far the departure is into its interval; 1 is at its end. */
    private static double share(ToneBend bend) {
        double upper =
                new TDistribution(null, bend.freedom())
                        .inverseCumulativeProbability(1 - CHANCE / bend.looks() / 2);
        return bend.deltaL() / (upper * requireNonNull(bend.standard()));
    }

    /** Of ten pairs at 1 % each, two or more seem changed once in 230 times (binomial). */
    private static void seldomSeen(MadePrint before, MadePrint after) {
        int seen = 0;
        for (int i = 0; i < PAIRS; i++) {
            ToneBend bend = bend(before.evaluation(2L * i + 500), after.evaluation(2L * i + 501));
            seen += Math.abs(share(bend)) > 1 ? 1 : 0;
            assertTrue(bend.looks() > 60, bend.looks() + " looks");
        }
        assertTrue(seen < 2, seen + " of " + PAIRS);
    }

    @Test
    void unchangedPrintsHaveNone() {
        seldomSeen(PRINT, PRINT);
    }

    @Test
    void anotherBlackIsNone() {
        seldomSeen(PRINT, PRINT.withBlack(16));
    }

    @Test
    void anotherGradationIsNone() {
        seldomSeen(
                PRINT,
                PRINT.withChange(
                        c -> new Lab(c.l() + 2 * Math.sin(Math.PI * c.l() / 100), c.a(), c.b())));
    }

    @Test
    void aDentIsFoundWhereItIs() {
        UnaryOperator<Lab> dent =
                c -> c.l() > 60 && c.l() < 65 ? new Lab(c.l() - 1.5, c.a(), c.b()) : c;
        for (int i = 0; i < PAIRS; i++) {
            ToneBend bend =
                    bend(PRINT.evaluation(2L * i), PRINT.withChange(dent).evaluation(2L * i + 1));
            assertTrue(share(bend) < -1, "share " + share(bend));
            assertEquals(-1.5, bend.deltaL(), 0.5);
            assertEquals(62.5, PRINT.colour(Rgb8.grey(bend.level())).l(), 5, "where");
        }
    }

    @Test
    void withoutTwinsNothingTellsHowSureItIs() {
        assertNull(bend(PRINT.readOnce(1), PRINT.readOnce(2)).standard());
    }

    @Test
    void aPrintAgainstItselfHasNone() {
        Evaluation print = PRINT.evaluation(3);
        assertEquals(0, bend(print, print).deltaL(), 1e-9);
    }
}
