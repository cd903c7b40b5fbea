package org.printassay.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.function.DoubleToIntFunction;
import java.util.function.IntUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Codes of made scans (simulated) in 8 bits, as they are and edited. */
class CodeCensusTest {
    private static final double EDITED = 0.05;

    /** A chart from black of code 40 to paper: ramps between patches, and noise of one code. */
    private static CodeCensus chart(double noise, IntUnaryOperator edit) {
        return census(
                noise,
                light -> {
                    long code = Math.round(light);
                    return 257 * edit.applyAsInt((int) Math.max(0, Math.min(255, code)));
                });
    }

    /**
     * The same with any codes.
     *
     * @param scanned from light with its noise, 0-255, to a code of 16 bits
     */
    private static CodeCensus census(double noise, DoubleToIntFunction scanned) {
        Random random = new Random(1);
        CodeCensus census = new CodeCensus(1);
        char[] row = new char[4000];
        for (int line = 0; line < 200; line++) {
            for (int x = 0; x < row.length; x++) {
                // A tenth of all pixels lie on edges, between two patches.
                double patch = 40 + 205.0 * ((x - x % 40) / 3960.0);
                double next = 40 + 205.0 * random.nextDouble();
                double light = x % 40 < 4 ? patch + (next - patch) * random.nextDouble() : patch;
                row[x] = (char) scanned.applyAsInt(light + noise * random.nextGaussian());
            }
            census.add(row, row.length);
        }
        return census;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.6, 0.8, 1.2, 1.5})
    void aCurveInEightBitsPullsCodesApartInOneThird(double gamma) {
        CodeCensus edited = chart(1, v -> (int) Math.round(255 * Math.pow(v / 255.0, gamma)));
        assertTrue(edited.gapsInAThird() > EDITED, "" + edited.gapsInAThird());
    }

    /** Few tones, so many codes apart. */
    @ParameterizedTest
    @ValueSource(ints = {51, 17, 8})
    void tonesMergedIntoFewAreGaps(int apart) {
        CodeCensus merged = chart(1, v -> Math.round(v / (float) apart) * apart);
        assertTrue(merged.merged());
        assertTrue(merged.gaps() > 0.8, "" + merged.gaps());
        assertEquals(apart, merged.stepNear(0, 128 / apart * apart), 1e-9);
    }

    /** As the scan is, and with a sixth of its codes left: more than a seventh. */
    @Test
    void aScanOfManyTonesIsNotMerged() {
        assertFalse(chart(1, v -> v).merged());
        assertFalse(chart(1, v -> v / 6 * 6).merged(), "35 tones in 206 codes");
    }

    /** A mild edit in 16 bits leaves no gaps of whole codes, but no more tones than there were. */
    @Test
    void tonesOfEightBitsAreToldWhereTheyWereMoved() {
        for (double gamma : new double[] {0.98, 1.3}) {
            CodeCensus edited =
                    census(
                            1,
                            light -> {
                                double eight = Math.rint(light) / 255;
                                return (int) Math.round(65535 * Math.pow(0.99 * eight, gamma));
                            });
            assertTrue(edited.editedFromEightBits(), "gamma " + gamma);
        }
        assertFalse(census(1, light -> (int) Math.round(257 * light)).editedFromEightBits());
        assertFalse(census(0.1, light -> (int) Math.round(257 * light)).editedFromEightBits());
        assertFalse(chart(1, v -> v).editedFromEightBits(), "8 bits as they are");
    }

    /** Codes of clean scans, even where patches hold one code each. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 0.5, 0.2})
    void aPlainScanHasNoGaps(double noise) {
        assertEquals(0, chart(noise, v -> v).gapsInAThird());
    }

    /** By hand: steps of 1, 1 and 2 are as one of the root of 10/4. */
    @Test
    void gapsBetweenCodesAreStepsWhereTheyLie() {
        CodeCensus edited = chart(1, v -> v < 140 ? v : v + (v - 140) / 3);
        assertEquals(1, edited.stepNear(0, 100));
        assertEquals(Math.sqrt(10 / 4.0), edited.stepNear(0, 170), 0.08);
        assertEquals(2, chart(1, v -> 2 * (v / 2)).stepNear(0, 150), 1e-12);
        assertEquals(1, chart(0.2, v -> v).stepNear(0, 120));
    }

    /** By hand: even steps of s are as one of s, however wide. */
    @Test
    void wideGapsLookNoBetterThanNarrowOnes() {
        for (int s = 2; s <= 12; s++) {
            int step = s;
            assertEquals(s, chart(1, v -> step * (v / step)).stepNear(0, 150), 1e-12, "by " + s);
        }
    }

    /**
     * Patches of few tones stand far out from what edges fill: every code occurs, however rare
     * beside those of patches.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.3, 0.5, 0.8, 1.2})
    void fewTonesAllOverTheRangeAreNoEdit(double noise) {
        Random random = new Random(2);
        CodeCensus few = new CodeCensus(1);
        char[] row = new char[6000];
        for (int line = 0; line < 200; line++) {
            for (int x = 0; x < row.length; x++) {
                double patch = 30 + 15 * (x / 400);
                double light = x % 40 < 2 ? 30 + 210 * random.nextDouble() : patch;
                row[x] = (char) (257 * Math.round(light + noise * random.nextGaussian()));
            }
            few.add(row, row.length);
        }
        assertEquals(0, few.gaps());
        assertEquals(0, few.gapsInAThird());
    }

    /** By hand: a stretch by s leaves 1 of s codes. */
    @ParameterizedTest
    @ValueSource(doubles = {1.08, 1.12, 1.5, 2, 3})
    void aStretchLeavesGapsOverTheWholeRange(double by) {
        CodeCensus edited = chart(1, v -> (int) Math.min(255, Math.round(by * (v - 40))));
        assertEquals(1 - 1 / by, edited.gaps(), 0.02);
    }

    /** Between few dark tones whole runs of codes are rare: that is no edit. */
    @Test
    void fewDarkTonesAreNoEdit() {
        CodeCensus few = chart(0.3, v -> v < 100 ? 40 + (v - 40) / 6 * 6 : v);
        assertEquals(0, few.gapsInAThird());
        CodeCensus single = chart(0.3, v -> v < 120 ? 40 : v);
        assertEquals(0, single.gapsInAThird());
    }
}
