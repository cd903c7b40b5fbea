package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.chart.ChartFile;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.Placing;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.PrintedPatch;
import org.printassay.demo.print.Printing;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.evaluation.Evaluator;
import org.printassay.reading.Reading;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;

/** Blur that reaches far into patches does not reach what is read of them. Simulated. */
class HeavyBlurTest {
    /** Wide enough that a fixed inset would let neighbours into a seventh of all patches. */
    private static final double SIGMA_UM = 400;

    @TempDir Path dir;

    @Test
    void neighboursStayOutOfWhatIsRead() throws Exception {
        Print print = SimulatedPrint.print(SimulatedPrint.goodPaper(), Printing.EXACT, 9);
        Flatbed bed =
                SimulatedPrint.flatbed().withSamplesPerInch(200).withPlacing(Placing.STRAIGHT);
        Path scan = dir.resolve("scan.tif");
        PrintRoom.scan(print, bed.withOptics(bed.optics().withBlur(SIGMA_UM)), 9, scan);
        Path chart =
                Files.writeString(
                        dir.resolve("chart.json"), ChartFile.write(SimulatedPrint.chart()));
        EvaluationRequest plain = EvaluationRequest.of(scan);
        EvaluationRequest request =
                new EvaluationRequest(
                        plain.files(),
                        Optional.of(chart),
                        plain.profile(),
                        plain.details(),
                        plain.threshold(),
                        plain.space());
        Evaluation e = Evaluator.evaluate(request).evaluation();
        Map<String, Lab> truth = new HashMap<>();
        for (PrintedPatch patch : print.patches()) {
            truth.put(patch.patch().id(), patch.printed());
        }
        double sum = 0;
        double largest = 0;
        int flagged = 0;
        for (Reading reading : e.patches()) {
            Lab real = Objects.requireNonNull(truth.get(reading.id()));
            double off = DeltaE.ciede2000(real, reading.best());
            sum += off;
            largest = Math.max(largest, off);
            flagged += reading.flags().isEmpty() ? 0 : 1;
        }
        assertTrue(sum / truth.size() <= 0.15, "mean dE00 " + sum / truth.size());
        assertTrue(largest <= 0.6, "largest dE00 " + largest);
        assertTrue(flagged <= 5, flagged + " patches are flagged");
        Set<WarningCode> told =
                e.warnings().stream().map(Warning::code).collect(Collectors.toSet());
        assertTrue(told.contains(WarningCode.BLURRED), told.toString());
    }
}
