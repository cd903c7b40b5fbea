package org.printassay.check;

import static java.util.Objects.requireNonNull;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.Lab;
import org.printassay.compare.Comparability;
import org.printassay.compare.Figure;
import org.printassay.compare.KnownSpread;
import org.printassay.compare.PrintSpread;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.MadePrint;
import org.printassay.evaluation.PrintDetails;
import org.printassay.problem.Problem;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.Trust;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;

/**
 * Checks of simulated prints of known truth. The usual run takes a part of the trials; {@code
 * -DcheckTrials=200} takes them all.
 */
class CheckerTest {
    private static final int TRIALS = Integer.getInteger("checkTrials", 12);

    /** The goal: of unchanged reprints at most this share may seem changed. */
    private static final double FALSE_ALARMS = 0.02;

    private static final double FOUND = 0.95;

    /** A mean dE00 of 1 over the sheet's patches, from lightness or from the lean of colours. */
    private static final double LIGHTER = 1.35;

    private static final double WARMER = 1.5;

    private static final MadePrint PRINT = MadePrint.USUAL.withErrors(0.15, 0.1);

    private static ToleranceSet fine() throws Problem {
        return ToleranceFile.named("fine");
    }

    /** What only one scan has may be all of the difference: no change of the print is sure then. */
    @Test
    void aFaultOfOneScanPutsChangesInDoubt() throws Exception {
        Evaluation before = Reprints.of(PRINT, 1);
        Evaluation after = Reprints.of(changed(c -> new Lab(c.l() - 4, c.a(), c.b())), 2);
        Check plain = Checker.check(before, after, fine());
        assertEquals(Outcome.FAILED, plain.outcome());
        Evaluation sharpened = with(after, WarningCode.SHARPENED);
        Check doubted = Checker.check(before, sharpened, fine());
        assertEquals(Outcome.CANNOT_TELL, doubted.outcome());
        assertTrue(
                doubted.changes().stream()
                        .allMatch(
                                change ->
                                        change.outcome() == Outcome.WITHIN
                                                || change.outcome() == Outcome.CANNOT_TELL));
        assertTrue(CheckWords.sentences(doubted).toString().contains("may be theirs"));
        Check both = Checker.check(with(before, WarningCode.SHARPENED), sharpened, fine());
        assertEquals(Outcome.FAILED, both.outcome(), "the same fault is in both");
        Check cloudy = Checker.check(before, with(after, WarningCode.SCATTERED), fine());
        assertEquals(Outcome.FAILED, cloudy.outcome(), "clouds may be the print's own");
        Check marked = Checker.check(before, with(after, WarningCode.DUSTY), fine());
        assertEquals(Outcome.FAILED, marked.outcome());
        assertTrue(
                marked.cautions().stream()
                        .anyMatch(c -> c.reason() == Comparability.Reason.MARKED));
    }

    /**
     * One measurement was read with --chart and the other without: it is one chart all the same.
     */
    @Test
    void aChartThatOnlyOnePrintNamesIsNoOtherChart() throws Exception {
        Evaluation before = Reprints.of(PRINT, 1);
        Evaluation after = Reprints.of(PRINT, 2).toBuilder().chartId(null).build();
        for (Check check :
                List.of(
                        Checker.check(before, after, fine()),
                        Checker.check(after, before, fine()))) {
            assertEquals(Outcome.WITHIN, check.outcome());
            assertTrue(
                    check.cautions().stream()
                            .anyMatch(c -> c.reason() == Comparability.Reason.CHART_UNSAID));
        }
        Evaluation other =
                after.toBuilder()
                        .patches(after.patches().subList(0, after.patches().size() / 4))
                        .build();
        Problem refused = assertThrows(Problem.class, () -> Checker.check(before, other, fine()));
        assertEquals(Problem.Kind.CHART, refused.kind());
    }

    private static Evaluation with(Evaluation e, WarningCode code) {
        List<Warning> warnings = new ArrayList<>(e.warnings());
        warnings.add(new Warning(code, "a warning"));
        return e.toBuilder().warnings(warnings).build();
    }

