package org.printassay.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.MadePrint;
import org.printassay.evaluation.PrintBand;
import org.printassay.evaluation.PrintLine;
import org.printassay.evaluation.PrintSurface;
import org.printassay.evaluation.SurfaceCause;
import org.printassay.problem.Problem;
import org.printassay.surface.Along;
import org.printassay.surface.ContrastSensitivity;
import org.printassay.surface.FoundBand;
import org.printassay.surface.FoundLine;

/** Lines and bands of simulated prints, matched by place. */
class SurfaceMatchTest {
    private static final PrintLine FAINT = line(50.0, 0.02, SurfaceCause.PRINT);
    private static final PrintLine STRONG = line(120.0, 0.15, SurfaceCause.PRINT);

    private static PrintLine line(double mm, double contrast, SurfaceCause cause) {
        return new PrintLine(
                1,
                new FoundLine(Along.Y, mm, 0.1, contrast, 9, List.of("T1"), List.of(), false),
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
        assertTrue(said.contains("1 line as in the baseline."));
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
}
