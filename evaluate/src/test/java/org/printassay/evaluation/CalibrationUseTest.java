package org.printassay.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;
import org.printassay.metric.PaperLight;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Trust;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.scannermodel.CalibrationFile;
import org.printassay.scannermodel.MadeCalibration;
import org.printassay.scannermodel.ScannerCalibration;

/** A calibration (simulated) made on one paper, used for prints on it and on others. */
class CalibrationUseTest {
    @TempDir Path dir;

    private ScannerCalibration made;
    private ReadingSet readings;

    @BeforeEach
    void make() throws Exception {
        made = MadeCalibration.of(channel -> MadeCalibration.straight());
        Files.writeString(dir.resolve("c.json"), CalibrationFile.write(made));
        List<Reading> all = MadePrint.USUAL.readings(1).readings();
        List<Lab> errors = all.stream().map(r -> made.errorNear(r.best())).toList();
        readings =
                new ReadingSet(all, RgbSpace.SRGB, Trust.CALIBRATED_SCAN, true, List.of(), errors);
    }

    private CalibrationUse use(@Nullable String paper) throws Exception {
        return CalibrationUse.of(
                        new EvaluationRequest(
                                List.of(),
                                Optional.empty(),
                                Optional.empty(),
                                new PrintDetails(paper, "Printer A", null, null),
                                0.5,
                                RgbSpace.SRGB,
                                Optional.of(dir.resolve("c.json"))))
                .orElseThrow();
    }

    private double expected(@Nullable String paper, ReadingSet of) throws Exception {
        CalibrationUse use = use(paper);
        return use.summary(use.widened(of)).expectedDeltaE00();
    }

    /** Readings inside the colours that it was made from, so that nothing is a guess. */
    private ReadingSet inside() {
        List<Reading> all = readings.readings();
        List<Double> outside = made.outside(all.stream().map(Reading::best).toList());
        List<Reading> kept = all.stream().filter(r -> outside.get(all.indexOf(r)) == 0).toList();
        assertTrue(kept.size() > 50, kept.size() + " inside");
        List<Lab> errors = kept.stream().map(r -> made.errorNear(r.best())).toList();
        return new ReadingSet(kept, RgbSpace.SRGB, Trust.CALIBRATED_SCAN, true, List.of(), errors);
    }

    @Test
    void whatIsExpectedIsThatOfThisPaper() throws Exception {
        ReadingSet inside = inside();
        double same = expected("Paper A", inside);
        // As written, to the file's digits.
        assertEquals(made.expectedDeltaE00(), same, 1e-6);
        double unsaid = expected(null, inside);
        double other = expected("Paper B", inside);
        assertTrue(unsaid > same + 0.5, same + " " + unsaid);
        assertTrue(other > 1.5 * unsaid, unsaid + " " + other);
    }

    @Test
    void whatIsExpectedGrowsWithTheDoubtOfTheScan() throws Exception {
        ReadingSet inside = inside();
        List<Lab> doubted =
                inside.calibration().stream()
                        .map(e -> new Lab(Math.hypot(e.l(), 6), e.a(), e.b()))
                        .toList();
        double more = expected("Paper A", inside.withCalibration(doubted));
        // CIEDE2000 weighs lightness by 1 / 1 (L* 50) to 1 / 1.75 (L* 0 and 100): 3.4 to 6 dE00,
        // of which the mean of a normal distribution's absolute value is the root of 2/pi.
        assertTrue(more > 2.7 && more < 4.8, "6 L* are 2.7 to 4.8 dE00 in the mean, got " + more);
        double mean =
                inside.readings().stream()
                        .map(Reading::best)
                        .mapToDouble(c -> DeltaE.ciede2000(c, new Lab(c.l() + 6, c.a(), c.b())))
                        .average()
                        .orElseThrow();
        assertEquals(Math.sqrt(2 / Math.PI) * mean, more, 0.05);
    }

    /**
     * What daylight makes of a brightener is known of the calibration's own paper, and where
     * ultraviolet fell on the print that was measured: not under M2, which cuts it (ISO 13655).
     */
    @Test
    void theLightOfAPaperIsThatOfItsOwnCalibration() {
        Evaluation own = Evaluation.builder(Trust.CALIBRATED_SCAN, "srgb").build();
        assertEquals(PaperLight.DAYLIGHT, own.paperLight());
        Warning paper = new Warning(WarningCode.CALIBRATION_PAPER, "");
        assertEquals(
                PaperLight.OTHER_CALIBRATION,
                own.toBuilder().warnings(List.of(paper)).build().paperLight());
        assertEquals(
                PaperLight.SCANNER,
                Evaluation.builder(Trust.PROFILED_SCAN, "srgb").build().paperLight());
        assertEquals(PaperLight.DAYLIGHT, measured("M1"));
        assertEquals(PaperLight.DAYLIGHT, measured(null));
        assertEquals(PaperLight.NO_ULTRAVIOLET, measured("M2"));
    }

    private static PaperLight measured(@Nullable String condition) {
        return Evaluation.builder(Trust.INSTRUMENT, "srgb")
                .measurement(
                        new MeasurementSummary(
                                condition, null, null, null, 1, null, List.of(), List.of()))
                .build()
                .paperLight();
    }
}
