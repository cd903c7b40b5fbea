package org.printassay.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.printassay.colour.Published.number;

import java.util.Map;
import org.junit.jupiter.api.Test;

class LabTest {
    /**
     * Own computation kept beside the standard's formula; round value 18 % = D 0.745 = L* 49.50.
     */
    @Test
    void lightnessAndDensityAgreeWithTheTable() {
        for (Map<String, String> row : Published.rows("density-lstar.csv")) {
            double factor = Math.pow(10, -number(row, "D"));
            assertEquals(number(row, "Lstar"), Lab.lightness(factor), 0.5e-4, row::toString);
            assertEquals(number(row, "D"), Density.ofFactor(factor), 1e-12, row::toString);
            assertEquals(
                    number(row, "D"),
                    Density.ofLightness(number(row, "Lstar")),
                    1e-4,
                    row::toString);
        }
        assertEquals(49.50, Lab.lightness(0.18), 0.005);
        assertEquals(0.745, Density.ofFactor(0.18), 0.0005);
    }

    /** ASTM D1535 neutrals. */
    @Test
    void munsellNeutrals() {
        for (Map<String, String> row : Published.rows("munsell-neutrals.csv")) {
            double factor = number(row, "Y_astm") / 100;
            assertEquals(number(row, "Lstar"), Lab.lightness(factor), 1e-4, row::toString);
            if (factor > 0) {
                assertEquals(number(row, "D"), Density.ofFactor(factor), 1e-4, row::toString);
            }
        }
    }

    @Test
    void densityOfNothingIsBounded() {
        assertEquals(Density.MAX, Density.ofFactor(0));
        assertEquals(Density.MAX, Density.ofFactor(-0.01));
        assertEquals(0, Density.ofFactor(1), 1e-15);
    }

    @Test
    void goesThereAndBack() {
        for (double l = -2; l <= 100; l += 3) {
            for (double a = -120; a <= 120; a += 30) {
                for (double b = -120; b <= 120; b += 30) {
                    Lab lab = new Lab(l, a, b);
                    Lab back = Lab.of(lab.toXyz(Xyz.PCS_WHITE), Xyz.PCS_WHITE);
                    assertEquals(0, DeltaE.cie1976(lab, back), 1e-9, lab::toString);
                }
            }
            assertEquals(l, Lab.lightness(Lab.luminanceFactor(l)), 1e-12);
        }
    }

    @Test
    void refusesWhatIsNoNumber() {
        assertThrows(IllegalArgumentException.class, () -> new Lab(Double.NaN, 0, 0));
    }
}
