package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.calibrate.codes.ScanColour;
import org.printassay.chart.Chart;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.Exposure;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.Frame;
import org.printassay.demo.flatbed.Placing;
import org.printassay.demo.flatbed.ScanFile;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.Printing;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.evaluation.Evaluator;
import org.printassay.locate.LocatedSheet;
import org.printassay.locate.LocatingImage;
import org.printassay.locate.Locator;
import org.printassay.locate.PointPx;
import org.printassay.problem.Problem;
import org.printassay.reading.Trust;
import org.printassay.reading.WarningCode;
import org.printassay.scan.ScanFiles;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;

/** Sheets that are hard to find: covered, doubled, cut, mirrored, photographed, blurred. */
class FindingTest {
    private static final double SAMPLES_PER_INCH = 150;

    /** A patch is 6 mm wide and its middle part is read: this much misplaces nothing. */
    private static final double PLACED_MM = 0.3;

    private static final UnaryOperator<PointPx> AS_IT_IS = UnaryOperator.identity();

    @TempDir static Path dir;
    private static EditedScan good;
    private static Print print;
    private static Frame frame;
    private static List<PointPx> markers;

    @BeforeAll
    static void scanOnce() throws Exception {
        print = SimulatedPrint.print(SimulatedPrint.goodPaper(), Printing.EXACT, 7);
        Flatbed flatbed =
                SimulatedPrint.flatbed()
                        .withSamplesPerInch(SAMPLES_PER_INCH)
                        .withPlacing(Placing.STRAIGHT.withDegrees(1).withBorder(8))
                        .withFile(ScanFile.TIFF16.withFormat(ScanFile.Format.PNG, 8));
        Path file = dir.resolve("good.png");
        PrintRoom.scan(print, flatbed, 7, file);
        frame = new Exposure(print, flatbed, 7).frame();
        good = EditedScan.of(ScanFiles.open(file));
        markers = new ArrayList<>(new TreeMap<>(located(good).markerCentres()).values());
    }

    private static LocatedSheet located(EditedScan scan) throws Problem {
        return located(scan, Optional.empty());
    }

    private static LocatedSheet located(EditedScan scan, Optional<Chart> chart) throws Problem {
        LocatingImage image = LocatingImage.of(scan, ScanColour.plain(scan.info()).codeLight());
        return Locator.locate(scan.info(), image, chart);
    }

    private static String refusal(EditedScan scan) {
        return String.valueOf(assertThrows(Problem.class, () -> located(scan)).getMessage());
    }

    /** Farthest patch centre from where it really is. */
    private static double worstMm(LocatedSheet found, UnaryOperator<PointPx> toGood) {
        double worst = 0;
        for (Patch patch : found.sheet().patches()) {
            PointMm centre = patch.area().centre();
            PointMm real = frame.inScan(print.onSheet(centre));
            PointPx placed = toGood.apply(found.placement().toScan(centre));
            worst = Math.max(worst, Math.hypot(placed.x() - real.x(), placed.y() - real.y()));
        }
        return worst / (SAMPLES_PER_INCH / 25.4);
    }

