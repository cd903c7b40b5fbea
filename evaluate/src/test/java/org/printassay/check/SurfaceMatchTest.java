package org.printassay.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.printassay.compare.KnownSpread;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.MadePrint;
import org.printassay.evaluation.PrintBand;
import org.printassay.evaluation.PrintLine;
import org.printassay.evaluation.PrintSurface;
import org.printassay.evaluation.SurfaceCause;
import org.printassay.problem.Problem;
import org.printassay.report.EvaluationJson;
import org.printassay.surface.Along;
import org.printassay.surface.ContrastSensitivity;
import org.printassay.surface.FoundBand;
import org.printassay.surface.FoundLine;

/** Lines and bands of simulated prints, matched by place. */
class SurfaceMatchTest {
    private static final PrintLine FAINT = line(50.0, 0.02, SurfaceCause.PRINT);
    private static final PrintLine STRONG = line(120.0, 0.15, SurfaceCause.PRINT);

    private static PrintLine line(double mm, double contrast, SurfaceCause cause) {
        return line(mm, 0.1, contrast, 9, cause);
    }

    private static PrintLine line(
            double mm, double width, double contrast, double z, SurfaceCause cause) {
        return new PrintLine(
                1,
                new FoundLine(
                        Along.Y, mm, width, contrast, z, List.of("T1"), List.of(), false, 50.0),
                cause,
                List.of("cyan"));
    }

    private static PrintBand band(double period, double over) {
        return new PrintBand(
                1,
                new FoundBand(Along.Y, period, 0.3, over >= 1, over, List.of("T1"), false),
                SurfaceCause.PRINT);
    }

    private static Evaluation print(long seed, List<PrintLine> lines, List<PrintBand> bands) {
        return MadePrint.withSurface(
                MadePrint.USUAL.evaluation(seed),
                new PrintSurface(
                        lines,
                        null,
                        bands,
                        List.of(),
                        List.of(),
                        null,
                        null,
                        ContrastSensitivity.USUAL,
                        null,
                        null,
                        null));
    }

    private static SurfaceChange between(Evaluation before, Evaluation after) throws Problem {
        return Checker.check(before, after, ToleranceFile.named("fine")).surface();
    }

    @Test
    void linesOfTheBaselineAreSaidToBeThereBefore() throws Exception {
        SurfaceChange change =
                between(
                        print(1, List.of(STRONG), List.of()),
                        print(2, List.of(line(120.6, 0.12, SurfaceCause.PRINT)), List.of()));
        assertTrue(change.linesCompared());
        assertEquals(1, change.oldLines().size());
        assertTrue(change.newLines().isEmpty());
        assertEquals(Outcome.WITHIN, change.outcome());
    }

    @Test
    void aStrongNewLineFailsAndAFaintOneIsDrift() throws Exception {
        Evaluation clean = print(1, List.of(), List.of());
        assertEquals(
                Outcome.FAILED, between(clean, print(2, List.of(STRONG), List.of())).outcome());
        assertEquals(
                Outcome.DRIFTED, between(clean, print(3, List.of(FAINT), List.of())).outcome());
    }

    /**
     * What no quantity could tell, lines cannot pass; a line that is surely new fails all the same.
     */
    @Test
    void aNewLineFailsWhereNoQuantityCouldBeCompared() throws Exception {
        ToleranceSet fine = ToleranceFile.named("fine");
        ToleranceSet volume =
                new ToleranceSet(
                        "volume",
                        "",
                        0.01,
                        Map.of(Quantity.GAMUT_VOLUME, new Tolerance(0, 5, 0, 0)),
                        fine.lineContrast(),
                        null);
        Evaluation clean = withoutColours(print(1, List.of(), List.of()));
        Check failed =
                Checker.check(clean, withoutColours(print(2, List.of(STRONG), List.of())), volume);
        assertEquals(List.of(), failed.changes());
        assertEquals(Outcome.FAILED, failed.outcome());
        assertTrue(CheckWords.headline(failed).startsWith("Failed"));
        Check same = Checker.check(clean, withoutColours(print(2, List.of(), List.of())), volume);
        assertEquals(Outcome.CANNOT_TELL, same.outcome());
        assertFalse(CheckWords.headline(same).contains("nothing in common"));
    }

