package org.printassay.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.colour.Rgb8;

/** Bands in simulated tints; a longer run with {@code -DsurfaceTrials=400}. */
class BandDetectorTest {
    private static final int TRIALS = Integer.getInteger("surfaceTrials", 8);

    private static List<TintTrace> tints(long seed, MadeTint.Band band) {
        List<TintTrace> tints = new ArrayList<>();
        for (int k = 0; k < 3; k++) {
            tints.add(
                    new MadeTint(100 * seed + k, 150, 40 + 15 * k, 1.5, 0.05)
                            .withDust(40)
                            .with(band)
                            .trace("T" + k, Rgb8.grey(100 + 40 * k), Along.Y));
        }
        return tints;
    }

    @Test
    void bandsOfThreeTenthsAreFoundWithTheirPeriod() {
        Random random = new Random(11);
        int found = 0;
        int others = 0;
        double farthest = 0;
        double amplitudes = 0;
        for (int seed = 0; seed < TRIALS; seed++) {
            double period = 1 + 9 * random.nextDouble();
            MadeTint.Band band = new MadeTint.Band(period, 0.3, random.nextDouble());
            for (FoundBand one : BandDetector.find(tints(seed, band), ContrastSensitivity.USUAL)) {
                boolean same = Math.abs(one.periodMm() / period - 1) <= 0.03;
                found += same ? 1 : 0;
                others += same ? 0 : 1;
                if (same) {
                    farthest = Math.max(farthest, Math.abs(one.periodMm() / period - 1));
                    amplitudes += one.amplitudeDeltaL();
                    assertEquals(0.3, one.amplitudeDeltaL(), 0.06);
                    assertTrue(one.visible(), "0.3 L* at " + period + " mm can be seen");
                }
            }
        }
        String counts =
                String.format(
                        Locale.ROOT,
                        "%d of %d bands, period within %.2f %%, mean amplitude %.3f L*, %d others",
                        found,
                        TRIALS,
                        100 * farthest,
                        amplitudes / found,
                        others);
        System.out.println(counts);
        assertTrue(found >= 0.95 * TRIALS, counts);
        assertTrue(20 * others < Math.max(20, TRIALS), counts);
    }

    /** As many tints as some forty sheets have, one by one. */
    @Test
    void grainOfShortTintsIsNoBand() {
        for (int seed = 0; seed < 1000; seed++) {
            TintTrace tint =
                    new MadeTint(50_000 + seed, 85, 50, 1.5, 0.05)
                            .trace("T", Rgb8.grey(120), Along.X);
            assertEquals(List.of(), BandDetector.find(List.of(tint), ContrastSensitivity.USUAL));
        }
    }

    /** Handbook tables of F: 2 and 20 degrees of freedom, 0.01 and 0.05 exceed 5.849 and 3.493. */
    @Test
    void noiseKnownFromFewPowersIsExceededMoreOften() {
        BandTrace.Noise noise = new BandTrace.Noise(1, 10);
        assertEquals(5.849, noise.exceeded(-Math.log(0.01)), 0.001);
        assertEquals(3.493, noise.exceeded(-Math.log(0.05)), 0.001);
    }

    /** The mean of exponential numbers, whatever the largest fifth of them is. */
    @Test
    void noiseIsToldBesideBands() {
        Random random = new Random(8);
        double[] powers = new double[20_000];
        for (int i = 0; i < powers.length; i++) {
            powers[i] = -3 * Math.log(1 - random.nextDouble());
        }
        assertEquals(3, BandTrace.Noise.of(powers, 100).mean(), 0.06);
        Arrays.fill(powers, 0, 2000, 1e6);
        // What lies below the largest fifth is then the lower eight ninths of the noise.
        assertEquals(3.82, BandTrace.Noise.of(powers, 100).mean(), 0.1);
    }

    /** Narrow seams have strong harmonics; what repeats is the seam. */
    @ParameterizedTest
    @CsvSource({"8, 1.5", "11, 0.8", "5, 0.8"})
    void seamsAreToldByTheirDistance(double every, double width) {
        List<TintTrace> tints = new ArrayList<>();
        for (int k = 0; k < 4; k++) {
            double lightness = 40 + 12 * k;
            MadeTint tint = new MadeTint(700 + k, 180, lightness, 1.5, 0.05);
            for (double at = 3; at < 180; at += every) {
                tint.with(new MadeTint.Line(at, width, -0.6 * 3 / (lightness + 16)));
            }
            tints.add(tint.trace("T" + k, Rgb8.grey(90 + 35 * k), Along.Y));
        }
        List<FoundBand> bands = BandDetector.find(tints, ContrastSensitivity.USUAL);
        assertEquals(1, bands.size(), bands.toString());
        assertEquals(every, bands.get(0).periodMm(), 0.03 * every);
    }

    @Test
    void fineBandsAreMeasuredButNotSeen() {
        MadeTint.Band band = new MadeTint.Band(0.6, 0.08, 0.2);
        List<FoundBand> bands = BandDetector.find(tints(3, band), ContrastSensitivity.USUAL);
        assertEquals(1, bands.size());
        assertEquals(0.6, bands.get(0).periodMm(), 0.002);
        assertFalse(bands.get(0).visible());
    }

    /**
     * Barten's formula peaks at several hundred between 2 and 5 cycles per degree in good light,
     * and is 1 near 50 to 60 cycles per degree, the limit of acuity (textbook values, from memory).
     */
    @Test
    void sensitivityHasTheShapeThatIsKnown() {
        double peak = 0;
        double at = 0;
        for (double u = 0.5; u < 60; u += 0.1) {
            double value = ContrastSensitivity.barten(u, 100, 10);
            if (value > peak) {
                peak = value;
                at = u;
            }
        }
        assertTrue(at > 2 && at < 6, "peak at " + at);
        assertTrue(peak > 200 && peak < 700, "peak " + peak);
        assertTrue(ContrastSensitivity.barten(45, 100, 10) > 1);
        assertTrue(ContrastSensitivity.barten(65, 100, 10) < 1);
        assertEquals(6.98, new ContrastSensitivity(400, 500).cyclesPerDegree(1), 0.01);
    }
}
