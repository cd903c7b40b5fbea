package org.printassay.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.printassay.colour.Published.number;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class DeltaETest {
    /** The paper prints four decimals: half a unit in the last place is what it can promise. */
    private static final double PRINTED = 0.5e-4;

    /** Sharma, Wu, Dalal (2005), Table 1. */
    @Test
    void ciede2000AgreesWithPublishedPairs() {
        List<Map<String, String>> pairs = Published.rows("ciede2000-sharma.csv");
        assertEquals(34, pairs.size());
        for (Map<String, String> row : pairs) {
            Lab one = new Lab(number(row, "L1"), number(row, "a1"), number(row, "b1"));
            Lab two = new Lab(number(row, "L2"), number(row, "a2"), number(row, "b2"));
            double expected = number(row, "dE00");
            assertEquals(expected, DeltaE.ciede2000(one, two), PRINTED, row::toString);
            assertEquals(expected, DeltaE.ciede2000(two, one), PRINTED, () -> "swapped " + row);
        }
    }

    /** DESIGN section 8: dE00 shrinks 1 L* at L* 5 to 0.60. */
    @Test
    void ciede2000ShrinksLightnessStepsNearBlack() {
        assertEquals(0.60, DeltaE.ciede2000(new Lab(4.5, 0, 0), new Lab(5.5, 0, 0)), 0.005);
    }

    @Test
    void equalColoursDoNotDiffer() {
        for (Lab lab : List.of(new Lab(0, 0, 0), new Lab(50, 20, -30), new Lab(100, 0, 0))) {
            assertEquals(0, DeltaE.ciede2000(lab, lab));
            assertEquals(0, DeltaE.cie1976(lab, lab));
            assertEquals(0, DeltaE.deltaHab(lab, lab));
        }
    }

    /** ISO/CIE 11664-4: dE^2 = dL^2 + dC^2 + dH^2, dE^2 = dL^2 + da^2 + db^2. */
    @Test
    void partsMakeTheWhole() {
        Lab aim = new Lab(60, 30, 40);
        Lab measured = new Lab(58, 40, 31);
        double dL = -2;
        double dC = DeltaE.deltaChroma(aim, measured);
        double dH = DeltaE.deltaHab(aim, measured);
        double dE = DeltaE.cie1976(aim, measured);
        assertEquals(Math.sqrt(4 + 100 + 81), dE, 1e-12);
        assertEquals(dE * dE, dL * dL + dC * dC + dH * dH, 1e-9);
        assertEquals(Math.sqrt(181), DeltaE.deltaCh(aim, measured), 1e-12);
        assertTrue(dH < 0, "hue turned clockwise, towards red");
        assertEquals(-dH, DeltaE.deltaHab(measured, aim), 1e-12);
    }

    @Test
    void neutralHasNoHueDifference() {
        assertEquals(0, DeltaE.deltaHab(new Lab(50, 0, 0), new Lab(50, 10, 3)));
    }
}