    private static Evaluation withoutColours(Evaluation print) {
        return print.toBuilder().colours(null).build();
    }

    /** 6 % of the light of a black of L* 4 are a quarter of an L*: no reason to fail a print. */
    @Test
    void aFaintLineInBlackIsNoStrongOne() throws Exception {
        FoundLine found =
                new FoundLine(Along.Y, 70, 0.1, 0.06, 9, List.of("T1"), List.of(), false, 4.0);
        PrintLine black = new PrintLine(1, found, SurfaceCause.PRINT, List.of());
        Check check =
                Checker.check(
                        print(1, List.of(), List.of()),
                        print(2, List.of(black), List.of()),
                        ToleranceFile.named("fine"));
        assertEquals(Outcome.DRIFTED, check.surface().outcome());
        String said = String.join(" ", CheckWords.sentences(check));
        assertTrue(said.contains("0.2 L*") && !said.contains("6 %"), said);
    }

    @Test
    void aLineThatMayBeTheScannersCannotBeTold() throws Exception {
        PrintLine either = line(70, 0.2, SurfaceCause.UNDECIDED);
        Check check =
                Checker.check(
                        print(1, List.of(), List.of()),
                        print(2, List.of(either), List.of()),
                        ToleranceFile.named("fine"));
        assertEquals(Outcome.CANNOT_TELL, check.outcome());
        assertTrue(CheckWords.sentences(check).get(0).contains("both turns"));
    }

    @Test
    void aCleanThatHelpedIsSaid() throws Exception {
        Check check =
                Checker.check(
                        print(1, List.of(STRONG, FAINT), List.of(band(4, 3))),
                        print(2, List.of(FAINT), List.of(band(4, 0.5))),
                        ToleranceFile.named("fine"));
        assertEquals(Outcome.WITHIN, check.outcome());
        assertEquals(List.of(STRONG), check.surface().goneLines());
        assertEquals(1, check.surface().goneBands().size());
        List<String> said = CheckWords.sentences(check);
        assertTrue(said.get(0).startsWith("1 line of the baseline gone: light line at 120.0 mm"));
        assertTrue(said.contains("1 line as in the baseline, as far as can be told."));
    }

    private static SurfaceChange between(List<Evaluation> baseline, Evaluation print)
            throws Problem {
        return Checker.check(
                        new Baseline(baseline, null, List.of()),
                        print,
                        ToleranceFile.named("fine"),
                        KnownSpread.NONE)
                .surface();
    }

    /** A line counts as strong as in any print of the baseline, whichever comes first. */
    @Test
    void ofSeveralBaselinePrintsTheStrongestLineCounts() throws Exception {
        Evaluation weak = print(1, List.of(line(120, 0.03, SurfaceCause.PRINT)), List.of());
        Evaluation strong = print(2, List.of(STRONG), List.of());
        Evaluation now = print(3, List.of(STRONG), List.of());
        assertEquals(1, between(List.of(weak), now).worseLines().size());
        for (List<Evaluation> both : List.of(List.of(weak, strong), List.of(strong, weak))) {
            SurfaceChange change = between(both, now);
            assertEquals(List.of(), change.worseLines());
            assertEquals(1, change.oldLines().size());
        }
    }

    /** Two lines less than a millimetre apart in one print stay two beside one line of another. */
    @Test
    void neighboursInOneBaselinePrintStayTwo() throws Exception {
        List<PrintLine> two =
                List.of(
                        line(120.0, 0.15, SurfaceCause.PRINT),
                        line(120.8, 0.15, SurfaceCause.PRINT));
        Evaluation first = print(1, List.of(STRONG), List.of());
        SurfaceChange change =
                between(List.of(first, print(2, two, List.of())), print(3, two, List.of()));
        assertEquals(List.of(), change.newLines());
        assertEquals(2, change.oldLines().size());
    }

    @Test
    void oppositeLinesAtOnePlaceAreTwo() throws Exception {
        SurfaceChange change =
                between(
                        print(1, List.of(STRONG), List.of()),
                        print(2, List.of(line(120, -0.15, SurfaceCause.PRINT)), List.of()));
        assertEquals(1, change.newLines().size());
        assertEquals(1, change.goneLines().size());
    }

