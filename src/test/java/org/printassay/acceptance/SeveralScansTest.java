package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.calibrate.Unevenness;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.Encoding;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.Light;
import org.printassay.demo.flatbed.Placing;
import org.printassay.demo.flatbed.ScanFile;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.paper.Surface;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.PrintedPatch;
import org.printassay.demo.print.Printing;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.evaluation.Evaluator;
import org.printassay.problem.Problem;
import org.printassay.reading.Reading;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;

/** Several scans of one print, and scans that are not. All simulated. */
class SeveralScansTest {
    @TempDir Path dir;

    private static Flatbed flatbed() {
        return SimulatedPrint.flatbed().withSamplesPerInch(200);
    }

    private Path scan(Print print, Flatbed flatbed, long seed) throws Exception {
        Path file = dir.resolve("scan-" + seed + ".tif");
        PrintRoom.scan(print, flatbed, seed, file);
        return file;
    }

    private static Evaluation evaluated(Path... scans) throws Exception {
        return Evaluator.evaluate(EvaluationRequest.of(scans)).evaluation();
    }

    private static Print print(long seed) throws Exception {
        return SimulatedPrint.print(SimulatedPrint.goodPaper(), Printing.EXACT, seed);
    }

    private static double meanDeltaE(Print print, Evaluation e) {
        Map<String, Lab> truth = new HashMap<>();
        for (PrintedPatch patch : print.patches()) {
            truth.put(patch.patch().id(), patch.printed());
        }
        double sum = 0;
        for (Reading reading : e.patches()) {
            sum +=
                    DeltaE.ciede2000(
                            Objects.requireNonNull(truth.get(reading.id())), reading.best());
        }
        return sum / e.patches().size();
    }

    /** Another scanner: other sampling, encoding, exposure, stray light and fall-off, turned. */
    private static Flatbed otherScanner() {
        Flatbed bed = flatbed().withSamplesPerInch(240);
        return bed.withPlacing(Placing.STRAIGHT.withDegrees(91).withOffset(0.5, 1))
                .withOptics(bed.optics().withStrayLight(0.02, 0.008))
                .withLight(new Light(0.05, Light.Shape.ENDS, 0))
                .withSensor(bed.sensor().withEncoding(Encoding.ADOBE_RGB).withExposure(0.93))
                .withFile(ScanFile.TIFF16.withFormat(ScanFile.Format.PNG, 16));
    }

    @Test
    void scansByTwoScannersAreOnePrint() throws Exception {
        Print print = print(31);
        Evaluation e = evaluated(scan(print, flatbed(), 31), scan(print, otherScanner(), 32));
        assertEquals(2, e.files().size());
        assertEquals(2, e.placements().size());
        assertEquals(SimulatedPrint.chart().sheets().get(0).patches().size(), e.patches().size());
    }

    @Test
    void aReprintOnTheSamePaperIsAnotherPrint() throws Exception {
        Problem problem =
                assertThrows(
                        Problem.class,
                        () ->
                                evaluated(
                                        scan(print(33), flatbed(), 33),
                                        scan(print(34), flatbed(), 34)));
        assertEquals(Problem.Kind.CHART, problem.kind());
        assertTrue(problem.getMessage().contains("another print"), problem.getMessage());
        assertTrue(problem.getMessage().contains("scan-33.tif"), problem.getMessage());
    }

    /** Papers that repeat so well that no patch departs from its twins still differ in colour. */
    @Test
    void anotherPaperIsAnotherPrintEvenWithoutSpread() throws Exception {
        PaperModel one = SimulatedPrint.goodPaper().withSurface(Surface.EVEN);
        PaperModel two =
                PaperModel.faultless(
                                "Paper R (simulated)", new Lab(93, 0.5, 4), new Lab(22, 0.1, 0.5))
                        .withSurface(Surface.EVEN);
        Print first = SimulatedPrint.print(one, Printing.EXACT, 35);
        Print second = SimulatedPrint.print(two, Printing.EXACT, 36);
        Problem problem =
                assertThrows(
                        Problem.class,
                        () -> evaluated(scan(first, flatbed(), 35), scan(second, flatbed(), 36)));
        assertTrue(problem.getMessage().contains("another print"), problem.getMessage());
    }

    @Test
    void theSameFileTwiceIsNoRepeat() throws Exception {
        Path scan = scan(print(37), flatbed(), 37);
        Path copy = Files.copy(scan, dir.resolve("copy.tif"));
        Problem problem = assertThrows(Problem.class, () -> evaluated(scan, copy));
        assertEquals(Problem.Kind.USAGE, problem.kind());
        assertTrue(problem.getMessage().contains("same scan"), problem.getMessage());
    }

