package org.printassay.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.chart.Chart;
import org.printassay.chart.ChartFile;
import org.printassay.chart.ChartReference;
import org.printassay.chart.Charts;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;
import org.printassay.reading.Trust;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;

class MeasurementEvaluationTest {
    @TempDir Path dir;

    private static List<String> codes(Evaluation evaluation) {
        List<String> codes = new ArrayList<>();
        evaluation.warnings().forEach(w -> codes.add(w.code().key()));
        return codes;
    }

    /**
     * 24 patches of a real RGB print, measured with a 45/0 instrument (published sample, source in
     * the file's header): evaluates as far as its patches allow and says what is missing.
     */
    @Test
    void thePublishedRgbSampleEvaluatesAsFarAsItsPatchesAllow() throws Exception {
        Path file =
                Path.of(
                        Objects.requireNonNull(
                                        getClass()
                                                .getResource(
                                                        "/published/cgats-rgb-spectral-sample.txt"))
                                .toURI());
        Evaluation e = Evaluator.evaluate(EvaluationRequest.of(file)).evaluation();
        assertEquals(Trust.INSTRUMENT, e.trust());
        assertEquals(24, e.patches().size());
        // The instrument's own CIELAB of code 255 and code 0; recomputed from spectra within 0.15.
        var white = Objects.requireNonNull(Objects.requireNonNull(e.white()).lab());
        assertEquals(94.71, white.l(), 0.15);
        assertEquals(-0.72, white.a(), 0.15);
        assertEquals(-0.91, white.b(), 0.15);
        assertEquals(
                17.64, Objects.requireNonNull(Objects.requireNonNull(e.black()).lab()).l(), 0.15);
        assertNull(e.shadows());
        assertNull(e.highlights());
        List<String> codes = codes(e);
        for (String missing :
                List.of("shadows-not-judged", "highlights-not-judged", "no-repeats")) {
            assertTrue(codes.contains(missing), missing);
        }
    }

    /** A chart's own reference is the file itself: a perfect print of it has no fault. */
    @Test
    void aChartsReferenceEvaluatesToItsAim() throws Exception {
        Chart chart =
                Charts.create(Recipe.paper(PageSize.parse("A4"), Margins.all(10), RgbSpace.SRGB));
        Path text = Files.writeString(dir.resolve("chart.txt"), ChartReference.write(chart));
        Path json = Files.writeString(dir.resolve("chart.json"), ChartFile.write(chart));
        EvaluationRequest request =
                new EvaluationRequest(
                        List.of(text),
                        Optional.of(json),
                        Optional.empty(),
                        PrintDetails.UNKNOWN,
                        EvaluationRequest.JUST_VISIBLE,
                        RgbSpace.SRGB);
        Evaluation e = Evaluator.evaluate(request).evaluation();
        assertEquals(chart.id(), e.chartId());
        assertEquals(0, Objects.requireNonNull(e.tone()).rmsDeltaL(), 0.02);
        var shadows = Objects.requireNonNull(e.shadows());
        assertEquals(2, shadows.best(), "an ideal print shows level 2 at 0.5 L*");
        assertNotNull(e.colours());
        assertFalse(e.fromScan());
    }

    @Test
    void scansAndMeasurementsAreNotMixed() throws Exception {
        Path text = Files.writeString(dir.resolve("a.txt"), "CGATS.17\n");
        Problem problem =
                assertThrows(
                        Problem.class, () -> Evaluator.evaluate(EvaluationRequest.of(text, text)));
        assertEquals(Problem.Kind.USAGE, problem.kind());
    }
}