    @Test
    void newVisibleBandsFail() throws Exception {
        Evaluation clean = print(1, List.of(), List.of(band(3, 0.4)));
        SurfaceChange change = between(clean, print(2, List.of(), List.of(band(6, 1.5))));
        assertEquals(Outcome.FAILED, change.outcome());
        SurfaceChange before =
                between(
                        print(3, List.of(), List.of(band(6, 1.4))),
                        print(4, List.of(), List.of(band(6.2, 1.5))));
        assertEquals(Outcome.WITHIN, before.outcome());
        assertEquals(1, before.oldBands().size());
    }

    @Test
    void whatOnePrintLacksIsNotCompared() throws Exception {
        SurfaceChange change =
                between(MadePrint.USUAL.evaluation(1), print(2, List.of(STRONG), List.of()));
        assertFalse(change.linesCompared());
        assertTrue(change.newLines().isEmpty());
        assertEquals(Outcome.WITHIN, change.outcome());
    }

    @Test
    void linesAndBandsThatGotWorseAreNotAsBefore() throws Exception {
        PrintLine faint = line(100.0, 0.1, 0.012, 7, SurfaceCause.PRINT);
        PrintLine grown = line(100.6, 0.1, 0.6, 60, SurfaceCause.PRINT);
        Check check =
                Checker.check(
                        print(1, List.of(faint), List.of(band(4, 1.0))),
                        print(2, List.of(grown), List.of(band(4, 25))),
                        ToleranceFile.named("fine"));
        SurfaceChange change = check.surface();
        assertEquals(Outcome.FAILED, check.outcome());
        assertEquals(List.of(), change.oldLines());
        assertEquals(List.of(new Grown<>(faint, grown, Outcome.FAILED)), change.worseLines());
        assertEquals(1, change.worseBands().size());
        assertEquals(List.of(), change.newLines());
        List<String> said = CheckWords.sentences(check);
        assertTrue(said.get(0).startsWith("1 line stronger than in the baseline: "), said.get(0));
        assertTrue(said.get(0).contains("60 %"), said.get(0));
        assertTrue(said.get(1).startsWith("1 visible band stronger than"), said.get(1));
        assertEquals(
                Outcome.FAILED,
                between(
                                print(3, List.of(), List.of(band(4, 1.0))),
                                print(4, List.of(), List.of(band(4, 25))))
                        .outcome());
    }

    /** How surely a line was told is kept in the file, else nothing could be told to have grown. */
    @Test
    void growthIsToldAgainstABaselineFromItsFile() throws Exception {
        PrintLine one = line(100.0, 0.1, 0.15, 60, SurfaceCause.PRINT);
        PrintLine other = line(100.6, 0.1, 0.4, 60, SurfaceCause.PRINT);
        Evaluation before = print(1, List.of(one), List.of());
        Evaluation back = EvaluationJson.parse("evaluation.json", EvaluationJson.write(before));
        assertEquals(Outcome.FAILED, between(back, print(2, List.of(other), List.of())).outcome());
    }

    /** The nozzle beside a missing one: as strong a line, twice as wide. */
    @Test
    void aLineThatGotWiderGotWorse() throws Exception {
        PrintLine one = line(100, 0.1, 0.2, 60, SurfaceCause.PRINT);
        PrintLine two = line(100, 0.2, 0.2, 80, SurfaceCause.PRINT);
        assertEquals(
                Outcome.FAILED,
                between(print(1, List.of(one), List.of()), print(2, List.of(two), List.of()))
                        .outcome());
        assertEquals(
                Outcome.WITHIN,
                between(print(3, List.of(two), List.of()), print(4, List.of(one), List.of()))
                        .outcome());
    }

    @Test
    void aNewLineBesideAnOldOneIsNew() throws Exception {
        PrintLine old = line(100.0, 0.2, SurfaceCause.PRINT);
        PrintLine again = line(100.1, 0.2, SurfaceCause.PRINT);
        PrintLine beside = line(100.7, 0.2, SurfaceCause.PRINT);
        SurfaceChange change =
                between(
                        print(1, List.of(old), List.of()),
                        print(2, List.of(beside, again), List.of()));
        assertEquals(List.of(beside), change.newLines());
        assertEquals(List.of(again), change.oldLines());
        assertEquals(Outcome.FAILED, change.outcome());
    }

