package org.printassay.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.metric.Judgement;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Trust;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;

/** What findings may and may not say: never more than the readings and the trust give. */
class FindingsTest {
    private static final double T = 0.5;

    private static IntToDoubleFunction blockedTo(int level) {
        return l -> 8 + 88 * Math.max(0, l - level) / (255.0 - level);
    }

    /** Neutrals of every level to 48 and from 207, every sixth between; simulated. */
    private static Evaluation judge(
            IntToDoubleFunction l, int copies, double noise, Trust trust, long seed) {
        return judge(l, copies, noise, trust, seed, List.of());
    }

    private static Evaluation judge(
            IntToDoubleFunction l,
            int copies,
            double noise,
            Trust trust,
            long seed,
            List<Warning> warnings) {
        Random random = new Random(seed);
        List<Reading> readings = new ArrayList<>();
        for (int level = 0; level <= 255; level += level < 48 || level >= 207 ? 1 : 3) {
            for (int copy = 0; copy < copies; copy++) {
                Lab lab =
                        new Lab(
                                l.applyAsDouble(level) + noise * random.nextGaussian(),
                                noise * random.nextGaussian(),
                                noise * random.nextGaussian());
                readings.add(
                        new Reading(
                                "p" + readings.size(),
                                Optional.empty(),
                                Rgb8.grey(level),
                                trust.absolute() ? lab : null,
                                lab,
                                null,
                                null,
                                Set.of(),
                                null,
                                1));
            }
        }
        ReadingSet set = new ReadingSet(readings, RgbSpace.SRGB, trust, true);
        return Assembly.evaluation(
                set,
                Judgement.of(set, T),
                Evaluation.builder(trust, "srgb")
                        .fromScan(trust != Trust.INSTRUMENT)
                        .warnings(warnings),
                Assembly.Light.EVEN);
    }

    private static String all(Evaluation e) {
        StringBuilder all = new StringBuilder();
        e.findings()
                .forEach(
                        f ->
                                all.append(f.topic())
                                        .append(": ")
                                        .append(f.text())
                                        .append(" | ")
                                        .append(f.sureness())
                                        .append(" | ")
                                        .append(f.advice())
                                        .append('\n'));
        return all.toString();
    }

    @Test
    void readOnceIsNeverWordedAsSure() {
        for (int seed = 0; seed < 20; seed++) {
            Evaluation e = judge(blockedTo(11), 1, 0.1, Trust.INSTRUMENT, seed);
            String all = all(e);
            assertFalse(all.contains("at least"), all);
            assertFalse(all.contains("95 %"), all);
            assertTrue(all.contains("read once"), all);
        }
    }

    /** Flat blacks read once differ by noise: that is no tone that runs backwards. */
    @Test
    void noiseOfSingleReadingsIsNoReversal() {
        for (int seed = 0; seed < 20; seed++) {
            String all = all(judge(blockedTo(11), 1, 0.1, Trust.INSTRUMENT, seed));
            assertFalse(all.contains("backwards"), all);
        }
    }

    @Test
    void anInstrumentHasNoAutomaticExposure() {
        String all = all(judge(blockedTo(11), 4, 0.1, Trust.INSTRUMENT, 1));
        assertFalse(all.contains("exposure"), all);
        assertTrue(all(judge(blockedTo(11), 4, 0.1, Trust.PROFILED_SCAN, 1)).contains("exposure"));
    }

    /** Twins that differ wildly were still read more than once. */
    @Test
    void tooMuchSpreadIsNotCalledReadOnce() {
        String all = all(judge(l -> 8 + 0.01 * l, 4, 0.5, Trust.INSTRUMENT, 2));
        assertFalse(all.contains("read once"), all);
    }

    @Test
    void aBlackThatTheScannerLimitsIsNotJudged() {
        Warning limited = new Warning(WarningCode.SCANNER_LIMITED, "scan.tif: limited");
        String all = all(judge(blockedTo(0), 4, 0.1, Trust.PROFILED_SCAN, 7, List.of(limited)));
        assertTrue(all.contains("How deep the black is cannot be told"), all);
    }

    @Test
    void aPlainScanIsNotSureOfLevels() {
        String all = all(judge(blockedTo(11), 4, 0.1, Trust.PLAIN_SCAN, 3));
        assertFalse(all.contains("95 % sure"), all);
        assertTrue(all.contains("no colour profile"), all);
    }

    /** A lean whose error is larger than a visible cast is no proof of neutral greys. */
    @Test
    void uncertainGreysAreNotCalledNeutral() {
        String all = all(judge(blockedTo(0), 2, 25, Trust.PROFILED_SCAN, 4));
        assertFalse(all.contains("Greys are neutral"), all);
    }

    @Test
    void aNeutralDarkerThanLevelZeroIsNamed() {
        IntToDoubleFunction l = k -> blockedTo(0).applyAsDouble(k) - (k == 6 ? 5 : 0);
        String all = all(judge(l, 4, 0.1, Trust.INSTRUMENT, 5));
        assertTrue(all.contains("Level 6 prints darker than level 0"), all);
    }

    @Test
    void atMostSevenAndNoneEmpty() {
        Evaluation e = judge(blockedTo(20), 4, 0.2, Trust.PROFILED_SCAN, 6);
        assertTrue(e.findings().size() <= 7);
        e.findings().forEach(f -> assertFalse(f.text().isBlank() || f.sureness().isBlank()));
        assertEquals("shadows", e.findings().get(0).topic());
    }
}
