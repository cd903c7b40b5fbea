package org.printassay.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.printassay.colour.Published.number;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class SpectrumTest {
    /** The weights shipped are the published file's, and within 0.0008 of ASTM E308 Table 5. */
    @Test
    void weightsAreThePublishedOnes() {
        for (Map<String, String> row : Published.rows("astm-e308-d50-2deg-10nm.csv")) {
            int nm = (int) number(row, "nm");
            // A spectrum of one band picks out one weight.
            List<Double> factors = new ArrayList<>(Collections.nCopies(43, 0.0));
            factors.set((nm - 360) / 10, 1.0);
            Xyz xyz = new Spectrum(360, 10, factors).toXyz();
            assertEquals(number(row, "e2022_X"), xyz.x(), 1e-9, row::toString);
            assertEquals(number(row, "T5_X"), xyz.x(), 0.0008, row::toString);
            assertEquals(number(row, "T5_Y"), xyz.y(), 0.0008, row::toString);
            assertEquals(number(row, "T5_Z"), xyz.z(), 0.0008, row::toString);
        }
    }

    /** White of ASTM E308 D50: 96.422 100 82.521. */
    @Test
    void perfectDiffuserIsWhite() {
        for (Spectrum white : List.of(flat(360, 780, 1), flat(380, 730, 1), flat(400, 700, 1))) {
            Lab lab = white.toLab();
            assertEquals(100, lab.l(), 1e-3);
            assertEquals(0, lab.chroma(), 0.003);
        }
    }

    /** ISO 5-3: a flat 18 % reflector has D 0.745 in every status. */
    @Test
    void flatReflectorHasOneDensity() {
        Spectrum grey = flat(380, 730, 0.18);
        Density.Filters a = Density.statusA(grey);
        Density.Filters t = Density.statusT(grey);
        for (double d :
                new double[] {
                    Density.visual(grey), a.red(), a.green(), a.blue(), t.red(), t.green(), t.blue()
                }) {
            assertEquals(0.745, d, 0.0005);
        }
    }

    /** Yellow ink (simulated step at 500 nm) is dense to blue, clear to red. */
    @Test
    void filtersSeeTheirInk() {
        Spectrum yellow = of(380, 730, 10, nm -> nm < 500 ? 0.05 : 0.85);
        Density.Filters t = Density.statusT(yellow);
        assertTrue(t.blue() > 0.8 && t.red() < 0.1, t::toString);
    }

    @Test
    void stepsAgree() {
        Lab ten = of(380, 730, 10, SpectrumTest::smooth).toLab();
        assertEquals(0, DeltaE.cie1976(ten, of(380, 730, 5, SpectrumTest::smooth).toLab()), 1e-9);
        assertEquals(0, DeltaE.cie1976(ten, of(375, 735, 5, SpectrumTest::smooth).toLab()), 1e-9);
        assertEquals(0, DeltaE.cie1976(ten, of(380, 730, 1, SpectrumTest::smooth).toLab()), 1e-9);
        assertTrue(DeltaE.cie1976(ten, of(380, 740, 20, SpectrumTest::smooth).toLab()) < 0.1);
    }

    @Test
    void refusesWhatGivesNoColour() {
        assertThrows(IllegalArgumentException.class, () -> flat(450, 700, 1));
        assertThrows(IllegalArgumentException.class, () -> of(380, 730, 7, SpectrumTest::smooth));
        assertTrue(Spectrum.whyNot(380, 40, 10).contains("40 nm"));
        assertTrue(Spectrum.whyNot(383, 10, 36).contains("never meet"));
    }

    private static Spectrum flat(int from, int to, double factor) {
        return of(from, to, 10, nm -> factor);
    }

    private static Spectrum of(int from, int to, int step, DoubleUnaryOperator factor) {
        List<Double> factors = new ArrayList<>();
        for (int nm = from; nm <= to; nm += step) {
            factors.add(factor.applyAsDouble(nm));
        }
        return new Spectrum(from, step, factors);
    }

    /** A smooth made-up spectrum (simulated). */
    private static double smooth(double nm) {
        return 0.4 + 0.3 * Math.sin(nm / 45) + 0.1 * Math.cos(nm / 90);
    }
}
