package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.Placing;
import org.printassay.demo.flatbed.Sensor;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.Printing;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.evaluation.Evaluator;
import org.printassay.evaluation.Finding;
import org.printassay.evaluation.PrintLine;
import org.printassay.evaluation.PrintSurface;
import org.printassay.evaluation.SurfaceCause;
import org.printassay.surface.Along;

/** Streaks of the scanner on whole simulated scans of the printer sheet. */
class StreakTest {
    /** Where the scanner has its streak, share of the scan's width. */
    private static final double STREAK = 0.3;

    private static PrinterSheet sheet;

    @TempDir Path folder;

    @BeforeAll
    static void render() throws Exception {
        sheet = PrinterSheet.of("A5");
    }

    /** A line down the page, where no streak is. */
    private static Print printWithALine() throws Exception {
        Printing.Line line = new Printing.Line(Printing.Across.X, 40.5, 0.085, 0.2);
        return sheet.print(0.8, List.of(line), List.of(), 6);
    }

    private Path scanned(Print print, double degrees, double exposure, double streak, int seed)
            throws Exception {
        Path scan = folder.resolve("scan-" + seed + ".tif");
        Flatbed flatbed = Flatbed.ordinary(600);
        Sensor s = flatbed.sensor();
        PrintRoom.scan(
                print,
                flatbed.withPlacing(Placing.STRAIGHT.withDegrees(degrees).withWobble(0.04, 90))
                        .withSensor(
                                new Sensor(
                                        s.electronsAtWhite(),
                                        s.readNoise(),
                                        exposure,
                                        false,
                                        s.encoding())),
                seed,
                scan);
        PrinterSheet.streak(scan, STREAK, streak);
        return scan;
    }

    private static List<PrintLine> certain(PrintSurface surface) {
        assertNotNull(surface.lines());
        return surface.lines().stream().filter(l -> l.cause() == SurfaceCause.PRINT).toList();
    }

    private static void assertIsThePrintLine(Print print, PrintLine line) {
        assertEquals(Along.X, line.line().along());
        assertEquals(print.pageX(40.5), line.line().positionMm(), 0.3);
        assertTrue(line.line().contrast() > 0);
    }

    @Test
    void barePaperShowsADarkStreak() throws Exception {
        Print print = sheet.print(0.8, List.of(), List.of(), 6);
        Path scan = scanned(print, 0.6, 1, 0.93, 1);
        PrintSurface found = Evaluator.evaluate(EvaluationRequest.of(scan)).evaluation().surface();
        assertNotNull(found);
        assertEquals(List.of(), found.lines());
        assertFalse(found.scannerLines().isEmpty(), "the streak is told as the scanner's");
    }

    /** Clipped paper has no room for a light streak; the tints tell by its direction. */
    @Test
    void aLightStreakInAClippedScanIsNotThePrints() throws Exception {
        Print print = printWithALine();
        Path scan = scanned(print, 0.6, 1.3, 1.08, 2);
        PrintSurface found = Evaluator.evaluate(EvaluationRequest.of(scan)).evaluation().surface();
        assertNotNull(found);
        List<PrintLine> certain = certain(found);
        assertEquals(1, certain.size(), found.toString());
        assertIsThePrintLine(print, certain.get(0));
        assertEquals(certain, found.lines(), "nothing undecided");
        assertEquals(1, found.scannerLines().size(), found.scannerLines().toString());
    }

    /** A straight sheet and clipped paper: only the turned repeat tells. */
    @Test
    void aTurnedRepeatTellsStreaksFromLines() throws Exception {
        Print print = printWithALine();
        Path upright = scanned(print, 0, 1.3, 1.08, 3);
        Evaluation alone = Evaluator.evaluate(EvaluationRequest.of(upright)).evaluation();
        assertNotNull(alone.surface());
        for (PrintLine line : certain(alone.surface())) {
            assertIsThePrintLine(print, line);
        }
        String words =
                alone.findings().stream().map(Finding::text).collect(Collectors.joining(" | "));
        assertFalse(words.contains("2 lines"), words);
        Path turned = scanned(print, 180, 1.3, 1.08, 4);
        PrintSurface both =
                Evaluator.evaluate(EvaluationRequest.of(upright, turned)).evaluation().surface();
        assertNotNull(both);
        List<PrintLine> certain = certain(both);
        assertEquals(1, certain.size(), both.toString());
        assertIsThePrintLine(print, certain.get(0));
        assertEquals(certain, both.lines(), "nothing undecided");
        assertEquals(2, both.scannerLines().size(), "once in each scan");
    }
}