    /** Below the limit it is inside whosever it is, so it is said, and is no drift. */
    @Test
    void aFaintLineThatMayBeTheScannersIsNoDrift() throws Exception {
        Check check =
                Checker.check(
                        print(1, List.of(), List.of()),
                        print(2, List.of(line(70, 0.02, SurfaceCause.UNDECIDED)), List.of()),
                        ToleranceFile.named("fine"));
        assertEquals(Outcome.WITHIN, check.surface().outcome());
        assertEquals(1, check.surface().newLines().size());
        assertTrue(CheckWords.sentences(check).get(0).contains("It may be the scanner's"));
        SurfaceChange stronger =
                between(
                        print(3, List.of(line(70, 0.02, SurfaceCause.UNDECIDED)), List.of()),
                        print(4, List.of(line(70, 0.3, SurfaceCause.UNDECIDED)), List.of()));
        assertEquals(Outcome.CANNOT_TELL, stronger.outcome());
    }

    /** A sheet with tints was scanned too coarsely: nothing is said of what nobody looked at. */
    @Test
    void aCheckThatLookedAtNoLinesIsNotWithin() throws Exception {
        Check coarse =
                Checker.check(
                        MadePrint.withTint(MadePrint.USUAL.evaluation(1)),
                        MadePrint.withTint(MadePrint.USUAL.evaluation(2)),
                        ToleranceFile.named("fine"));
        assertEquals(Outcome.CANNOT_TELL, coarse.outcome());
        assertEquals(List.of("lines", "bands"), coarse.surface().unlooked());
        assertEquals(
                "Cannot tell: within in what could be compared with the baseline (tolerances:"
                        + " fine); lines and bands were not looked at.",
                CheckWords.headline(coarse));
        String first = CheckWords.sentences(coarse).get(0);
        assertTrue(first.contains("600 samples an inch"), first);
        Evaluation looked = MadePrint.withTint(print(3, List.of(), List.of()));
        Check half =
                Checker.check(
                        looked,
                        MadePrint.withTint(MadePrint.USUAL.evaluation(4)),
                        ToleranceFile.named("fine"));
        assertEquals(Outcome.CANNOT_TELL, half.outcome());
        Check fine =
                Checker.check(
                        looked,
                        MadePrint.withTint(print(5, List.of(), List.of())),
                        ToleranceFile.named("fine"));
        assertEquals(Outcome.WITHIN, fine.outcome());
    }

    /** Sheets without tints, and sets that do not ask, are not held against a print. */
    @Test
    void whatASheetCannotTellIsSaidLast() throws Exception {
        Check check =
                Checker.check(
                        MadePrint.USUAL.evaluation(1),
                        MadePrint.USUAL.evaluation(2),
                        ToleranceFile.named("fine"));
        assertEquals(Outcome.WITHIN, check.outcome());
        List<String> said = CheckWords.sentences(check);
        assertTrue(said.get(said.size() - 1).startsWith("Lines and bands were not compared"));
        ToleranceSet fine = ToleranceFile.named("fine");
        ToleranceSet unasked =
                new ToleranceSet("mine", "", fine.falseAlarms(), fine.quantities(), null, null);
        assertEquals(
                Outcome.WITHIN,
                Checker.check(
                                MadePrint.withTint(MadePrint.USUAL.evaluation(1)),
                                MadePrint.withTint(MadePrint.USUAL.evaluation(2)),
                                unasked)
                        .outcome());
    }

    /** At the threshold a band that has not changed may be seen in one print alone. */
    @Test
    void aBandAtTheThresholdIsNotNew() throws Exception {
        SurfaceChange change =
                between(
                        print(1, List.of(), List.of(band(4, 0.9))),
                        print(2, List.of(), List.of(band(4.1, 1.1))));
        assertEquals(Outcome.WITHIN, change.outcome());
        assertEquals(List.of(), change.newBands());
        SurfaceChange grown =
                between(
                        print(3, List.of(), List.of(band(4, 0.9))),
                        print(4, List.of(), List.of(band(4.1, 5))));
        assertEquals(Outcome.FAILED, grown.outcome());
        assertEquals(1, grown.worseBands().size());
    }
}
