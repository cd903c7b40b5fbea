package org.printassay.demo.flatbed;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.Xyz;
import org.printassay.demo.DemoScenario;
import org.printassay.demo.RealChart;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.paper.Surface;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.PrintedPatch;
import org.printassay.demo.print.Printing;
import org.printassay.sheet.Marker;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Sheet;

class ExposureTest {
    /** Rounding to 16 bits and float arithmetic; measured worst is well below. */
    private static final double NOISELESS = 0.05;

    private static final PaperModel PAPER =
            PaperModel.faultless("simulated", new Lab(95.5, 0.5, 2), new Lab(10, 0, 0));
    private static final Sheet SHEET = RealChart.CHART.sheets().get(0);

    private static Print print(PaperModel paper, Printing printing, long seed) {
        return Print.of(RealChart.RENDERED, RgbSpace.SRGB, SHEET, paper, printing, seed);
    }

    @ParameterizedTest
    @EnumSource(Encoding.class)
    void noiselessScanHoldsTheTruth(Encoding encoding) {
        PaperModel uneven = PAPER.withSurface(new Surface(0.3, 0.2, 0, 0.06, 0, 0.3, 0));
        Print print = print(uneven, Printing.EXACT, 7);
        Flatbed flatbed = Flatbed.perfect(150).withSensor(Sensor.NOISELESS.withEncoding(encoding));
        ScannedPixels scan = new ScannedPixels(print, flatbed, 1);
        double worst = 0;
        int compared = 0;
        for (PrintedPatch patch : print.patches()) {
            if (insideOf(encoding, patch.printed())) {
                Lab read = scan.meanLab(patch.onSheet());
                worst = Math.max(worst, distance(read, patch.printed()));
                compared++;
            }
        }
        assertTrue(compared > 0.9 * print.patches().size(), "patches compared " + compared);
        assertTrue(worst < NOISELESS, "worst dE*ab " + worst);
    }

    @Test
    void noiseAndGrainDoNotMoveTheMean() {
        PaperModel grainy = PAPER.withSurface(new Surface(0, 0, 1, 0.06, 0.5, 0.2, 0));
        Print print = print(grainy, Printing.EXACT, 7);
        Sensor noisy = Sensor.NOISELESS.withNoise(20_000, 0.001);
        ScannedPixels scan = new ScannedPixels(print, Flatbed.perfect(300).withSensor(noisy), 1);
        double sum = 0;
        for (PrintedPatch patch : print.patches()) {
            sum += scan.meanLab(patch.onSheet()).l() - patch.printed().l();
        }
        assertEquals(0, sum / print.patches().size(), 0.02, "mean dL*");
    }

    @Test
    void sameSeedsSameBytesOtherSeedsOthers() {
        Flatbed flatbed = Flatbed.ordinary(72);
        PaperModel paper = DemoScenario.warmMatteCotton().paper();
        byte[] first = new ScannedPixels(print(paper, Printing.EXACT, 1), flatbed, 2).bytes;
        byte[] again = new ScannedPixels(print(paper, Printing.EXACT, 1), flatbed, 2).bytes;
        byte[] otherScan = new ScannedPixels(print(paper, Printing.EXACT, 1), flatbed, 3).bytes;
        byte[] otherPrint = new ScannedPixels(print(paper, Printing.EXACT, 4), flatbed, 2).bytes;
        assertArrayEquals(first, again);
        assertFalse(Arrays.equals(first, otherScan), "scan seed");
        assertFalse(Arrays.equals(first, otherPrint), "print seed");
    }

    private static final Flatbed PERFECT = Flatbed.perfect(150);

