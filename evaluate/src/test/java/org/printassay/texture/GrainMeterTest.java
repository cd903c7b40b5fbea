package org.printassay.texture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GrainMeterTest {
    private static final double LIGHTNESS = 55;
    private static final double BLUR_MM = 0.045;

    /** Optics and the pixel's own aperture. */
    private static final double SIGMA_MM = Math.hypot(BLUR_MM, MadeGrain.PITCH_MM / Math.sqrt(12));

    private static GrainMeter.Measured measured(double deltaL, double lengthMm, double noise) {
        Random random = new Random(Math.round(1000 * lengthMm + 10 * deltaL));
        List<PixelTile> tiles = new ArrayList<>();
        double deviation = 3 * deltaL / (LIGHTNESS + 16);
        for (int i = 0; i < 6; i++) {
            tiles.add(MadeGrain.tile(random, 118, deviation, lengthMm, BLUR_MM, noise));
        }
        return GrainMeter.measure(tiles, LIGHTNESS, SIGMA_MM);
    }

    @ParameterizedTest
    @CsvSource({"0.3, 0.05, 0.005", "1, 0.05, 0.005", "2, 0.08, 0.01", "0.5, 0.12, 0.002"})
    void amplitudeOfGrainWithinTenPercent(double deltaL, double lengthMm, double noise) {
        GrainMeter.Measured found = measured(deltaL, lengthMm, noise);
        assertTrue(found.noiseRemoved());
        assertEquals(deltaL, found.graininess(), 0.1 * deltaL);
    }

    @Test
    void noiseOfTheSensorIsNoGrain() {
        assertEquals(0, measured(0, 0.05, 0.01).graininess(), 0.06);
    }

    @Test
    void slowUnevennessIsMottle() {
        GrainMeter.Measured slow = measured(1, 0.8, 0.002);
        assertTrue(slow.mottle() > 1.5 * slow.graininess(), slow.toString());
    }

    @Test
    void paperIsTakenOffInSquares() {
        GrainMeter.Measured both = new GrainMeter.Measured(0.5, 0.5, 5, true, 4);
        assertEquals(0.3, both.less(0.4, 0.6).graininess(), 1e-9);
        assertEquals(0, both.less(0.4, 0.6).mottle(), 1e-9);
    }
}
