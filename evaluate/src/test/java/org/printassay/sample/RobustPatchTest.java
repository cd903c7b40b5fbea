package org.printassay.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.reading.ReadingFlag;

/**
 * Patches drawn here with dirt on them against the same patches without it: the same grain, the
 * same noise. All simulated.
 */
class RobustPatchTest {
    /** What up to a fifth of the patch under dirt may move it on average, L*. */
    private static final double BIAS_L = 0.1;

    /** The same for what is hardly darker than the patch and thinner than a pixel, L*. */
    private static final double HIDDEN_L = 0.5;

    private static final double[] LIGHTNESSES = {4, 30, 60, 95};
    private static final double[] SAMPLINGS = {150, 300, 600};
    private static final int PATCHES = 6;

    /** What people leave on a glass or a print. */
    enum Dirt {
        DUST {
            @Override
            void lay(MadePatch patch, double share, Random random) {
                while (patch.covered() < share) {
                    double x = MadePatch.SIDE_MM * random.nextDouble();
                    double y = MadePatch.SIDE_MM * random.nextDouble();
                    double own = 0.1 + 0.4 * random.nextDouble();
                    patch.line(x, y, x, y, 0.3 + 0.6 * random.nextDouble(), own);
                }
            }
        },
        HAIRS {
            @Override
            void lay(MadePatch patch, double share, Random random) {
                while (patch.covered() < share) {
                    across(patch, 0.12, 0.05, random);
                }
            }
        },
        SCRATCHES {
            @Override
            void lay(MadePatch patch, double share, Random random) {
                while (patch.covered() < share) {
                    across(patch, 0.2, 0.6, random);
                }
            }
        },
        PENCIL {
            @Override
            void lay(MadePatch patch, double share, Random random) {
                while (patch.covered() < share) {
                    double x = MadePatch.SIDE_MM * random.nextDouble();
                    double y = MadePatch.SIDE_MM * random.nextDouble();
                    patch.line(
                            x,
                            y,
                            x + 2 * random.nextGaussian(),
                            y + 2 * random.nextGaussian(),
                            0.5,
                            0.1);
                }
            }
        },
        FINGERPRINT {
            @Override
            void lay(MadePatch patch, double share, Random random) {
                patch.ridges(share, 0.93);
            }
        };

        abstract void lay(MadePatch patch, double share, Random random);

