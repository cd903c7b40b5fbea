package org.printassay.metric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Trust;

class BudgetTest {
    /**
     * ISO/IEC Guide 98-3:2008, G.4.1, example (from memory): relative uncertainties of 0.25 %, 0.57
     * % and 0.82 % from 10, 5 and 15 observations combine to 1.03 %, with 19.0 effective degrees of
     * freedom; 95 % half-width 2.09 x 1.03 % = 2.2 %.
     */
    @Test
    void theGuidesOwnExample() {
        Budget budget =
                new Budget(
                        "y",
                        "%",
                        100,
                        List.of(
                                new Budget.Part(Budget.Kind.RANDOM, 0.25, 9),
                                new Budget.Part(Budget.Kind.LIGHT, 0.57, 4),
                                new Budget.Part(Budget.Kind.CALIBRATION, 0.82, 14)));
        assertEquals(1.03, budget.standard(), 0.005);
        assertEquals(2.09, budget.coverageFactor(), 0.005);
        assertEquals(2.2, budget.halfWidth(), 0.05);
    }

    /**
     * 0.5 % of the light, by the definition of L* (ISO/CIE 11664-4): 9.033 L* a percent below 8.
     */
    @Test
    void lightEverywhereMovesBlackAndHardlyPaper() {
        assertEquals(
                Math.hypot(1, 9.033 * 0.5), Systematic.lightness(Trust.PROFILED_SCAN, 3), 0.01);
        // L* 12.5 less 0.5 % of white: 116 cbrt(0.01483 - 0.005) - 16 is 8.85.
        assertEquals(
                Math.hypot(1, 12.5 - 8.85), Systematic.lightness(Trust.PROFILED_SCAN, 12.5), 0.01);
        assertEquals(1.0, Systematic.lightness(Trust.PROFILED_SCAN, 95), 0.03);
        assertEquals(0.3, Systematic.lightness(Trust.INSTRUMENT, 4), 1e-9);
    }

    /**
     * The same example (ISO/IEC Guide 98-3, G.4.1) as one part: 18.98 degrees; of two parts 5.59
     * are cut to 5, which leaves 18.02.
     */
    @Test
    void partsOfOneKindBecomeOne() {
        Budget.Part both =
                new Budget.Part(Budget.Kind.RANDOM, 0.25, 9)
                        .with(new Budget.Part(Budget.Kind.RANDOM, 0.57, 4))
                        .with(new Budget.Part(Budget.Kind.RANDOM, 0.82, 14));
        assertEquals(1.03, both.standard(), 0.005);
        assertEquals(18, both.freedom());
        Budget.Part sure = new Budget.Part(Budget.Kind.RANDOM, 0.25, null);
        assertNull(sure.with(sure).freedom());
    }

    /**
     * Codes of a scanner that raises light to 1/1.8, taken for those of sRGB (IEC 61966-2-1), by
     * the definition of L* (ISO/CIE 11664-4): off by up to 7.9 L*.
     */
    @Test
    void toneWithoutAProfileIsAsUnsureAsAnUnknownGammaMakesIt() {
        double most = 0;
        double squares = 0;
        for (int code = 1; code < 255; code++) {
            double taken = RgbSpace.SRGB.decode(code / 255.0);
            double off = Lab.lightness(Math.pow(code / 255.0, 1.8)) - Lab.lightness(taken);
            most = Math.max(most, Math.abs(off));
            squares += off * off;
        }
        double rms = Math.sqrt(squares / 254);
        assertEquals(7.9, most, 0.05);
        assertTrue(Systematic.curve(Trust.PLAIN_SCAN) >= rms, "rms " + rms);
        assertEquals(5.60, rms, 0.01);
    }

    /** A profile's error of lightness is one of its mid-tones too, not only of its paper. */
    @Test
    void toneOfAProfiledScanIsAsUnsureAsItsLightness() {
        ReadingSet read = Prints.print(Prints.fault(lab -> lab), 0.1, 5);
        for (Trust trust : Trust.values()) {
            ReadingSet set = new ReadingSet(read.readings(), read.space(), trust, true);
            Budget tone =
                    Judgement.of(set, 0.5).budgets().stream()
                            .filter(b -> b.figure().equals("tone.rmsDeltaL"))
                            .findFirst()
                            .orElseThrow();
            double stated =
                    switch (trust) {
                        case INSTRUMENT -> 0.1;
                        case CALIBRATED_SCAN -> 0.2;
                        case PROFILED_SCAN -> 1;
                        case PLAIN_SCAN -> 6;
                    };
            assertEquals(stated, tone.parts().get(tone.parts().size() - 1).standard() * 1.96, 0.01);
            assertTrue(tone.halfWidth() >= stated);
        }
    }

    @Test
    void aStatedPartAloneIsWhatWasStated() {
        Budget budget = new Budget("y", "L*", 1, List.of(Budget.Part.stated(0.6)));
        assertEquals(0.6, budget.halfWidth(), 1e-9);
    }

    /** Two readings that decide alone: Student's factor for one degree of freedom, 12.7. */
    @Test
    void fewRepeatsWidenTheInterval() {
        Budget budget =
                new Budget("y", "L*", 1, List.of(new Budget.Part(Budget.Kind.RANDOM, 0.1, 1)));
        assertEquals(1.27, budget.halfWidth(), 0.005);
    }
}