    /** Clipped patches show where the scanner ends, not the print. */
    @Test
    void clippedPatchesAreNotCompared() throws Exception {
        Evaluation before = Reprints.of(PRINT, 1);
        Evaluation after = Reprints.of(PRINT, 2);
        List<Reading> cut = new ArrayList<>();
        for (Reading r : after.patches()) {
            boolean dark = r.rgb().r() < 30 && r.rgb().g() < 30 && r.rgb().b() < 30;
            cut.add(
                    dark
                            ? new Reading(
                                    r.id(),
                                    r.section(),
                                    r.rgb(),
                                    new Lab(0, 0, 0),
                                    r.labRelative(),
                                    r.standardError(),
                                    r.density(),
                                    Set.of(ReadingFlag.CLIPPED),
                                    r.centre(),
                                    r.sheet())
                            : r);
        }
        Check check = Checker.check(before, after.toBuilder().patches(cut).build(), fine());
        assertTrue(check.missing().contains(Quantity.SHADOW_SHIFT), check.missing().toString());
        assertTrue(
                check.changes().stream()
                        .anyMatch(
                                change ->
                                        change.quantity() == Quantity.MEAN_DRIFT
                                                && change.outcome() == Outcome.WITHIN));
    }

    /** Over all quantities, grain, lines and bands, by both sets of ours. */
    @ParameterizedTest
    @ValueSource(strings = {"fine", "workshop"})
    void unchangedReprintsSeldomSeemChanged(String tolerances) throws Exception {
        assertTrue(seen(PRINT, PRINT, ToleranceFile.named(tolerances)) <= FALSE_ALARMS * TRIALS);
    }

    @Test
    void reprintsHoldEveryQuantity() throws Exception {
        Check check = Checker.check(Reprints.of(PRINT, 1), Reprints.of(PRINT, 2), fine());
        assertEquals(List.of(), check.missing());
        assertTrue(check.surface().linesCompared() && check.surface().bandsCompared());
    }

    @Test
    void aShadowWedgeMovedByTwoLevelsIsFound() throws Exception {
        assertTrue(seen(PRINT, PRINT.withShifts(2, 0)) >= FOUND * TRIALS);
    }

    @Test
    void aDriftOfOneDeltaEIsFound() throws Exception {
        assertTrue(
                seen(PRINT, changed(c -> new Lab(c.l() - LIGHTER, c.a(), c.b())))
                        >= FOUND * TRIALS);
        assertTrue(
                seen(PRINT, changed(c -> new Lab(c.l(), c.a(), c.b() + WARMER))) >= FOUND * TRIALS);
    }

    /**
     * Mean drift by itself, of prints that are the same but for reading: however small the noise,
     * and with no spread allowed for, no more seem changed than the rule says.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.15, 0.4})
    void readingAloneIsNoDrift(double noise) throws Exception {
        ToleranceSet drift =
                new ToleranceSet(
                        "drift",
                        "",
                        0.01,
                        Map.of(Quantity.MEAN_DRIFT, new Tolerance(1, 0, 0, 0)),
                        null,
                        null);
        MadePrint read = MadePrint.USUAL.withErrors(noise, 0);
        int seen = 0;
        for (int i = 0; i < TRIALS; i++) {
            Check check =
                    Checker.check(read.evaluation(2L * i), read.evaluation(2L * i + 1), drift);
            seen += check.outcome() == Outcome.WITHIN ? 0 : 1;
        }
        System.out.println("drift of the same print, noise " + noise + ": " + seen + " seen");
        assertTrue(seen <= FALSE_ALARMS * TRIALS, seen + " of " + TRIALS);
    }

    private static MadePrint changed(UnaryOperator<Lab> change) {
        return PRINT.withChange(change);
    }

    /** How often anything is said to have changed, or cannot be told. */
    private static int seen(MadePrint before, MadePrint after) throws Exception {
        return seen(before, after, fine());
    }