    private static EditedScan covered(PointPx at, double radiusMm) {
        return good.covered(at.x(), at.y(), radiusMm * SAMPLES_PER_INCH / 25.4, 200);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2})
    void aThirdOfTheMarkersMayBeHidden(int first) throws Exception {
        EditedScan scan = good;
        for (int i = first; i < markers.size(); i += 3) {
            PointPx at = markers.get(i);
            scan = scan.covered(at.x(), at.y(), 7 * SAMPLES_PER_INCH / 25.4, 200);
        }
        LocatedSheet found = located(scan);
        assertTrue(found.markerCentres().size() >= 9, "" + found.markerCentres().size());
        assertTrue(worstMm(found, AS_IT_IS) < PLACED_MM, "" + worstMm(found, AS_IT_IS));
    }

    @Test
    void aCodeMayBePartlyHiddenOrNamedByTheChartFile() throws Exception {
        PointPx code = codeMiddle();
        assertEquals(14, located(covered(code, 3)).markerCentres().size());
        EditedScan gone = covered(code, 40);
        assertTrue(refusal(gone).contains("sheet code cannot be read"), refusal(gone));
        LocatedSheet found = located(gone, Optional.of(SimulatedPrint.chart()));
        assertTrue(worstMm(found, AS_IT_IS) < PLACED_MM);
    }

    private static PointPx codeMiddle() {
        PointMm at =
                frame.inScan(print.onSheet(SimulatedPrint.chart().sheets().get(0).code().centre()));
        return new PointPx(at.x(), at.y());
    }

    @Test
    void twoPrintsInOneScanAreNamed() {
        String twice = refusal(good.beside(good));
        String id = SimulatedPrint.chart().id();
        assertTrue(
                twice.contains("2 prints: print 1 of chart " + id + " and print 1 of chart " + id),
                twice);
        int width = good.info().width();
        String cut = refusal(good.beside(good.cropped(0, 400, width, 1400)));
        assertTrue(cut.contains("markers of another print"), cut);
        // One's own code hidden and another's in view: its chart is not taken for this one's.
        String stray = refusal(covered(codeMiddle(), 40).beside(good.cropped(0, 0, 400, 500)));
        assertTrue(stray.contains("parts of two prints"), stray);
    }

    @Test
    void theEdgeOfAnotherPrintDoesNoHarm() throws Exception {
        LocatedSheet found = located(good.beside(good.cropped(0, 300, 200, 1400)));
        assertEquals(14, found.markerCentres().size());
        assertTrue(worstMm(found, AS_IT_IS) < PLACED_MM);
    }

    @Test
    void aMirroredScanIsSaidToBeOne() {
        int width = good.info().width();
        EditedScan mirrored =
                good.mapped(width, good.info().height(), p -> new PointPx(width - p.x(), p.y()));
        assertTrue(refusal(mirrored).contains("is mirrored"), refusal(mirrored));
    }

    @Test
    void partOfASheetIsReadOrNamed() throws Exception {
        int width = good.info().width();
        int height = good.info().height();
        LocatedSheet most = located(good.cropped(0, 0, width, (int) (0.75 * height)));
        assertTrue(worstMm(most, AS_IT_IS) < 1, "outside the scan too");
        String half = refusal(good.cropped(0, 0, width, height / 2));
        assertTrue(half.contains("holds only part of the sheet"), half);
    }

    @Test
    void whatAHandCoversIsLeftOut() throws Exception {
        PointPx middle = new PointPx(good.info().width() * 0.3, good.info().height() * 0.22);
        LocatedSheet found =
                located(good.covered(middle.x(), middle.y(), 25 * SAMPLES_PER_INCH / 25.4, 150));
        assertTrue(found.unlike().size() > 20, "" + found.unlike().size());
        for (Patch patch : found.unlike()) {
            PointMm at = frame.inScan(print.onSheet(patch.area().centre()));
            double mm =
                    Math.hypot(at.x() - middle.x(), at.y() - middle.y()) / SAMPLES_PER_INCH * 25.4;
            assertTrue(mm < 25 + 9, "patch " + patch.id() + " is " + mm + " mm from the middle");
        }
        assertEquals(List.of(), located(good).unlike());
    }

    /** What lies over a corner is dark, as the lid where a corner of the sheet is torn off. */
    @Test
    void whatIsCoveredInACornerIsLeftOut() throws Exception {
        int radius = 52;
        int code = 60;
        PointMm corner = frame.inScan(print.onSheet(new PointMm(205, 275)));
        double radiusPx = radius * SAMPLES_PER_INCH / 25.4;
        EditedScan scan = good.covered(corner.x(), corner.y(), radiusPx, code);
        LocatedSheet found = located(scan);
        List<String> wrong = new ArrayList<>();
        for (Patch patch : found.sheet().patches()) {
            PointMm at = frame.inScan(print.onSheet(patch.area().centre()));
            double mm = Math.hypot(at.x() - corner.x(), at.y() - corner.y());
            mm *= 25.4 / SAMPLES_PER_INCH;
            boolean plainlyOther = Math.min(patch.rgb().r(), patch.rgb().g()) > 2 * code;
            if (mm < radius - 5 && plainlyOther && !found.unlike().contains(patch)) {
                wrong.add(patch.id() + " is covered");
            } else if (mm > radius + 9 && found.unlike().contains(patch)) {
                wrong.add(patch.id() + " is not covered");
            }
        }
        assertEquals(List.of(), wrong);
        assertTrue(!found.unlike().isEmpty(), "some are covered");
    }

    @Test
    void markersThatMisleadAreFoundOutByThePatches() {
        // The patches are moved under the markers: a band of the sheet slides 3 mm to the right.
        double slide = 3 * SAMPLES_PER_INCH / 25.4;
        EditedScan slid =
                good.mapped(
                        good.info().width(),
                        good.info().height(),
                        p -> {
                            boolean marker =
                                    markers.stream()
                                            .anyMatch(
                                                    m ->
                                                            Math.abs(m.x() - p.x()) < 38
                                                                    && Math.abs(m.y() - p.y())
                                                                            < 38);
                            boolean code =
                                    Math.hypot(p.x() - codeMiddle().x(), p.y() - codeMiddle().y())
                                            < 90;
                            return marker || code ? p : new PointPx(p.x() - slide, p.y());
                        });
        assertTrue(refusal(slid).contains("patches are not where"), refusal(slid));
    }

    @ParameterizedTest
    @CsvSource({"17, 1.2", "143, 1.5", "271, 1.4"})
    void anyTurnOnALargerBed(double degrees, double larger) throws Exception {
        int side = (int) (larger * good.info().height());
        double cos = Math.cos(Math.toRadians(degrees));
        double sin = Math.sin(Math.toRadians(degrees));
        UnaryOperator<PointPx> turn =
                p -> {
                    double x = p.x() - 0.47 * side;
                    double y = p.y() - 0.52 * side;
                    return new PointPx(
                            cos * x + sin * y + good.info().width() / 2.0,
                            cos * y - sin * x + good.info().height() / 2.0);
                };
        LocatedSheet found = located(good.mapped(side, side, turn));
        assertFalse(found.photographed());
        assertEquals(14, found.markerCentres().size());
        assertTrue(worstMm(found, turn) < PLACED_MM);
        double off = Math.IEEEremainder(found.placement().rotationDegrees() - degrees - 1, 360);
        assertEquals(0, off, 0.1);
    }

    @ParameterizedTest
    @CsvSource({"0.03, 0", "0.1, 0.01", "0.2, 0"})
    void aPhotographIsFollowedAndToldFromAScan(double perspective, double barrel) throws Exception {
        UnaryOperator<PointPx> camera = good.camera(perspective, barrel);
        LocatedSheet found =
                located(good.mapped(good.info().width(), good.info().height(), camera));
        assertTrue(found.photographed(), "perspective " + found.perspective());
        assertTrue(worstMm(found, camera) < 0.6, "" + worstMm(found, camera));
    }

    @ParameterizedTest
    @ValueSource(doubles = {2.5, 3, 4.5})
    void heavyBlurIsReadRightOrRefused(double sigmaPx) {
        try {
            LocatedSheet found = located(good.blurred(sigmaPx));
            assertTrue(worstMm(found, AS_IT_IS) < PLACED_MM, "" + worstMm(found, AS_IT_IS));
        } catch (Problem refused) {
            assertTrue(String.valueOf(refused.getMessage()).contains("too blurred"), "" + refused);
        }
    }

    @Test
    void aPhotographIsAPlainScanAtMost() throws Exception {
        EditedScan seen =
                good.mapped(good.info().width(), good.info().height(), good.camera(0.1, 0));
        Path file = seen.write(dir.resolve("photograph.png"));
        Path profile = dir.resolve("camera.icc");
        Files.write(
                profile, ScanFiles.open(dir.resolve("good.png")).info().iccProfile().orElseThrow());
        EvaluationRequest request = EvaluationRequest.of(file);
        Evaluation evaluation =
                Evaluator.evaluate(
                                new EvaluationRequest(
                                        request.files(),
                                        request.chart(),
                                        Optional.of(profile),
                                        request.details(),
                                        request.threshold(),
                                        request.space()))
                        .evaluation();
        assertEquals(Trust.PLAIN_SCAN, evaluation.trust());
        assertTrue(
                evaluation.warnings().stream().anyMatch(w -> w.code() == WarningCode.PHOTOGRAPH));
        assertNull(evaluation.patches().get(0).lab());
        // It has a profile, so that it lacked one would be a false reason.
        String said = evaluation.warnings() + " " + evaluation.findings();
        assertFalse(said.contains("no colour profile"), said);
        assertTrue(said.contains("tells nothing of the light on a photograph"), said);
    }
}