        static void across(MadePatch patch, double widthMm, double own, Random random) {
            double side = MadePatch.SIDE_MM;
            double from = side * random.nextDouble();
            double to = side * random.nextDouble();
            if (random.nextBoolean()) {
                patch.line(0, from, side, to, widthMm, own);
            } else {
                patch.line(from, 0, to, side, widthMm, own);
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void dirtDoesNotMoveAPatch(Dirt dirt) {
        StringBuilder told = new StringBuilder();
        boolean within = true;
        for (double lightness : LIGHTNESSES) {
            for (double sampling : SAMPLINGS) {
                for (int bits : new int[] {8, 16}) {
                    double bias = 0;
                    for (int i = 0; i < PATCHES; i++) {
                        Random random = new Random(i * 31L + (long) sampling);
                        MadePatch patch = new MadePatch(lightness, sampling, 0.6, random);
                        dirt.lay(patch, 0.15, random);
                        double clean = MadePatch.lightness(patch.read(bits, false));
                        double found = MadePatch.lightness(patch.read(bits, true));
                        bias += (found - clean) / PATCHES;
                    }
                    told.append(
                            String.format(
                                    Locale.ROOT,
                                    "%n%s L* %.0f at %.0f/in, %d bit: %.3f",
                                    dirt,
                                    lightness,
                                    sampling,
                                    bits,
                                    bias));
                    boolean hidden = dirt == Dirt.HAIRS && lightness == 30 && sampling == 150;
                    within &= Math.abs(bias) < (hidden ? HIDDEN_L : BIAS_L);
                }
            }
        }
        assertTrue(within, told.toString());
    }

    @ParameterizedTest
    @EnumSource(names = "FINGERPRINT", mode = EnumSource.Mode.EXCLUDE)
    void whatIsCoveredForTheMostPartIsFlagged(Dirt dirt) {
        for (double sampling : SAMPLINGS) {
            Random random = new Random((long) sampling);
            MadePatch patch = new MadePatch(50, sampling, 0.3, random);
            dirt.lay(patch, 0.45, random);
            assertTrue(MadePatch.doubtful(patch.read(16, true)), dirt + " at " + sampling);
        }
    }

    @Test
    void cleanPatchesCarryNoFlagAndTheirPlainMean() {
        for (double lightness : LIGHTNESSES) {
            for (double sampling : SAMPLINGS) {
                for (int bits : new int[] {8, 16}) {
                    MadePatch patch = new MadePatch(lightness, sampling, 0.6, new Random(5));
                    PatchSample sample = patch.read(bits, false);
                    assertTrue(
                            !MadePatch.doubtful(sample), lightness + " at " + sampling + ": dusty");
                    assertEquals(
                            patch.plainLightness(),
                            MadePatch.lightness(sample),
                            BIAS_L,
                            lightness + " at " + sampling + ", " + bits + " bit");
                }
            }
        }
    }

    @Test
    void sparseDropsOfInkArePartOfTheTone() {
        StringBuilder told = new StringBuilder();
        boolean within = true;
        for (double share : new double[] {0.003, 0.01, 0.03, 0.1, 0.3}) {
            for (double ink : new double[] {0.02, 0.4}) {
                for (double sampling : SAMPLINGS) {
                    double bias = 0;
                    boolean flagged = false;
                    for (int i = 0; i < PATCHES; i++) {
                        Random random = new Random(i * 17L + (long) sampling);
                        MadePatch patch = new MadePatch(96, sampling, 0, random);
                        patch.drops(share, ink, random);
                        PatchSample sample = patch.read(16, false);
                        bias += MadePatch.lightness(sample) - patch.plainLightness();
                        flagged |= sample.flags().contains(ReadingFlag.DUSTY);
                    }
                    told.append(
                            String.format(
                                    Locale.ROOT,
                                    "%n%.3f of %.2f at %.0f/in: %.3f %s",
                                    share,
                                    ink,
                                    sampling,
                                    bias / PATCHES,
                                    flagged));
                    within &= Math.abs(bias / PATCHES) < BIAS_L && !flagged;
                }
            }
        }
        assertTrue(within, told.toString());
    }

    @ParameterizedTest
    @EnumSource(names = "FINGERPRINT", mode = EnumSource.Mode.EXCLUDE)
    void dirtOnSparseDropsIsStillLeftOut(Dirt dirt) {
        for (double sampling : SAMPLINGS) {
            Random random = new Random((long) sampling);
            MadePatch patch = new MadePatch(96, sampling, 0, random);
            patch.drops(0.01, 0.02, random);
            dirt.lay(patch, 0.05, random);
            double found = MadePatch.lightness(patch.read(16, true));
            assertEquals(patch.plainLightness(), found, 0.6, dirt + " at " + sampling);
        }
    }

    @Test
    void aNeighbourThatReachesInIsLeftOut() {
        for (double sampling : SAMPLINGS) {
            MadePatch patch = new MadePatch(10, sampling, 0.4, new Random(9));
            double clean = MadePatch.lightness(patch.read(16, false));
            patch.neighbour(95, 0.4);
            double found = MadePatch.lightness(patch.read(16, false));
            assertEquals(clean, found, BIAS_L, "at " + sampling);
        }
    }

    /**
     * Blur runs all along the edges, as dirt does not; what lies there is left out all the same.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.15, 0.3})
    void blurOverTheEdgesIsNoDust(double reachMm) {
        for (double sampling : SAMPLINGS) {
            MadePatch patch = new MadePatch(50, sampling, 0.4, new Random(9));
            double clean = MadePatch.lightness(patch.read(16, false));
            patch.blurredNeighbours(95, reachMm);
            PatchSample found = patch.read(16, false);
            String at = reachMm + " mm at " + sampling;
            assertFalse(found.flags().contains(ReadingFlag.DUSTY), at);
            assertEquals(clean, MadePatch.lightness(found), BIAS_L, at);
        }
    }

    /** A third of an L*, in a scan whose smoothing left no grain to hide it. */
    @Test
    void faintUnevennessIsNoDust() {
        MadePatch patch = new MadePatch(50, 1200, 0.02, new Random(9));
        patch.softSpot(1.8, 0.015);
        assertFalse(patch.read(16, false).flags().contains(ReadingFlag.DUSTY));
    }

    /** Smoothing that left one code in most of a dark patch and the next in the rest: no dust. */
    @ParameterizedTest
    @ValueSource(doubles = {12, 15, 20, 27})
    void theNextCodeOfASmoothedScanIsNoDust(double lightness) {
        for (double from : new double[] {0.15, 0.3, 0.45}) {
            MadePatch patch = MadePatch.smoothed(lightness, 200, from);
            PatchSample found = patch.read(8, false);
            String at = "L* " + lightness + ", from " + from;
            assertFalse(found.flags().contains(ReadingFlag.DUSTY), at);
            assertEquals(patch.plainLightness(), MadePatch.lightness(found), 0.3, at);
        }
    }

    @ParameterizedTest
    @EnumSource(names = "FINGERPRINT", mode = EnumSource.Mode.EXCLUDE)
    void dirtIsToldBesideBlurToo(Dirt dirt) {
        for (double sampling : SAMPLINGS) {
            Random random = new Random((long) sampling);
            MadePatch patch = new MadePatch(50, sampling, 0.3, random);
            patch.blurredNeighbours(95, 0.15);
            dirt.lay(patch, 0.45, random);
            assertTrue(MadePatch.doubtful(patch.read(16, true)), dirt + " at " + sampling);
        }
    }
}
