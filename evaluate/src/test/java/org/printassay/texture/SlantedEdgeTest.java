package org.printassay.texture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.special.Erf;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Edges blurred by a Gaussian, whose response is known: exp(-2 (pi sigma f)^2), one half at sqrt(2
 * ln 2) / (2 pi sigma).
 */
class SlantedEdgeTest {
    private static final double PITCH_MM = 25.4 / 600;

    private static @Nullable EdgeResponse response(
            double degrees, double sigmaMm, double noise, double contrast) {
        Random random = new Random(4);
        double angle = Math.toRadians(degrees);
        List<double[]> pixels = new ArrayList<>();
        for (int y = -90; y < 90; y++) {
            for (int x = -90; x < 90; x++) {
                double px = x * PITCH_MM + 0.013;
                double py = y * PITCH_MM;
                double across = px * Math.cos(angle) + py * Math.sin(angle);
                double along = py * Math.cos(angle) - px * Math.sin(angle);
                if (Math.abs(along) < 2.5 && Math.abs(across) < 1.8) {
                    double step = 0.5 * (1 + Erf.erf(across / (Math.sqrt(2) * sigmaMm)));
                    double light = 0.2 + contrast * step + noise * random.nextGaussian();
                    // Placed wrongly by 0.06 mm and turned wrongly by 0.6 degrees.
                    pixels.add(new double[] {across + 0.06 + 0.01 * along, along, light});
                }
            }
        }
        return SlantedEdge.response(
                pixels.stream().mapToDouble(p -> p[0]).toArray(),
                pixels.stream().mapToDouble(p -> p[1]).toArray(),
                pixels.stream().mapToDouble(p -> p[2]).toArray(),
                PITCH_MM);
    }

    @ParameterizedTest
    @CsvSource({
        "0.5, 0.03",
        "0.5, 0.045",
        "0.5, 0.08",
        "5, 0.03",
        "5, 0.045",
        "5, 0.08",
        "10, 0.03",
        "10, 0.045",
        "10, 0.08",
        "-5, 0.045",
        "33, 0.045",
        "95, 0.045"
    })
    void halfIsWhereTheBlurPutsIt(double degrees, double sigmaMm) {
        double expected = Math.sqrt(2 * Math.log(2)) / (2 * Math.PI * sigmaMm);
        for (double noise : new double[] {0, 0.01}) {
            EdgeResponse found = response(degrees, sigmaMm, noise, 0.6);
            assertNotNull(found);
            assertEquals(expected, found.halfPerMm(), 0.05 * expected, "noise " + noise);
        }
    }

    /**
     * Sheets turned by 40 to 50 degrees: edges along the diagonals of the pixels, and near them.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.03, 0.045, 0.08})
    void edgesAlongDiagonalsAreMeasured(double sigmaMm) {
        double expected = Math.sqrt(2 * Math.log(2)) / (2 * Math.PI * sigmaMm);
        for (double slant : new double[] {-5, 0, 5}) {
            for (double turn : new double[] {40, 42.5, 44.7, 44.95, 45, 45.1, 46, 48, 50}) {
                for (double noise : new double[] {0, 0.01}) {
                    EdgeResponse found = response(turn + slant, sigmaMm, noise, 0.6);
                    assertNotNull(found);
                    String what = turn + slant + " degrees, noise " + noise;
                    assertEquals(expected, found.halfPerMm(), 0.05 * expected, what);
                }
            }
        }
    }

    /**
     * Along the rows distances come in whole pixels and tell too little: within 5 % or not at all.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.03, 0.045, 0.08})
    void edgesAlongRowsAreMeasuredOrRefused(double sigmaMm) {
        double expected = Math.sqrt(2 * Math.log(2)) / (2 * Math.PI * sigmaMm);
        for (double degrees : new double[] {0, 0.05, 0.1, 0.2, 0.3, 0.4, 26.565, 90, 89.9, 135}) {
            EdgeResponse found = response(degrees, sigmaMm, 0.005, 0.6);
            if (found != null) {
                assertEquals(expected, found.halfPerMm(), 0.05 * expected, degrees + " degrees");
            }
        }
        assertNull(response(0, sigmaMm, 0, 0.6));
    }

    @Test
    void wholeResponseIsTheGaussians() {
        EdgeResponse found = response(5, 0.045, 0, 0.6);
        assertNotNull(found);
        for (double f = 0.5; f < 6; f += 0.5) {
            double expected = Math.exp(-2 * Math.pow(Math.PI * 0.045 * f, 2));
            assertEquals(expected, found.at(f), 0.02, f + " per mm");
        }
    }

    @Test
    void lightEvenOnBothSidesIsNoEdge() {
        assertNull(response(5, 0.045, 0.01, 0.01));
    }
}
