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
    /**
     * At 10 nm our weights equal those recomputed outside (printed with six decimals), and are
     * within 0.0008 of ASTM E308 Table 5.
     */
    @Test
    void weightsAreThePublishedOnes() {
        for (Map<String, String> row : Published.rows("astm-e308-d50-2deg-10nm.csv")) {
            int nm = (int) number(row, "nm");
            // A spectrum of one band picks out one weight.
            List<Double> factors = new ArrayList<>(Collections.nCopies(43, 0.0));
            factors.set((nm - 360) / 10, 1.0);
            Xyz xyz = new Spectrum(360, 10, factors).toXyz();
            assertEquals(number(row, "e2022_X"), xyz.x(), 1e-6, row::toString);
            assertEquals(number(row, "e2022_Y"), xyz.y(), 1e-6, row::toString);
            assertEquals(number(row, "e2022_Z"), xyz.z(), 1e-6, row::toString);
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

    /** Every step gives the colour that summing 1 nm by 1 nm gives (CIE 15). */
    @Test
    void stepsAgree() {
        Lab fine = of(360, 780, 1, SpectrumTest::smooth).toLab();
        assertEquals(0, DeltaE.cie1976(fine, of(360, 780, 2, SpectrumTest::smooth).toLab()), 1e-3);
        assertEquals(0, DeltaE.cie1976(fine, of(360, 780, 5, SpectrumTest::smooth).toLab()), 1e-3);
        assertEquals(0, DeltaE.cie1976(fine, of(355, 785, 5, SpectrumTest::smooth).toLab()), 1e-3);
        assertEquals(0, DeltaE.cie1976(fine, of(357, 787, 10, SpectrumTest::smooth).toLab()), 5e-3);
        assertEquals(0, DeltaE.cie1976(fine, of(360, 780, 10, SpectrumTest::smooth).toLab()), 5e-3);
        assertEquals(0, DeltaE.cie1976(fine, of(350, 790, 20, SpectrumTest::smooth).toLab()), 0.1);
    }

    /** 24 measured spectra (colour-cxf test data): thinned to 20 nm they keep their colour. */
    @Test
    void twentyNanometresHoldForRealPrints() {
        double sum = 0;
        int n = 0;
        for (Spectrum ten : PublishedSpectra.prints()) {
            List<Double> thin = new ArrayList<>();
            for (int i = 0; i < ten.factors().size(); i += 2) {
                thin.add(ten.factors().get(i));
            }
            double moved = DeltaE.cie1976(ten.toLab(), new Spectrum(380, 20, thin).toLab());
            assertTrue(moved < 1.5, "moved by " + moved);
            sum += moved;
            n++;
        }
        assertEquals(24, n);
        assertTrue(sum / n < 0.4, "mean " + sum / n);
    }

    @Test
    void refusesWhatGivesNoColour() {
        assertThrows(IllegalArgumentException.class, () -> flat(450, 700, 1));
        assertTrue(Spectrum.whyNot(380, 40, 10).contains("40 nm"));
        assertTrue(Spectrum.whyNot(380, 0, 10).contains("0 nm"));
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
