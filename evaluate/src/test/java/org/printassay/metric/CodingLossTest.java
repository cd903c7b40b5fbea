package org.printassay.metric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.reading.LabError;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Trust;

/**
 * Readings of blocks whose means were rounded to steps, as lossy coding rounds them (simulated),
 * against the truth that they were made from.
 */
class CodingLossTest {
    private static final double T = 0.5;
    private static final double RISE = 0.3;
    private static final int BLOCKS = 16;
    private static final int PRINTS = 200;

    /** Lightness of a level: one black up to a level, then an even rise. */
    private static double truth(int blocked, int level) {
        return 16 + RISE * Math.max(0, level - blocked);
    }

    private static int firstVisible(int blocked) {
        return blocked + (int) Math.ceil(T / RISE);
    }

    /** A print whose blocks were rounded to steps that begin anywhere. */
    private static ReadingSet print(int blocked, double step, double grain, Random random) {
        List<Reading> readings = new ArrayList<>();
        double from = step * random.nextDouble();
        for (int level = 0; level <= 48; level++) {
            for (int twin = 0; twin < (level == 0 ? 8 : 4); twin++) {
                add(readings, level, truth(blocked, level), from, step, grain, random);
            }
        }
        for (int twin = 0; twin < 8; twin++) {
            add(readings, 255, 96, from, step, grain, random);
        }
        return new ReadingSet(readings, RgbSpace.SRGB, Trust.PROFILED_SCAN, true);
    }

    private static void add(
            List<Reading> readings,
            int level,
            double truth,
            double from,
            double step,
            double grain,
            Random random) {
        double patch = truth + 0.4 * grain * random.nextGaussian();
        double sum = 0;
        double squares = 0;
        for (int block = 0; block < BLOCKS; block++) {
            double mean = patch + grain * random.nextGaussian();
            double kept = step == 0 ? mean : from + step * Math.round((mean - from) / step);
            sum += kept;
            squares += kept * kept;
        }
        double mean = sum / BLOCKS;
        double variance = Math.max(0, squares / BLOCKS - mean * mean);
        double error = Math.sqrt(variance / (BLOCKS - 1));
        Lab lab = new Lab(mean, 0, 0);
        readings.add(
                new Reading(
                        "p" + readings.size(),
                        Optional.empty(),
                        Rgb8.grey(level),
                        lab,
                        lab,
                        new LabError(error, 0, 0),
                        null,
                        Set.of(),
                        null,
                        1));
    }

    private static ReadingSet known(ReadingSet set, double step) {
        return set.withCodingSteps(set.readings().stream().map(reading -> step).toList());
    }

    private static Wedge judge(ReadingSet set) {
        return WedgeJudge.shadows(Neutrals.of(set), T, level -> RISE * level).orElseThrow();
    }

    private static boolean holds(Wedge wedge, int first) {
        Integer merged = wedge.merged();
        Integer separated = wedge.separated();
        return (merged == null || merged < first) && (separated == null || separated >= first);
    }

    /** Shares of prints: bounds that hold the truth, and wedges that are not judged at all. */
    private record Shares(double held, double lost, double reversed) {
        static Shares of(double step, double grain, boolean told) {
            Random random = new Random(11);
            int held = 0;
            int lost = 0;
            int reversed = 0;
            for (int k = 0; k < PRINTS; k++) {
                int blocked = k % 16;
                ReadingSet set = print(blocked, step, grain, random);
                ReadingSet seen = told ? known(set, step) : set;
                if (WedgeJudge.lost(Neutrals.of(seen), false, T)) {
                    lost++;
                    continue;
                }
                Wedge wedge = judge(seen);
                held += holds(wedge, firstVisible(blocked)) ? 1 : 0;
                reversed += wedge.reversalLevels().isEmpty() ? 0 : 1;
            }
            double judged = Math.max(1, PRINTS - lost);
            return new Shares(held / judged, (double) lost / PRINTS, reversed / judged);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "0.3, 0.02",
        "0.5, 0.02",
        "0.6, 0.1",
        "0.6, 0.25",
        "0.9, 0.15",
        "1.2, 0.25",
        "1.2, 0.02",
        "1.8, 0.1",
        "2.5, 0.25"
    })
    void boundsHoldTheTruthWhateverTheStep(double step, double grain) {
        Shares shares = Shares.of(step, grain, true);
        assertTrue(shares.held() >= 0.95 || shares.lost() > 0.95, shares.toString());
        assertTrue(shares.reversed() <= 0.02, shares.toString());
    }

    /** The same prints without what the tables tell: the bounds claim too much. */
    @ParameterizedTest
    @CsvSource({"0.9, 0.15", "1.2, 0.02", "1.8, 0.1"})
    void withoutTheStepTheBoundsWouldBeWrong(double step, double grain) {
        Shares shares = Shares.of(step, grain, false);
        assertTrue(shares.held() < 0.9, shares.toString());
    }

    /** Grain that reaches over a step carries differences finer than it. */
    @Test
    void fineStepsUnderGrainCostNothing() {
        assertEquals(0, Shares.of(0.6, 0.25, true).lost());
        Random random = new Random(5);
        double plain = 0;
        double coded = 0;
        for (int k = 0; k < 50; k++) {
            ReadingSet set = print(10, 0.6, 0.25, random);
            plain += width(judge(set));
            coded += width(judge(known(set, 0.6)));
        }
        assertTrue(coded < 1.25 * plain, plain + " and " + coded);
    }

    private static double width(Wedge wedge) {
        return wedge.steps().stream().mapToDouble(step -> step.high() - step.low()).sum();
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.5, 2.5})
    void coarseStepsWithholdTheWedge(double step) {
        ReadingSet set = known(print(8, step, 0.1, new Random(2)), step);
        Judgement judged = Judgement.of(set, T);
        assertNull(judged.shadows());
        assertTrue(judged.lostInCoding().contains(Judgement.End.SHADOWS));
        // Who asks for large differences gets an answer.
        assertFalse(Judgement.of(set, 4).lostInCoding().contains(Judgement.End.SHADOWS));
    }
}
