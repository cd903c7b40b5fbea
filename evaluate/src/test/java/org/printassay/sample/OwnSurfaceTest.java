package org.printassay.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.reading.ReadingFlag;

/** Patches of about one tone, drawn with gaps, relief or dust. All simulated. */
class OwnSurfaceTest {
    /** Dark ones of about one tone, first, and as many of bare paper. */
    private static final int DARK = 40;

    /** Of the dark ones those with others on both sides of their tone. */
    private static final int PATCHES = 24;

    private static final double SAMPLES_PER_INCH = 300;

    /** Lightness of the neighbours that blur brings over edges. */
    private static final double PAPER = 95;

    private static List<MadePatch> sheet(double gaps, long seed) {
        Random random = new Random(seed);
        List<MadePatch> sheet = new ArrayList<>();
        for (int i = 0; i < DARK; i++) {
            MadePatch solid = new MadePatch(16 + 0.15 * i, SAMPLES_PER_INCH, 0.1, random);
            if (gaps > 0) {
                solid.drops(gaps, 0.8, random);
            }
            sheet.add(solid);
        }
        for (int i = 0; i < DARK; i++) {
            sheet.add(new MadePatch(PAPER, SAMPLES_PER_INCH, 0.1, random));
        }
        return sheet;
    }

    private static void specks(List<MadePatch> sheet, double each, double widthMm) {
        PoissonDistribution poisson = new PoissonDistribution(each);
        poisson.reseedRandomGenerator(3);
        Random random = new Random(3);
        for (MadePatch patch : sheet) {
            for (int n = poisson.sample(); n > 0; n--) {
                double x = MadePatch.SIDE_MM * random.nextDouble();
                double y = MadePatch.SIDE_MM * random.nextDouble();
                patch.line(x, y, x, y, widthMm * (0.5 + random.nextDouble()), 0.3);
            }
        }
    }

    private static List<PatchReads> reads(List<MadePatch> patches) {
        return patches.stream().map(patch -> patch.reads(16, true)).toList();
    }

    /** What is read is the mean of all light, as an eye sees it from where gaps are not seen. */
    @ParameterizedTest
    @ValueSource(doubles = {0.001, 0.002, 0.003, 0.01, 0.03})
    void gapsInSolidsAreThePrint(double share) {
        List<MadePatch> sheet = sheet(share, 1);
        List<PatchSample> settled = OwnSurface.settled(reads(sheet));
        for (int i = 0; i < PATCHES; i++) {
            double off = MadePatch.lightness(settled.get(i)) - sheet.get(i).plainLightness();
            assertEquals(0, off, 0.05, "patch " + i);
            assertFalse(settled.get(i).flags().contains(ReadingFlag.DUSTY));
        }
    }

    /** What would come of some gaps without a look at other patches. */
    @Test
    void aPatchByItselfCannotTellGapsFromDust() {
        List<MadePatch> sheet = sheet(0.002, 1);
        List<PatchReads> reads = reads(sheet);
        double darkest = 0;
        for (int i = 0; i < PATCHES; i++) {
            double read = MadePatch.lightness(reads.get(i).robust());
            darkest = Math.min(darkest, read - sheet.get(i).plainLightness());
        }
        assertTrue(darkest < -0.6, "off by " + darkest);
    }

    /** What blur brings over the edges is no gap: the middle is read, as with a sharp scan. */
    @ParameterizedTest
    @ValueSource(doubles = {0.3, 0.6})
    void blurOverEdgesIsStillLeftOut(double reachMm) {
        List<MadePatch> sheet = sheet(0.002, 1);
        List<Double> truth = sheet.stream().map(MadePatch::plainLightness).toList();
        sheet.subList(0, DARK).forEach(solid -> solid.blurredNeighbours(PAPER, reachMm));
        List<PatchSample> settled = OwnSurface.settled(reads(sheet));
        for (int i = 0; i < PATCHES; i++) {
            double off = MadePatch.lightness(settled.get(i)) - truth.get(i);
            assertEquals(0, off, 0.75, "patch " + i);
        }
    }

    /** Six specks a patch are some seven thousand on a page, forty are more than anyone scans. */
    @ParameterizedTest
    @ValueSource(doubles = {0.3, 1, 3, 6, 16, 40})
    void dustFallsOnPaperAsOnInk(double specks) {
        List<MadePatch> sheet = sheet(0, 2);
        specks(sheet, specks, 0.2);
        List<PatchReads> reads = reads(sheet);
        List<PatchSample> settled = OwnSurface.settled(reads);
        for (int i = 0; i < PATCHES; i++) {
            double robust = MadePatch.lightness(reads.get(i).robust());
            double off = Math.abs(MadePatch.lightness(settled.get(i)) - robust);
            boolean doubted = settled.get(i).flags().contains(ReadingFlag.DUSTY);
            assertTrue(off < 0.05 || doubted, "patch " + i + " off by " + off);
        }
    }

    /** A pencil line, a spot of another paper, a faint stroke over one solid that has gaps. */
    @ParameterizedTest
    @CsvSource({
        "0.01, 0.5, 1, 6.5, 6, 1.2, 0.4",
        "0.002, 3, 3, 3.4, 3, 0.8, 0.7",
        "0.01, 3, 3, 3.6, 3, 1.2, 0.7",
        "0.01, 0.5, 1, 6.5, 6, 0.4, 0.06"
    })
    void whatLiesOnOneOfThemIsTold(
            double gaps, double x0, double y0, double x1, double y1, double widthMm, double own) {
        List<MadePatch> sheet = sheet(gaps, 4);
        double truth = sheet.get(12).plainLightness();
        sheet.get(12).line(x0, y0, x1, y1, widthMm, own);
        PatchSample settled = OwnSurface.settled(reads(sheet)).get(12);
        double off = Math.abs(MadePatch.lightness(settled) - truth);
        assertTrue(off < 0.65 || settled.flags().contains(ReadingFlag.DUSTY), "off by " + off);
    }
}
