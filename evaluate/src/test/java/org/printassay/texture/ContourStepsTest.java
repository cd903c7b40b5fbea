package org.printassay.texture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.apache.commons.math3.analysis.interpolation.LinearInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ContourStepsTest {
    private static final double STEP_MM = 25.4 / 600;

    private static final double CODE_MM = 60.0 / 48;

    /** A vignette of 60 mm over 48 levels in whole codes, as 8 bit files have it. */
    private static double[] vignette(double jumpL, double jumpMm) {
        Random random = new Random(2);
        double[] values = new double[(int) (60 / STEP_MM)];
        for (int i = 0; i < values.length; i++) {
            double at = i * STEP_MM;
            values[i] =
                    5
                            + 0.3 * Math.round(48 * at / 60)
                            + (at > jumpMm ? jumpL : 0)
                            + 0.08 * random.nextGaussian();
        }
        return values;
    }

    private static List<ContourSteps.Step> found(double[] values, double stepMm, double codeMm) {
        return ContourSteps.find(values, new double[0][], stepMm, codeMm);
    }

    /** A note stuck over half of a vignette, or dust, shows in a few strips alone. */
    @Test
    void whatCrossesAFewStripsOnlyIsNoStep() {
        double[] plain = vignette(0, 0);
        double[] stepped = vignette(2, 37.2);
        for (int crossed : new int[] {4, 8}) {
            double[][] strips = new double[8][];
            double[] mean = new double[plain.length];
            for (int s = 0; s < strips.length; s++) {
                strips[s] = s < crossed ? stepped : plain;
                for (int i = 0; i < mean.length; i++) {
                    mean[i] += strips[s][i] / strips.length;
                }
            }
            assertEquals(1, found(mean, STEP_MM, CODE_MM).size(), "the mean of all shows it");
            assertEquals(
                    crossed == 8 ? 1 : 0,
                    ContourSteps.find(mean, strips, STEP_MM, CODE_MM).size(),
                    crossed + " of 8 strips");
        }
    }

    /**
     * What a scanner does in one column takes the same share of light from bare paper, there in all
     * strips: 3 % are 1.2 L* of paper and 0.5 L* of a tone of L* 30.
     */
    @Test
    void stepsOfTheScannerGoOnOverBarePaper() {
        double[] steps = {1.2, 0.1, -1.2};
        for (double onPaper : steps) {
            double[][] paper = new double[8][1400];
            Random random = new Random(9);
            for (double[] strip : paper) {
                for (int i = 0; i < strip.length; i++) {
                    strip[i] = 100 + (i < 700 ? 0 : onPaper) + 0.3 * random.nextGaussian();
                }
            }
            boolean same = onPaper > 1;
            assertEquals(Optional.of(same), goesOn(paper, 700), "paper by " + onPaper);
            assertEquals(Optional.of(false), goesOn(paper, 500), "elsewhere");
            assertEquals(Optional.empty(), goesOn(paper, 1390), "beyond its end");
            for (int s = 0; s < 4; s++) {
                paper[s] = paper[s].clone();
                Arrays.fill(paper[s], 100);
            }
            assertEquals(Optional.of(false), goesOn(paper, 700), "half of the strips");
        }
    }

    private static Optional<Boolean> goesOn(double[][] paper, double at) {
        return ContourSteps.goesOn(paper, at, STEP_MM, 30, 0.5);
    }

    /**
     * Drops that stand far apart in the lightest tones, or gaps in the darkest, scatter there
     * alone: what looks like a step in the mean is in some strips more than in others. A step is in
     * all.
     */
    @Test
    void coarseGrainOfOneToneMakesNoSteps() {
        for (int seed = 0; seed < 40; seed++) {
            assertEquals(0, inGrain(0, seed).size(), "seed " + seed);
            assertEquals(1, inGrain(2, seed).size(), "seed " + seed);
        }
    }

    private static List<ContourSteps.Step> inGrain(double jump, long seed) {
        Random random = new Random(seed);
        double[] stepped = vignette(jump, 37.2);
        double[][] strips = new double[8][stepped.length];
        double[] mean = new double[stepped.length];
        double level = 0;
        for (int s = 0; s < strips.length; s++) {
            for (int i = 0; i < mean.length; i++) {
                double coarse = i > 0.45 * mean.length && i < 0.55 * mean.length ? 2.5 : 0.05;
                level = 0.8 * level + 0.6 * random.nextGaussian();
                double grain = (jump > 0 ? 0.2 : 1) * coarse * level;
                strips[s][i] = stepped[i] + grain;
                mean[i] += strips[s][i] / strips.length;
            }
        }
        return ContourSteps.find(mean, strips, STEP_MM, CODE_MM);
    }

    @Test
    void wholeCodesMakeNoSteps() {
        assertEquals(List.of(), found(vignette(0, 0), STEP_MM, CODE_MM));
    }

    /** Deep blacks rise by half an L* a code and more: it is the file's step, not the printer's. */
    @Test
    void wholeCodesOfASteepToneMakeNoSteps() {
        double codeMm = 1.75;
        for (double codeL : new double[] {0.5, 0.6, 0.8}) {
            Random random = new Random(6);
            double[] values = new double[(int) (48 * codeMm / STEP_MM)];
            for (int i = 0; i < values.length; i++) {
                // Three codes on four strips: some codes are twice as long as others.
                double strip = Math.floor(i * STEP_MM / codeMm / 0.75);
                values[i] = codeL * Math.round(0.75 * strip) + 0.08 * random.nextGaussian();
            }
            assertEquals(List.of(), found(values, STEP_MM, codeMm), "by " + codeL);
        }
    }

    /** Shadows that block and then rise steeply bend; they do not break. */
    @Test
    void aKneeMakesNoStep() {
        Random random = new Random(4);
        double codeMm = 54.0 / 255;
        double[] values = new double[(int) (54 / STEP_MM)];
        for (int i = 0; i < values.length; i++) {
            double code = Math.floor(i * STEP_MM / codeMm);
            double rise = 3 * Math.log1p(Math.exp((code - 24) / 3)) * 0.5;
            values[i] = 16 + rise / (1 + rise / 300) + 0.05 * random.nextGaussian();
        }
        assertEquals(List.of(), found(values, STEP_MM, codeMm));
    }

    @Test
    void stepsAreFoundPlacedAndSized() {
        for (double jump : new double[] {0.9, -1.2}) {
            List<ContourSteps.Step> steps = found(vignette(jump, 37.2), STEP_MM, CODE_MM);
            assertEquals(1, steps.size());
            assertEquals(37.2, steps.get(0).at() * STEP_MM, 0.3);
            assertTrue(Math.abs(steps.get(0).deltaL() - jump) < 0.25, steps.toString());
        }
    }

    /**
     * A hair or a scratch right across a vignette changes all strips alike, and then lightness
     * comes back. A step close by is found all the same.
     */
    @Test
    void aMarkAcrossIsNoStep() {
        for (double widthMm : new double[] {0.08, 0.2, 0.35}) {
            for (double markL : new double[] {-9, 40}) {
                double[] marked = vignette(0, 0);
                double[] both = vignette(2, 37.2);
                for (int i = 0; i < marked.length; i++) {
                    double blurred = Math.max(widthMm, 0.12);
                    double inside = Math.abs(i * STEP_MM - 34.1) / blurred;
                    double mark = markL * widthMm / blurred * Math.exp(-Math.pow(2 * inside, 4));
                    marked[i] += mark;
                    both[i] += mark;
                }
                String what = markL + " L*, " + widthMm + " mm";
                assertEquals(List.of(), found(marked, STEP_MM, CODE_MM), what);
                List<ContourSteps.Step> steps = found(both, STEP_MM, CODE_MM);
                assertEquals(1, steps.size(), what);
                assertEquals(37.2, steps.get(0).at() * STEP_MM, 0.3, what);
            }
        }
    }

    /**
     * Tone by a coarse table bends, rises steeply over a few levels and falls over others: each
     * within more than half a millimetre, never at once.
     */
    @ParameterizedTest
    @ValueSource(doubles = {150, 300, 600})
    void steepAndFallingToneMakesNoSteps(double samplesPerInch) {
        double stepMm = 25.4 / samplesPerInch;
        double codeMm = 54.0 / 255;
        int steps = 0;
        double[] codes = {0, 40, 48, 56, 64, 70, 76, 83, 88, 95, 102, 109, 117, 127, 137, 255};
        double[] tones = {
            10, 20.1, 23.8, 26.5, 28.3, 27.2, 27.9, 30, 33.3, 39.4, 38.4, 39.9, 44.4, 50.5, 52.3, 95
        };
        PolynomialSplineFunction tone = new LinearInterpolator().interpolate(codes, tones);
        for (long seed = 0; seed < 20; seed++) {
            Random random = new Random(seed);
            double[] values = new double[(int) (54 / stepMm)];
            for (int i = 0; i < values.length; i++) {
                double code = Math.floor(i * stepMm / codeMm);
                values[i] = tone.value(code) + 0.1 * random.nextGaussian();
            }
            steps += found(values, stepMm, codeMm).size();
        }
        // Noise makes one of half an L* at 150; by the change alone the first has seven at 600.
        assertTrue(steps <= (samplesPerInch < 200 ? 1 : 0), steps + " steps");
    }
}
