package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
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

/** Blur that reaches far into patches does not reach what is read of them. Simulated. */
class HeavyBlurTest {
    @TempDir Path dir;

    @ParameterizedTest
    @ValueSource(doubles = {400, 550})
    void neighboursStayOutOfWhatIsRead(double sigmaUm) throws Exception {
        Print print = SimulatedPrint.print(SimulatedPrint.goodPaper(), Printing.EXACT, 9);
        Flatbed bed = SimulatedPrint.flatbed().withSamplesPerInch(200).withPlacing(Placing.STRAIGHT);
        Path scan = dir.resolve("scan.tif");
        PrintRoom.scan(print, bed.withOptics(bed.optics().withBlur(sigmaUm)), 9, scan);
        Path chart = Files.writeString(dir.resolve("chart.json"), ChartFile.write(SimulatedPrint.chart()));
        EvaluationRequest plain = EvaluationRequest.of(scan);
        EvaluationRequest request = new EvaluationRequest(plain.files(), Optional.of(chart), plain.profile(), plain.details(), plain.threshold(), plain.space());
        Evaluation e = Evaluator.evaluate(request).evaluation();
        Map<String, Lab> truth = new HashMap<>();
        for (PrintedPatch patch : print.patches()) {
            truth.put(patch.patch().id(), patch.printed());
        }
        double sum = 0;
        double largest = 0;
        int n = 0;
        int flagged = 0;
        for (Reading reading : e.patches()) {
            double off = DeltaE.ciede2000(Objects.requireNonNull(truth.get(reading.id())), reading.best());
            sum += off;
            n++;
            flagged += reading.flags().isEmpty() ? 0 : 1;
            largest = reading.flags().isEmpty() ? Math.max(largest, off) : largest;
        }
        System.out.println("BLUR " + sigmaUm + " mean " + sum / n + " largest " + largest + " flagged " + flagged + " " + e.strayLight());
        assertTrue(sum / n <= 0.3, "mean dE00 " + sum / n);
    }
}
