package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.Filters;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.ScanFile;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.print.InkSet;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.PrintedPatch;
import org.printassay.demo.print.Printing;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.evaluation.Evaluator;
import org.printassay.evaluation.PrintDetails;
import org.printassay.metric.Extreme;
import org.printassay.reading.Trust;
import org.printassay.reading.WarningCode;
import org.printassay.scannermodel.CalibrationFile;
import org.printassay.scannermodel.ScannerCalibration;

/**
 * Calibrated scans of simulated prints: three lamps that see nothing as eyes do, inks with spectra,
 * stray light, fall-off, noise and dust of an ordinary flatbed.
 */
class CalibrationTest {
    static final PaperModel ONE =
            PaperModel.faultless(
                            "Paper one (simulated)", new Lab(95.4, 0.3, 1.5), new Lab(11, 0.2, 0.6))
                    .withChromaByHue(List.of(0.72, 0.75, 0.7, 0.7, 0.65, 0.7))
                    .withSurface(SimulatedPrint.GOOD_SURFACE);

    /** Of the same family: warmer, a duller black. */
    static final PaperModel SISTER =
            PaperModel.faultless(
                            "Paper two (simulated)", new Lab(96.1, 0.5, 3.5), new Lab(13, 0, 0.2))
                    .withChromaByHue(List.of(0.68, 0.7, 0.7, 0.66, 0.62, 0.66))
                    .withSurface(SimulatedPrint.GOOD_SURFACE);

    @TempDir Path dir;

    static Flatbed flatbed() {
        Flatbed ordinary = Flatbed.ordinary(150);
        return ordinary.withSensor(ordinary.sensor().withFilters(Filters.LAMPS))
                .withFile(ScanFile.TIFF16.withProfile(false));
    }

    private Path scan(Print print, String name, long seed) throws Exception {
        Path file = dir.resolve(name + ".tif");
        PrintRoom.scan(print, flatbed(), seed, file);
        return file;
    }

    /** dE00 of readings against the true colours of a print. */
    record Errors(double mean, double p95) {
        static Errors of(Print print, Evaluation evaluation) {
            Map<String, Lab> truth = new HashMap<>();
            for (PrintedPatch patch : print.patches()) {
                truth.put(patch.patch().id(), patch.printed());
            }
            double[] sorted =
                    evaluation.patches().stream()
                            .mapToDouble(
                                    reading ->
                                            DeltaE.ciede2000(
                                                    Objects.requireNonNull(truth.get(reading.id())),
                                                    Objects.requireNonNull(reading.lab())))
                            .sorted()
                            .toArray();
            return new Errors(
                    Arrays.stream(sorted).average().orElseThrow(),
                    sorted[(int) Math.ceil(0.95 * sorted.length) - 1]);
        }
    }

    static Evaluation evaluate(Path scan, Path calibration, @Nullable String family)
            throws Exception {
        return Evaluator.evaluate(
                        new EvaluationRequest(
                                List.of(scan),
                                Optional.empty(),
                                Optional.empty(),
                                new PrintDetails(null, null, null, null, null, family),
                                EvaluationRequest.JUST_VISIBLE,
                                RgbSpace.SRGB,
                                Optional.of(calibration)))
                .evaluation();
    }

    /**
     * 568 patches of a print are scanned and measured; then a print on another paper of the family,
     * and one with other inks on another paper, which the calibration cannot know.
     */
    @Test
    void aCalibrationHoldsForItsFamilyAndForNothingElse() throws Exception {
        Print one = SimulatedPrint.print(ONE, Printing.EXACT, 1);
        Path measured = dir.resolve("measured.txt");
        PrintRoom.measure(one, 1, measured);
        Path scan = scan(one, "one", 1);
        CommandLineRun run =
                CommandLineRun.of(
                        "calibrate",
                        "--scan",
                        scan,
                        "--measurement",
                        measured,
                        "--paper",
                        "Paper one",
                        "--family",
                        "coated",
                        "--out",
                        dir.resolve("made"));
        assertEquals(0, run.exitCode(), run.err());
        Path file = dir.resolve("made/calibration.json");
        ScannerCalibration made = CalibrationFile.read(file);
        assertTrue(run.out().contains("Each predicted without its colour"), run.out());
        assertTrue(run.out().contains("in the mean on another print"), run.out());

        Print sister = SimulatedPrint.print(SISTER, Printing.EXACT, 2);
        Evaluation within = evaluate(scan(sister, "two", 2), file, "coated");
        assertEquals(Trust.CALIBRATED_SCAN, within.trust());
        Errors errors = Errors.of(sister, within);
        assertTrue(errors.mean <= 0.6 && errors.p95 <= 1.5, errors.toString());
        // The light of each scan is an error that leaving colours out cannot show, and is chance:
        // what is expected is held against the mean of two prints.
        Print again = SimulatedPrint.print(ONE, Printing.EXACT, 4);
        Errors same = Errors.of(again, evaluate(scan(again, "four", 4), file, "coated"));
        double ratio = made.expectedDeltaE00() / ((errors.mean + same.mean) / 2);
        assertTrue(ratio < 1.3 && ratio > 1 / 1.3, made.error() + " " + errors + " " + same);
        assertTrue(made.expectedDeltaE00() > made.error().meanDeltaE00(), "light counts");
        assertFalse(warned(within, WarningCode.CALIBRATION_PAPER), "the family is right");
        assertFalse(warned(within, WarningCode.CALIBRATION_RANGE), "the colours are right");

        Print other = SimulatedPrint.print(SISTER, Printing.EXACT.withInks(InkSet.SECOND), 3);
        Path third = scan(other, "three", 3);
        Evaluation outside = evaluate(third, file, "matte");
        assertTrue(warned(outside, WarningCode.CALIBRATION_PAPER));
        Errors larger = Errors.of(other, outside);
        assertTrue(larger.mean > 5 * errors.mean, larger + " " + errors);
        assertTrue(black(outside).uncertainty().l() > 4 * black(within).uncertainty().l());
        assertTrue(
                Math.abs(lightness(outside) - SISTER.black().l())
                        < black(outside).uncertainty().l(),
                "the wider interval holds the truth: " + black(outside));
        // Nobody says which paper it is: that must not look as sure as the right one.
        Evaluation unsaid = evaluate(third, file, null);
        assertTrue(warned(unsaid, WarningCode.CALIBRATION_PAPER));
        assertTrue(black(unsaid).uncertainty().a() > 3 * black(within).uncertainty().a());
    }

    private static Extreme black(Evaluation evaluation) {
        return Objects.requireNonNull(evaluation.black());
    }

    private static double lightness(Evaluation evaluation) {
        return Objects.requireNonNull(black(evaluation).lab()).l();
    }

    private static boolean warned(Evaluation evaluation, WarningCode code) {
        return evaluation.warnings().stream().anyMatch(warning -> warning.code() == code);
    }
}