    /** Saved in another format it has other bytes and the same pixels. */
    @Test
    void theSameScanSavedAnewIsNoRepeat() throws Exception {
        Print print = print(37);
        Path tiff = Files.move(scan(print, flatbed(), 37), dir.resolve("first.tif"));
        ScanFile png = ScanFile.TIFF16.withFormat(ScanFile.Format.PNG, 16);
        Path anew = scan(print, flatbed().withFile(png), 37);
        Problem problem = assertThrows(Problem.class, () -> evaluated(tiff, anew));
        assertEquals(Problem.Kind.USAGE, problem.kind());
        assertTrue(problem.getMessage().contains("the same scan"), problem.getMessage());
    }

    /** The lamp's slope of 4 % is the scanner's, the print's drift of 0.9 L* its own. */
    @Test
    void aTurnedRepeatTellsWhoseTheUnevennessIs() throws Exception {
        Surface drifting = new Surface(0.1, 0.08, 0.3, 0.05, 0.1, 0.2, 0.9);
        PaperModel paper = SimulatedPrint.goodPaper().withSurface(drifting);
        Print print = SimulatedPrint.print(paper, Printing.EXACT, 38);
        Flatbed sloping = flatbed().withLight(new Light(0.04, Light.Shape.SLOPE, 0));
        Flatbed turned = sloping.withPlacing(Placing.STRAIGHT.withDegrees(180.5));
        Evaluation e = evaluated(scan(print, sloping, 38), scan(print, turned, 39));
        Unevenness whose = Objects.requireNonNull(Objects.requireNonNull(e.evenness()).whose());
        // The slope runs over the frame, the patches over 190 of its 220 mm.
        assertEquals(3.5, whose.scannerPercent(), 0.6);
        // Ink drifts by 0.9 L*, bare paper not at all: at L* 50 that is 4.1 % of light (ISO/CIE
        // 11664-4), over nine tenths of the sheet.
        assertEquals(3.7, whose.printPercent(), 0.7);
        assertTrue(whose.undecidedPercent() < 1, whose.toString());
        assertFalse(lightNote(e).contains("turned"), lightNote(e));

        Evaluation alone = evaluated(dir.resolve("scan-38.tif"));
        assertTrue(lightNote(alone).contains("a second scan, turned by 180"), lightNote(alone));

        Print even = print(40);
        Evaluation f = evaluated(scan(even, sloping, 40), scan(even, turned, 41));
        Unevenness lamp = Objects.requireNonNull(Objects.requireNonNull(f.evenness()).whose());
        assertEquals(3.5, lamp.scannerPercent(), 0.6);
        assertTrue(lamp.printPercent() < 0.7, lamp.toString());
    }

    private static String lightNote(Evaluation e) {
        return e.warnings().stream()
                .filter(warning -> warning.code() == WarningCode.UNEVEN_LIGHT)
                .map(Warning::text)
                .findFirst()
                .orElseThrow();
    }

    /**
     * Upper and lower part of a sheet, overlapping; only one of them shows the sheet code. Where
     * markers are missing patterns of patches are taken for some, at 300 samples an inch above all.
     */
    @ParameterizedTest
    @ValueSource(doubles = {200, 300})
    void partsOfASheetAreJoinedByTheirMarkers(double samplesPerInch) throws Exception {
        Print print = print(42);
        Placing whole = Placing.STRAIGHT.withDegrees(0.5);
        Flatbed bed = flatbed().withSamplesPerInch(samplesPerInch);
        Flatbed upper = bed.withPlacing(whole.withCrop(new Placing.Crop(0, 0, 1, 0.58)));
        Flatbed lower = bed.withPlacing(whole.withCrop(new Placing.Crop(0, 0.45, 1, 1)));
        Path top = scan(print, upper, 42);
        Path bottom = scan(print, lower, 43);
        Evaluation e = evaluated(bottom, top);
        // No chart file was named.
        List<String> unread =
                e.warnings().stream()
                        .filter(w -> w.code() == WarningCode.SHEET_CODE_UNREAD)
                        .map(Warning::text)
                        .toList();
        assertEquals(1, unread.size(), unread.toString());
        assertTrue(unread.get(0).endsWith("are taken from the other scans."), unread.get(0));
        int all = SimulatedPrint.chart().sheets().get(0).patches().size();
        assertTrue(e.patches().size() >= 0.99 * all, e.patches().size() + " of " + all);
        // What one part lacks the other holds.
        List<Warning> lacking =
                e.warnings().stream().filter(w -> w.code() == WarningCode.PATCHES_MISSING).toList();
        assertEquals(List.of(), lacking);
        double off = meanDeltaE(print, e);
        assertTrue(off < 0.4, "mean dE00 " + off);
        Problem alone = assertThrows(Problem.class, () -> evaluated(top));
        assertEquals(Problem.Kind.CHART, alone.kind());
    }
}