    private static int seen(MadePrint before, MadePrint after, ToleranceSet tolerances)
            throws Exception {
        int seen = 0;
        Map<Quantity, Integer> which = new EnumMap<>(Quantity.class);
        int lines = 0;
        Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);
        for (int i = 0; i < TRIALS; i++) {
            Check check =
                    Checker.check(
                            Reprints.of(before, 2L * i),
                            Reprints.of(after, 2L * i + 1),
                            tolerances);
            for (Change change : check.changes()) {
                if (change.outcome() != Outcome.WITHIN) {
                    which.merge(change.quantity(), 1, Integer::sum);
                }
            }
            lines += check.surface().outcome() == Outcome.WITHIN ? 0 : 1;
            outcomes.merge(check.outcome(), 1, Integer::sum);
            seen += check.outcome() == Outcome.WITHIN ? 0 : 1;
        }
        System.out.println(
                "checks of simulated prints, "
                        + tolerances.name()
                        + ": "
                        + outcomes
                        + "; by "
                        + which
                        + ", lines and bands "
                        + lines);
        return seen;
    }

    @Test
    void aLargeChangeFailsAndIsSaidFirst() throws Exception {
        Check check =
                Checker.check(PRINT.evaluation(1), PRINT.withShifts(7, 0).evaluation(2), fine());
        assertEquals(Outcome.FAILED, check.outcome());
        assertEquals(Outcome.FAILED, outcome(check, Quantity.SHADOW_SHIFT));
        assertEquals(Outcome.WITHIN, outcome(check, Quantity.PAPER_L));
        assertTrue(CheckWords.headline(check).startsWith("Failed"));
        String first = CheckWords.sentences(check).get(0);
        assertTrue(first.startsWith("Shadow wedge as a whole: separates from black "), first);
        assertTrue(first.contains("levels later"), first);
    }

    @Test
    void blockingOfAnotherShapeIsFoundToo() throws Exception {
        MadePrint open = PRINT.withKnee(0, 0);
        for (MadePrint blocked : List.of(PRINT.withKnee(10, 14), PRINT.withKnee(16, 0))) {
            Check check = Checker.check(open.evaluation(1), blocked.evaluation(2), fine());
            assertNotEquals(Outcome.WITHIN, outcome(check, Quantity.SHADOW_DEPTH));
            Change shift = check.change(Quantity.SHADOW_SHIFT).orElseThrow();
            assertTrue(shift.change() > 0, "separates later, not earlier: " + shift.change());
            assertNotEquals(Outcome.WITHIN, check.outcome());
        }
    }

    @Test
    void poorReadingCannotTell() throws Exception {
        MadePrint noisy = PRINT.withErrors(0.15, 0.8);
        Check check = Checker.check(noisy.evaluation(1), noisy.evaluation(2), fine());
        assertEquals(Outcome.CANNOT_TELL, check.outcome());
        assertEquals(Outcome.CANNOT_TELL, outcome(check, Quantity.BLACK_L));
    }

    @Test
    void withoutRepeatsNothingIsSureUntilPrintsTellTheirSpread() throws Exception {
        Evaluation before = PRINT.withErrors(0.05, 0).readOnce(1);
        Evaluation after = PRINT.withErrors(0.05, 0).readOnce(2);
        Check untold = Checker.check(before, after, fine());
        assertEquals(Outcome.CANNOT_TELL, untold.outcome());
        assertTrue(
                untold.changes().stream().allMatch(c -> c.standard() == null),
                "no uncertainty out of thin air");
        assertTrue(CheckWords.sentences(untold).get(0).startsWith("Read once"));
        KnownSpread seen = seen(Figure.BLACK_L, 0.1);
        Check told = Checker.check(Baseline.of(before), after, fine(), seen);
        Change black = told.change(Quantity.BLACK_L).orElseThrow();
        assertEquals(Outcome.WITHIN, black.outcome());
        assertEquals(0.1 * Math.sqrt(2), requireNonNull(black.standard()), 1e-12);
        assertTrue(black.spreadSeen());
    }

    @Test
    void aSpreadThatWasSeenHoldsInsteadOfTheStatedOne() throws Exception {
        Evaluation before = PRINT.evaluation(1);
        Evaluation after = PRINT.evaluation(2);
        KnownSpread wide = seen(Figure.CAST_A, 1.0);
        Change cast =
                Checker.check(Baseline.of(before), after, fine(), wide)
                        .change(Quantity.CAST_A)
                        .orElseThrow();
        assertEquals(Math.sqrt(2), requireNonNull(cast.standard()), 1e-12);
        assertEquals(Outcome.CANNOT_TELL, cast.outcome());
    }

    private static KnownSpread seen(Figure figure, double deviation) {
        return new KnownSpread(
                new PrintSpread(Map.of(figure, deviation)),
                "the logbook lab.sqlite",
                List.of(new KnownSpread.Told("Paper A", 30, 30)));
    }

    @Test
    void whereTheSpreadCameFromIsSaid() throws Exception {
        Evaluation before = PRINT.evaluation(1);
        Evaluation after = PRINT.evaluation(2);
        Check stated = Checker.check(before, after, fine());
        assertEquals(
                "How far unchanged prints lie apart is taken from the tolerances (fine).",
                CheckWords.spread(stated));
        Check told =
                Checker.check(Baseline.of(before), after, fine(), seen(Figure.TONE_MIDTONES, 0.2));
        String words = CheckWords.spread(told);
        assertTrue(
                words.contains("the logbook lab.sqlite (30 prints of Paper A) for 1 of "), words);
        assertTrue(words.contains("for the others from the tolerances (fine)"), words);
    }

    /** Of n prints the mean is known better, and lies nearer to where an unchanged print lies. */
    @Test
    void aBaselineOfSeveralPrintsIsTheirMean() throws Exception {
        List<Evaluation> prints = new ArrayList<>();
        for (long seed = 1; seed <= 4; seed++) {
            prints.add(Reprints.of(PRINT, seed));
        }
        Baseline four = new Baseline(prints, "the logbook", List.of(3L, 4L, 5L, 6L));
        Evaluation print = Reprints.of(PRINT, 9);
        Check many = Checker.check(four, print, fine(), KnownSpread.NONE);
        Check one = Checker.check(prints.get(0), print, fine());
        assertEquals(one.changes().size(), many.changes().size());
        for (Change change : many.changes()) {
            Change single = one.change(change.quantity()).orElseThrow();
            assertTrue(
                    requireNonNull(change.standard()) < requireNonNull(single.standard()),
                    change.quantity().key());
        }
        double mean =
                prints.stream()
                                .mapToDouble(p -> requireNonNull(p.tone()).meanDeltaLMidtones())
                                .sum()
                        / 4;
        assertEquals(
                mean,
                requireNonNull(many.change(Quantity.TONE_MIDTONES).orElseThrow().before()),
                1e-9);
        assertEquals("the mean of 4 prints in the logbook (no. 3, 4, 5, 6)", many.baselineName());
    }

    @Test
    void aSmallSharpKneeInTheToneCurveIsSeen() throws Exception {
        int found = 0;
        for (int i = 0; i < TRIALS; i++) {
            Check check =
                    Checker.check(
                            Reprints.of(PRINT, 2L * i),
                            Reprints.of(changed(CheckerTest::dented), 2L * i + 1),
                            fine());
            Change bend = check.change(Quantity.TONE_BEND).orElseThrow();
            if (bend.outcome() != Outcome.WITHIN) {
                found++;
                assertTrue(bend.change() < 0, "darker there: " + bend.change());
                String sentence = CheckWords.sentence(bend);
                assertTrue(sentence.contains(" around level "), sentence);
            }
        }
        System.out.println("knees found: " + found + " of " + TRIALS);
        assertTrue(found >= FOUND * TRIALS, found + " of " + TRIALS);
    }

    /** Greys of L* 48 to 56 come out up to 1.6 darker, with a sharp edge; means hardly move. */
    private static Lab dented(Lab c) {
        boolean dent = c.l() > 48 && c.l() < 56 && Math.hypot(c.a(), c.b()) < 4;
        return dent ? new Lab(c.l() - 1.6, c.a(), c.b()) : c;
    }

    @Test
    void plainScansAreCheckedWithoutAnythingAbsolute() throws Exception {
        MadePrint plain = PRINT.withTrust(Trust.PLAIN_SCAN);
        Check check = Checker.check(plain.evaluation(1), plain.evaluation(2), fine());
        assertTrue(check.change(Quantity.PAPER_L).isEmpty());
        assertTrue(check.change(Quantity.BLACK_L).isEmpty());
        assertTrue(check.change(Quantity.GAMUT_VOLUME).isEmpty());
        assertFalse(check.change(Quantity.SHADOW_SHIFT).isEmpty());
        assertFalse(check.change(Quantity.BLACK_RELATIVE_L).isEmpty());
        assertTrue(check.missing().contains(Quantity.PAPER_L));
    }

    @Test
    void whatMustNotBeComparedIsRefused() {
        Evaluation print = PRINT.evaluation(1);
        assertEquals(Problem.Kind.USAGE, refusal(print, print).kind());
        Evaluation plain = PRINT.withTrust(Trust.PLAIN_SCAN).evaluation(2);
        Problem trust = refusal(print, plain);
        assertEquals(Problem.Kind.INPUT, trust.kind());
        assertTrue(trust.getMessage().contains("different ways"), trust.getMessage());
        assertEquals(1, trust.getMessage().lines().count());
    }

    @Test
    void anotherRouteIsRefusedAndAnUnsaidOneIsSaid() throws Exception {
        Evaluation before = PRINT.evaluation(1);
        Evaluation after = PRINT.evaluation(2);
        Problem other = refusal(route(before, "matt profile"), route(after, "driver colour"));
        assertEquals(Problem.Kind.INPUT, other.kind());
        assertTrue(other.getMessage().contains("route \"driver colour\""), other.getMessage());
        Check unsaid = Checker.check(route(before, "matt profile"), route(after, null), fine());
        assertTrue(reasons(unsaid).contains(Comparability.Reason.ROUTE_UNSAID));
        Check same =
                Checker.check(route(before, "matt profile"), route(after, "Matt  profile"), fine());
        assertFalse(reasons(same).contains(Comparability.Reason.ROUTE_UNSAID));
    }

    private static Evaluation route(Evaluation e, @Nullable String route) {
        return MadePrint.withDetails(
                e, new PrintDetails("Paper A (simulated)", "Printer A", route, 24.0));
    }

    private static List<Comparability.Reason> reasons(Check check) {
        return check.cautions().stream().map(Comparability.Caution::reason).toList();
    }

    /** Where one says its scanner and the other does not, what both are off by may differ. */
    @Test
    void oneReaderIsOnlyTakenForGrantedWhereNeitherSaysOne() throws Exception {
        Evaluation before = PRINT.withTrust(Trust.PROFILED_SCAN).evaluation(1);
        Evaluation after = PRINT.withTrust(Trust.PROFILED_SCAN).evaluation(2);
        Check neither = Checker.check(before, after, fine());
        assertTrue(reasons(neither).contains(Comparability.Reason.READER_UNSAID));
        PrintDetails said =
                new PrintDetails("Paper A (simulated)", "Printer A", null, 24.0, "Scanner A", null);
        Check half = Checker.check(MadePrint.withDetails(before, said), after, fine());
        double shared = width(neither, Quantity.PAPER_L);
        assertTrue(width(half, Quantity.PAPER_L) > 1.5 * shared, "both errors count");
        Check both =
                Checker.check(
                        MadePrint.withDetails(before, said),
                        MadePrint.withDetails(after, said),
                        fine());
        assertEquals(shared, width(both, Quantity.PAPER_L), 1e-12);
        assertFalse(reasons(both).contains(Comparability.Reason.READER_UNSAID));
    }

    private static double width(Check check, Quantity quantity) {
        return requireNonNull(check.change(quantity).orElseThrow().halfWidth());
    }

    private static Problem refusal(Evaluation baseline, Evaluation print) {
        return assertThrows(Problem.class, () -> Checker.check(baseline, print, fine()));
    }

    @Test
    void linesThatNobodyLookedForAreNotSaidToBeAbsent() throws Exception {
        Check check = Checker.check(PRINT.evaluation(1), PRINT.evaluation(2), fine());
        assertFalse(check.surface().linesCompared());
        assertTrue(
                CheckWords.sentences(check).stream()
                        .anyMatch(s -> s.startsWith("Lines and bands were not")));
        assertNull(PRINT.evaluation(1).surface());
    }

    private static Outcome outcome(Check check, Quantity quantity) {
        return check.change(quantity).orElseThrow().outcome();
    }
}
