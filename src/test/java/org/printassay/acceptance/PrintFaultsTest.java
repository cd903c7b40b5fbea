package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.Placing;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.Printing;
import org.printassay.demo.print.Printing.Across;
import org.printassay.demo.print.Printing.Band;
import org.printassay.demo.print.Printing.Line;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.evaluation.Evaluator;
import org.printassay.reading.Reading;

/**
 * Faults of a print, and a black lid, do not lead its readings astray without notice. Truth is the
 * paper's own curve. Simulated.
 */
class PrintFaultsTest {
    @TempDir Path dir;

    private Evaluation evaluated(Printing printing, Placing placing) throws Exception {
        Print print = SimulatedPrint.print(SimulatedPrint.goodPaper(), printing, 21);
        Flatbed bed = SimulatedPrint.flatbed().withSamplesPerInch(200).withPlacing(placing);
        Path scan = dir.resolve("scan.tif");
        PrintRoom.scan(print, bed, 21, scan);
        return Evaluator.evaluate(EvaluationRequest.of(scan)).evaluation();
    }

    private static Printing with(List<Line> lines, List<Band> bands) {
        return new Printing(1, 1, 0, 0, lines, bands);
    }

    private static void assertReadRight(Evaluation e, double mean, double largestUnflagged) {
        PaperModel paper = SimulatedPrint.goodPaper();
        double sum = 0;
        double largest = 0;
        for (Reading reading : e.patches()) {
            double off = DeltaE.ciede2000(paper.colourOf(reading.rgb()), reading.best());
            sum += off;
            largest = reading.flags().isEmpty() ? Math.max(largest, off) : largest;
        }
        assertTrue(sum / e.patches().size() <= mean, "mean dE00 " + sum / e.patches().size());
        assertTrue(largest <= largestUnflagged, "largest dE00 without a flag " + largest);
        Lab white = Objects.requireNonNull(Objects.requireNonNull(e.white()).lab());
        Lab black = Objects.requireNonNull(Objects.requireNonNull(e.black()).lab());
        assertEquals(paper.white().l(), white.l(), 0.3);
        assertEquals(paper.black().l(), black.l(), 0.3);
    }

    @Test
    void aBlackLidChangesNothing() throws Exception {
        Evaluation e = evaluated(Printing.EXACT, Placing.STRAIGHT.withLid(Placing.BLACK_LID));
        assertReadRight(e, 0.3, 1);
    }

    /** A clogged nozzle and a doubled one, down and across the page. */
    @Test
    void linesAreLeftOutOfWhatIsRead() throws Exception {
        List<Line> lines =
                List.of(
                        new Line(Across.X, 62, 0.3, 0.4),
                        new Line(Across.X, 131.5, 0.5, -0.3),
                        new Line(Across.Y, 84, 0.4, 0.4));
        assertReadRight(evaluated(with(lines, List.of()), Placing.STRAIGHT), 0.3, 1);
    }

    /** Bands of a worn feed: single patches feel them, paper and black do not. */
    @Test
    void bandsAverageOut() throws Exception {
        List<Band> bands = List.of(new Band(Across.Y, 3.3, 0.8), new Band(Across.X, 11, 0.4));
        assertReadRight(evaluated(with(List.of(), bands), Placing.STRAIGHT), 0.5, 3);
    }
}
