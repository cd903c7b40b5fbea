package org.printassay.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.IntToDoubleFunction;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.metric.Budget;
import org.printassay.metric.Judgement;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;
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
        return judge(l, copies, noise, trust, seed, warnings, null);
    }

    private static Evaluation judge(
            IntToDoubleFunction l,
            int copies,
            double noise,
            Trust trust,
            long seed,
            List<Warning> warnings,
            @Nullable Lab calibration) {
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
        ReadingSet set =
                calibration == null
                        ? new ReadingSet(readings, RgbSpace.SRGB, trust, true)
                        : new ReadingSet(
                                readings,
                                RgbSpace.SRGB,
                                trust,
                                true,
                                List.of(),
                                Collections.nCopies(readings.size(), calibration));
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
    void anInstrumentHasNoAutomaticCorrections() {
        String all = all(judge(blockedTo(11), 4, 0.1, Trust.INSTRUMENT, 1));
        assertFalse(all.contains("automatic"), all);
        assertTrue(all(judge(blockedTo(11), 4, 0.1, Trust.PROFILED_SCAN, 1)).contains("automatic"));
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
        assertTrue(all.contains("without a scanner's profile"), all);
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

    /** Twenty levels print as black: one that reads darker by chance is none that does. */
    @Test
    void oneOfManyLevelsIsNotDarkerByChance() {
        int told = 0;
        for (int seed = 0; seed < 100; seed++) {
            String all = all(judge(blockedTo(20), 4, 0.9, Trust.INSTRUMENT, seed));
            told += all.contains("darker than level 0") ? 1 : 0;
        }
        assertTrue(told <= 5, told + " of 100");
    }

    /** The number that is told lies within its own interval, neighbours or not. */
    @Test
    void howMuchDarkerLiesWithinItsInterval() {
        Pattern told =
                Pattern.compile(
                        "darker than level 0, by ([0-9.]+) L\\*\\.[^0-9]*95 % sure:"
                                + " between (-?[0-9.]+) and ([0-9.]+) L");
        int found = 0;
        for (int seed = 0; seed < 40; seed++) {
            String all =
                    all(
                            judge(
                                    k -> k == 0 ? 11 : 8 + 88 * Math.pow(k / 255.0, 1.5),
                                    3,
                                    0.9,
                                    Trust.INSTRUMENT,
                                    seed));
            Matcher words = told.matcher(all);
            if (words.find()) {
                found++;
                double by = Double.parseDouble(words.group(1));
                assertTrue(by >= Double.parseDouble(words.group(2)), words.group());
                assertTrue(by <= Double.parseDouble(words.group(3)), words.group());
            }
        }
        assertTrue(found >= 20, "told of " + found);
    }

    /** Greys that lean in mid-tones alone; simulated, of known truth. */
    @Test
    void aLeanOfMidtonesIsToldAndNeutralGreysAreNotAccused() {
        UnaryOperator<Lab> warm =
                c -> {
                    boolean grey = c.chroma() < 3 && c.l() > 38 && c.l() < 68;
                    return grey ? new Lab(c.l(), c.a(), c.b() + 1.7) : c;
                };
        int told = 0;
        int accused = 0;
        for (int seed = 0; seed < 8; seed++) {
            told +=
                    all(MadePrint.USUAL.withChange(warm).evaluation(seed)).contains("in mid-tones")
                            ? 1
                            : 0;
            String neutral = all(MadePrint.USUAL.withErrors(0.4, 0.05).evaluation(seed));
            accused += neutral.contains("neutrality: Greys lean") ? 1 : 0;
        }
        assertEquals(8, told);
        assertTrue(accused <= 1, accused + " of 8 accused");
    }

    /** Twins that coding keeps in steps were read twice all the same. */
    @Test
    void evennessOfFlaggedTwinsIsNotCalledReadOnce() {
        String coarse = evenness(Set.of(ReadingFlag.COARSE), List.of());
        assertEquals(
                "Evenness was not judged: the scan's lossy compression keeps what was read twice in"
                        + " steps that are coarser than what shows. Save scans as TIFF or PNG, or at"
                        + " the highest JPEG quality.",
                coarse);
        Warning edited = new Warning(WarningCode.HISTOGRAM_GAPS, "");
        String edit = evenness(Set.of(ReadingFlag.COARSE), List.of(edited));
        assertTrue(edit.contains("an edit in 8 bits") && !edit.contains("compression"), edit);
        String dusty = evenness(Set.of(ReadingFlag.DUSTY), List.of());
        assertTrue(dusty.contains("no two readings are beyond doubt"), dusty);
        assertEquals(
                "Evenness was not judged: nothing was read twice.",
                text(MadePrint.USUAL.readOnce(3), WarningCode.EVENNESS_NOT_JUDGED));
    }

    private static String evenness(Set<ReadingFlag> flags, List<Warning> warnings) {
        ReadingSet whole = MadePrint.USUAL.readings(3);
        List<Reading> flagged =
                whole.readings().stream()
                        .map(
                                r ->
                                        new Reading(
                                                r.id(),
                                                r.section(),
                                                r.rgb(),
                                                r.lab(),
                                                r.labRelative(),
                                                r.standardError(),
                                                r.density(),
                                                flags,
                                                r.centre(),
                                                r.sheet()))
                        .toList();
        ReadingSet set = new ReadingSet(flagged, whole.space(), whole.trust(), true);
        return text(
                Assembly.evaluation(
                        set,
                        Judgement.of(set, T),
                        Evaluation.builder(set.trust(), "srgb").fromScan(true).warnings(warnings),
                        Assembly.Light.EVEN),
                WarningCode.EVENNESS_NOT_JUDGED);
    }

    private static String text(Evaluation e, WarningCode code) {
        return e.warnings().stream()
                .filter(w -> w.code() == code)
                .map(Warning::text)
                .findFirst()
                .orElseThrow();
    }

    /** What cannot be told is advised on by the largest part of its uncertainty. */
    @Test
    void adviceGoesByTheLargestPartOfTheUncertainty() {
        int unknown = 0;
        for (int seed = 0; seed < 20; seed++) {
            for (Trust trust : List.of(Trust.PROFILED_SCAN, Trust.INSTRUMENT)) {
                Evaluation e = judge(blockedTo(0), 2, 12, trust, seed);
                String advice = advice(e, "Whether greys lean");
                if (!advice.startsWith("not found")) {
                    boolean instrument = trust == Trust.INSTRUMENT;
                    String begins = instrument ? "Measure again" : "Print the chart again";
                    assertTrue(advice.startsWith(begins), advice);
                    unknown++;
                }
            }
        }
        assertTrue(unknown >= 2, "greys that cannot be told: " + unknown);
        for (Trust trust : List.of(Trust.CALIBRATED_SCAN, Trust.PROFILED_SCAN)) {
            Evaluation e = judge(blockedTo(0), 3, 0.1, trust, 4, List.of(), new Lab(4, 5, 5));
            for (String what : List.of("Whether greys lean", "Whether tone follows")) {
                String advice = advice(e, what);
                assertTrue(advice.contains("alibrate the scanner for this"), advice);
                assertFalse(advice.contains("Print the chart again"), advice);
            }
        }
        Evaluation black =
                judge(l -> 14 + l / 3.3, 3, 0.1, Trust.CALIBRATED_SCAN, 4, List.of(), MATTE);
        assertTrue(advice(black, "How deep the black").startsWith("Calibrate the scanner"));
    }

    private static final Lab MATTE = new Lab(4, 0, 0);

    private static String advice(Evaluation e, String begins) {
        return e.findings().stream()
                .filter(f -> f.text().startsWith(begins))
                .findFirst()
                .map(Finding::advice)
                .orElseGet(() -> "not found in " + all(e));
    }

    /** A profile or an instrument that is stated to be off by that much: nothing else helps. */
    @Test
    void adviceAgainstWhatIsStatedNamesTheBetterWay() {
        Budget stated =
                new Budget("x", "L*", 0, List.of(new Budget.Part(Budget.Kind.SYSTEMATIC, 1, null)));
        Budget smaller =
                new Budget("y", "L*", 0, List.of(new Budget.Part(Budget.Kind.RANDOM, 0.5, null)));
        List<Budget> both = List.of(smaller, stated);
        assertTrue(
                new Sharper(Trust.PROFILED_SCAN, false)
                        .advice(both)
                        .contains("measure with an instr"));
        assertTrue(
                new Sharper(Trust.CALIBRATED_SCAN, false)
                        .advice(both)
                        .startsWith("Measure with an"));
        assertTrue(
                new Sharper(Trust.PLAIN_SCAN, false)
                        .advice(List.of(smaller))
                        .startsWith("Print the"));
        Budget light =
                new Budget("z", "L*", 0, List.of(new Budget.Part(Budget.Kind.LIGHT, 1, null)));
        assertTrue(
                new Sharper(Trust.PLAIN_SCAN, false)
                        .advice(List.of(light))
                        .startsWith("Scan the print"));
        assertTrue(
                new Sharper(Trust.PLAIN_SCAN, true)
                        .advice(List.of(light))
                        .startsWith("Scan again as TIFF"));
    }

    @Test
    void atMostSevenAndNoneEmpty() {
        Evaluation e = judge(blockedTo(20), 4, 0.2, Trust.PROFILED_SCAN, 6);
        assertTrue(e.findings().size() <= 7);
        e.findings().forEach(f -> assertFalse(f.text().isBlank() || f.sureness().isBlank()));
        assertEquals("shadows", e.findings().get(0).topic());
    }

    /** A line that the printer leaves cuts markers too, and no cleaning of the glass helps. */
    @Test
    void missingMarkersAreNotBlamedOnDirtAlone() {
        String said = PlacementCheck.markersMissing("a.tif", 2, 12).text();
        assertTrue(said.startsWith("a.tif: 2 of 12 markers were not found"), said);
        assertTrue(said.contains("dirty") && said.contains("nozzle"), said);
    }

    /** Either leaves steps, so both are named where both were done. */
    @Test
    void stepsOfAnEditAndOfCompressionAreBlamedOnBoth() {
        Warning edited = new Warning(WarningCode.HISTOGRAM_GAPS, "");
        Warning lossy = new Warning(WarningCode.LOSSY, "");
        String both = notJudged(List.of(edited, lossy));
        assertTrue(both.contains("an edit in 8 bits and the scan's lossy compression"), both);
        assertTrue(both.contains("TIFF or PNG with 16 bits"), both);
        String edit = notJudged(List.of(edited));
        assertTrue(edit.contains("an edit") && !edit.contains("compression"), edit);
        for (List<Warning> without : List.of(List.of(lossy), List.<Warning>of())) {
            String coding = notJudged(without);
            assertTrue(coding.contains("compression") && !coding.contains("edit"), coding);
        }
    }

    private static String notJudged(List<Warning> warnings) {
        ReadingSet whole = MadePrint.USUAL.readings(3);
        ReadingSet set = whole.withCodingSteps(Collections.nCopies(whole.readings().size(), 2.5));
        Evaluation e =
                Assembly.evaluation(
                        set,
                        Judgement.of(set, T),
                        Evaluation.builder(set.trust(), "srgb").fromScan(true).warnings(warnings),
                        Assembly.Light.EVEN);
        return text(e, WarningCode.SHADOWS_NOT_JUDGED);
    }
}
