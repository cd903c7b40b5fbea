package org.printassay.scannermodel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.printassay.colour.LinearRgb;

/** Simulated: light that was encoded otherwise than its codes were taken to mean. */
class StraighteningTest {
    private static List<TrainingPatch> patches() {
        return new SpectralPrint(SpectralPrint.Paper.ONE)
                .patches(SpectralPrint.codes(200, 5), 1, SpectralPrint.Scanner.FILTERS, 0.03, 3);
    }

    private static double bent(double light) {
        return 0.9 * Math.pow(light, 1.25) + 0.002;
    }

    @Test
    void straightChannelsStay() {
        Straightening found = Straightening.of(patches());
        // Greys of real inks are not quite even: what is left is far below what matters.
        if (found != null) {
            assertEquals(Math.cbrt(0.2), Math.cbrt(found.at(1, 0.2)), 0.004);
        }
    }

    @Test
    void bentChannelsAreStraightened() {
        List<TrainingPatch> bent = new ArrayList<>();
        for (TrainingPatch p : patches()) {
            LinearRgb l = p.light();
            bent.add(
                    new TrainingPatch(
                            p.id(),
                            p.colour(),
                            p.neutral(),
                            new LinearRgb(bent(l.r()), bent(l.g()), bent(l.b())),
                            p.lab()));
        }
        Straightening found = Straightening.of(bent);
        assertNotNull(found);
        for (int c = 0; c < 3; c++) {
            double scale = found.at(c, bent(0.85)) / 0.85;
            for (double light : new double[] {0.02, 0.05, 0.1, 0.2, 0.4, 0.6}) {
                double back = found.at(c, bent(light)) / scale;
                // Half an L*: curves of greys that are not quite even.
                assertEquals(
                        116 * Math.cbrt(light), 116 * Math.cbrt(back), 0.8, c + " at " + light);
            }
        }
    }

    @Test
    void fewGreysShowNoCurve() {
        List<TrainingPatch> few = patches().stream().filter(p -> !p.neutral()).limit(100).toList();
        assertNull(Straightening.of(few));
        assertEquals(100, Objects.requireNonNull(few).size());
    }
}
