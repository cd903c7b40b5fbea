package org.printassay.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.reading.ReadingFlag;

/** Patches of about one tone, drawn with gaps, relief or dust. All simulated. */
class OwnSurfaceTest {
    private static final int PATCHES = 24;
    private static final double SAMPLES_PER_INCH = 300;

    private static double lightness(int i) {
        return 16 + 0.15 * i;
    }

    private static List<MadePatch> solids(double gaps, long seed) {
        Random random = new Random(seed);
        List<MadePatch> solids = new ArrayList<>();
        for (int i = 0; i < PATCHES; i++) {
            MadePatch solid = new MadePatch(lightness(i), SAMPLES_PER_INCH, 0.1, random);
            if (gaps > 0) {
                solid.drops(gaps, 0.8, random);
            }
            solids.add(solid);
        }
        return solids;
    }

    private static List<PatchReads> reads(List<MadePatch> patches) {
        return patches.stream().map(patch -> patch.reads(16, true)).toList();
    }

    /** What is read is the mean of all light, as an eye sees it from where gaps are not seen. */
    @ParameterizedTest
    @ValueSource(doubles = {0.001, 0.002, 0.003, 0.01, 0.03})
    void gapsInSolidsAreThePrint(double share) {
        List<MadePatch> solids = solids(share, 1);
        List<PatchReads> reads = reads(solids);
        List<PatchSample> settled = OwnSurface.settled(reads);
        for (int i = 0; i < PATCHES; i++) {
            double off = MadePatch.lightness(settled.get(i)) - solids.get(i).plainLightness();
            assertEquals(0, off, 0.05, "patch " + i);
            assertFalse(settled.get(i).flags().contains(ReadingFlag.DUSTY));
        }
    }

    /** What would come of some gaps without a look at other patches. */
    @Test
    void aPatchByItselfCannotTellGapsFromDust() {
        List<MadePatch> solids = solids(0.002, 1);
        List<PatchReads> reads = reads(solids);
        double darkest = 0;
        for (int i = 0; i < PATCHES; i++) {
            double read = MadePatch.lightness(reads.get(i).robust());
            darkest = Math.min(darkest, read - solids.get(i).plainLightness());
        }
        assertTrue(darkest < -0.6, "off by " + darkest);
    }

    /** Six specks a patch are some seven thousand on a page. */
    @ParameterizedTest
    @ValueSource(doubles = {0.3, 1, 3, 6})
    void dustFallsWhereItFalls(double specks) {
        PoissonDistribution poisson = new PoissonDistribution(specks);
        poisson.reseedRandomGenerator(3);
        Random random = new Random(3);
        List<MadePatch> solids = solids(0, 2);
        for (MadePatch solid : solids) {
            for (int n = poisson.sample(); n > 0; n--) {
                double x = MadePatch.SIDE_MM * random.nextDouble();
                double y = MadePatch.SIDE_MM * random.nextDouble();
                solid.line(x, y, x, y, 0.1 + 0.4 * Math.pow(random.nextDouble(), 2), 0.5);
            }
        }
        assertEquals(List.of(), readWhole(reads(solids)));
    }

    /** Patches that were read with all that is on them, though something was found on them. */
    private static List<Integer> readWhole(List<PatchReads> reads) {
        List<PatchSample> settled = OwnSurface.settled(reads);
        return IntStream.range(0, PATCHES)
                .filter(i -> !reads.get(i).robust().equals(settled.get(i)))
                .boxed()
                .toList();
    }

    @Test
    void aPencilLineOverGapsIsStillLeftOut() {
        List<MadePatch> solids = solids(0.01, 4);
        solids.get(12).line(0.5, 1, 6.5, 6, 1.2, 0.4);
        List<PatchReads> reads = reads(solids);
        List<Integer> whole = readWhole(reads);
        assertFalse(whole.contains(12));
        assertEquals(PATCHES - 1, whole.size());
    }
}