    private static PrintedPatch midGrey(Print print) {
        return print.patches().stream()
                .filter(p -> p.patch().rgb().isNeutral() && p.onSheet().width() > 5)
                .filter(p -> p.printed().l() > 45 && p.printed().l() < 65)
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.2, -0.2})
    void aLineChangesInkByItsContrastWhereItIs(double contrast) {
        Print plain = print(PAPER, Printing.EXACT, 1);
        RectMm patch = midGrey(plain).onSheet();
        RectMm inside = new RectMm(patch.centre().x() - 1, patch.y(), 2, patch.height());
        RectMm beside = new RectMm(patch.x() + 0.2, patch.y(), 1, patch.height());
        Printing.Line line = new Printing.Line(Printing.Across.X, patch.centre().x(), 2, contrast);
        Print lined = print(PAPER, new Printing(1, 1, 0, 0, List.of(line), List.of()), 1);
        ScannedPixels without = new ScannedPixels(plain, PERFECT, 1);
        ScannedPixels with = new ScannedPixels(lined, PERFECT, 1);
        double there = with.meanLight(inside)[1] / without.meanLight(inside)[1];
        assertEquals(1 + contrast, there, 0.02);
        assertEquals(1, with.meanLight(beside)[1] / without.meanLight(beside)[1], 0.002);
    }

    @Test
    void bandsSwingInkByTheirAmplitudeAndLeavePaperAlone() {
        Printing.Band band = new Printing.Band(Printing.Across.Y, 60, 1);
        Print plain = print(PAPER, Printing.EXACT, 1);
        Print banded = print(PAPER, new Printing(1, 1, 0, 0, List.of(), List.of(band)), 1);
        ScannedPixels without = new ScannedPixels(plain, PERFECT, 1);
        ScannedPixels with = new ScannedPixels(banded, PERFECT, 1);
        double least = 0;
        double most = 0;
        double paper = 0;
        for (PrintedPatch patch : plain.patches()) {
            double l = patch.printed().l();
            double off = with.meanLab(patch.onSheet()).l() - without.meanLab(patch.onSheet()).l();
            if (patch.patch().rgb().isNeutral() && l > 30 && l < 80) {
                least = Math.min(least, off);
                most = Math.max(most, off);
            } else if (patch.patch().rgb().equals(Rgb8.grey(255))) {
                paper = Math.max(paper, Math.abs(off));
            }
        }
        assertEquals(-1, least, 0.15);
        assertEquals(1, most, 0.15);
        assertEquals(0, paper, 0.01);
    }

    @Test
    void theLidIsSeenAroundTheSheet() {
        Print print = print(PAPER, Printing.EXACT, 1);
        for (double lid : new double[] {Placing.WHITE_LID, Placing.BLACK_LID}) {
            Flatbed flatbed = PERFECT.withPlacing(Placing.STRAIGHT.withLid(lid));
            assertEquals(lid, new ScannedPixels(print, flatbed, 1).light(3, 3, 1), 0.01);
        }
    }

    /** Positive degrees turn the sheet clockwise as seen: its top left corner moves right. */
    @Test
    void positiveDegreesTurnClockwise() {
        Flatbed flatbed = Flatbed.perfect(150).withPlacing(Placing.STRAIGHT.withDegrees(3));
        Print print = print(PAPER, Printing.EXACT, 1);
        ScannedPixels scan = new ScannedPixels(print, flatbed, 1);
        Frame frame = scan.exposure.frame();
        PointMm topLeft = frame.toScan(new PointMm(0, 0));
        PointMm topRight = frame.toScan(new PointMm(210, 0));
        PointMm bottomLeft = frame.toScan(new PointMm(0, 297));
        assertTrue(topRight.y() > topLeft.y(), "right end of the top edge is lower");
        assertTrue(bottomLeft.x() < topLeft.x(), "bottom end of the left edge is further left");
        double mm = Math.hypot(topRight.x() - topLeft.x(), topRight.y() - topLeft.y());
        assertEquals(210 * 150 / 25.4, mm, 1e-6);
        assertMarkersAreWhereTheFrameSays(scan, print, 0.05);
    }

    @Test
    void aFitToPagePrintIsSmallerInTheScan() {
        Print print = print(PAPER, Printing.scaled(0.96), 1);
        ScannedPixels scan = new ScannedPixels(print, Flatbed.perfect(150), 1);
        assertMarkersAreWhereTheFrameSays(scan, print, 0.05);
        PointMm at = print.onSheet(new PointMm(0, 0));
        assertEquals(0.02 * 210, at.x(), 1e-2);
    }

    @Test
    void mirroredAndQuarterTurnedScansKeepTheirPlaces() {
        Print print = print(PAPER, Printing.EXACT, 1);
        Placing turned = Placing.STRAIGHT.withDegrees(90).withMirrored(true);
        ScannedPixels scan = new ScannedPixels(print, Flatbed.perfect(150).withPlacing(turned), 1);
        assertTrue(scan.exposure.frame().width() > scan.exposure.frame().height(), "lies across");
        assertMarkersAreWhereTheFrameSays(scan, print, 0.05);
    }

    @Test
    void croppedScansShowTheirPartOfTheWhole() {
        Print print = print(PAPER, Printing.EXACT, 1);
        Flatbed whole = Flatbed.perfect(100);
        Placing lower = Placing.STRAIGHT.withCrop(new Placing.Crop(0, 0.5, 1, 1));
        ScannedPixels all = new ScannedPixels(print, whole, 1);
        ScannedPixels part = new ScannedPixels(print, whole.withPlacing(lower), 1);
        RectMm low = SHEET.markers().get(SHEET.markers().size() - 1).area();
        assertEquals(all.exposure.frame().width(), part.exposure.frame().width());
        assertEquals((all.exposure.frame().height() + 1) / 2.0, part.exposure.frame().height(), 1);
        assertEquals(all.meanLight(low)[1], part.meanLight(low)[1], 0.02);
    }

    /** Light from the neighbourhood lifts a grey on white above its twin on black. */
    @Test
    void strayLightDependsOnTheSurroundAndLeavesWhatTheScannerWasSetUpAmid() {
        Print print = print(PAPER, Printing.EXACT, 1);
        double white = Lab.luminanceFactor(95.5);
        Optics stray = Optics.CLEAR.withStrayLight(0.06, 0.01).withSurround(white);
        Placing wide = Placing.STRAIGHT.withLid(white);
        Flatbed clear = Flatbed.perfect(100).withPlacing(wide);
        ScannedPixels without = new ScannedPixels(print, clear, 1);
        ScannedPixels with = new ScannedPixels(print, clear.withOptics(stray), 1);
        double most = 0;
        double least = 1;
        for (PrintedPatch patch : print.patches()) {
            double rise =
                    with.meanLight(patch.onSheet())[1] / without.meanLight(patch.onSheet())[1];
            boolean black = patch.patch().rgb().equals(org.printassay.colour.Rgb8.grey(0));
            if (black) {
                most = Math.max(most, rise);
                least = Math.min(least, rise);
            }
        }
        assertTrue(least < most - 0.1, "blacks rise differently: " + least + " to " + most);
        RectMm corner = new RectMm(0, 0, 3, 3);
        assertEquals(without.meanLight(corner)[1], with.meanLight(corner)[1], 0.004);
    }

    private static void assertMarkersAreWhereTheFrameSays(
            ScannedPixels scan, Print print, double toleranceMm) {
        double perMm = 150 / 25.4;
        double paper = 0.5 * Lab.luminanceFactor(95.5);
        for (Marker marker : SHEET.markers()) {
            PointMm middle = scan.exposure.frame().toScan(print.onSheet(marker.area().centre()));
            // The black border of a marker is symmetric: middle of its outermost dark extents.
            double reach = 0.56 * marker.area().width() * perMm;
            double x = darkMiddle(scan, middle, reach, true, paper);
            double y = darkMiddle(scan, middle, reach, false, paper);
            assertEquals(middle.x(), x, toleranceMm * perMm + 0.5, "marker " + marker.id() + " x");
            assertEquals(middle.y(), y, toleranceMm * perMm + 0.5, "marker " + marker.id() + " y");
        }
    }

    /** Middle of the dark extents along the axis through a point, whole pixels. */
    private static double darkMiddle(
            ScannedPixels scan, PointMm middle, double reach, boolean alongX, double threshold) {
        int low = Integer.MAX_VALUE;
        int high = Integer.MIN_VALUE;
        int centre = (int) (alongX ? middle.x() : middle.y());
        int fixed = (int) (alongX ? middle.y() : middle.x());
        for (int i = (int) (centre - reach); i <= centre + reach; i++) {
            double light = alongX ? scan.light(i, fixed, 1) : scan.light(fixed, i, 1);
            if (light < threshold) {
                low = Math.min(low, i);
                high = Math.max(high, i);
            }
        }
        return (low + high + 1) / 2.0;
    }

    private static boolean insideOf(Encoding encoding, Lab lab) {
        double[] m = encoding.fromXyz();
        Xyz xyz = lab.toXyz(Xyz.PCS_WHITE);
        for (int i = 0; i < 3; i++) {
            double v = (m[3 * i] * xyz.x() + m[3 * i + 1] * xyz.y() + m[3 * i + 2] * xyz.z()) / 100;
            if (v < 0 || v > 1) {
                return false;
            }
        }
        return true;
    }

    private static double distance(Lab one, Lab two) {
        return Math.sqrt(
                Math.pow(one.l() - two.l(), 2)
                        + Math.pow(one.a() - two.a(), 2)
                        + Math.pow(one.b() - two.b(), 2));
    }
}
