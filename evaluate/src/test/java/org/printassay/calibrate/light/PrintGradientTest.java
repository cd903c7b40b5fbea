package org.printassay.calibrate.light;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.calibrate.SimulatedScan;
import org.printassay.colour.Lab;
import org.printassay.problem.Problem;
import org.printassay.sheet.Patch;

/**
 * Prints that get lighter from left to right, lit evenly or not. How a tone changes with the ink on
 * it follows Murray and Davies (A. Murray, "Monochrome Reproduction in Photoengraving", Journal of
 * the Franklin Institute 221, 1936): R = 1 - a (1 - Rs), solid ink staying as it is. All data are
 * simulated.
 */
class PrintGradientTest {
    private static final double SOLID = 0.0045;

    /** L* by which a tone is lighter where its area of ink is smaller by a share of it. */
    private static double lighter(double lightness, double share) {
        double area = (1 - Lab.luminanceFactor(lightness)) / (1 - SOLID);
        double less = area * (1 - share * (1 - area));
        return Lab.lightness(1 - less * (1 - SOLID)) - lightness;
    }

    static SimulatedScan scan(double print, double falloff, long seed) throws Problem {
        SimulatedScan scan = new SimulatedScan();
        double width = scan.sheet.page().width();
        scan.drift = (x, y, l) -> lighter(l, print * (x / width - 0.5));
        scan.falloff = falloff;
        scan.dusty = 0;
        scan.grey = true;
        scan.seed = seed;
        return scan;
    }

    /** Largest difference of light over the patches, percent. */
    private static double falloff(SimulatedScan scan) {
        double least = 1;
        double most = 0;
        for (Patch patch : scan.sheet.patches()) {
            double light = scan.light(patch.area().centre().x(), patch.area().centre().y());
            least = Math.min(least, light);
            most = Math.max(most, light);
        }
        return 100 * (1 - least / most);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.05})
    void aPrintsOwnGradientIsNotTakenForTheLight(double lamp) throws Problem {
        SimulatedScan scan = scan(0.08, lamp, 1);
        LightFit fit = LightFit.of(scan.scan());
        assertTrue(fit.print().isPresent());
        assertEquals(falloff(scan), fit.falloffPercent(), 0.25);
        // A tone of L* 50 at the right edge against the middle.
        double truth = Lab.luminanceFactor(50 + lighter(50, 0.04)) / Lab.luminanceFactor(50) - 1;
        double[] right = {1, 0, 1, 0, 0};
        assertEquals(truth, fit.print().orElseThrow().ofMidTone(0, right), 0.25 * truth);
    }

    /** At a level of 0.1 %, three of 60 even prints are one chance in 30 000. */
    @Test
    void lightAloneIsNotTakenForThePrints() throws Problem {
        int told = 0;
        for (long seed = 0; seed < 60; seed++) {
            SimulatedScan scan = scan(0, 0.05, 100 + seed);
            LightFitter.Fitted light = LightFitter.fit(ScanLight.of(scan.scan()));
            LightFitter.Outcome full = Objects.requireNonNull(light.outcome().full());
            told += PrintGradient.of(light.scan(), full).isPresent() ? 1 : 0;
        }
        assertTrue(told < 3, told + " of 60");
    }
}
