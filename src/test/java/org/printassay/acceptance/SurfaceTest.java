package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.chart.Chart;
import org.printassay.chart.Charts;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.Placing;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.paper.Surface;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.Printing;
import org.printassay.demo.print.RenderedSheet;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.evaluation.Evaluator;
import org.printassay.evaluation.PrintBand;
import org.printassay.evaluation.PrintLine;
import org.printassay.evaluation.PrintSurface;
import org.printassay.evaluation.SurfaceCause;
import org.printassay.pdf.ChartPdf;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.scan.ScanFiles;
import org.printassay.sheet.Patch;
import org.printassay.surface.Along;

/**
 * Lines and bands on simulated scans of the printer sheet. A longer run, A4 sheets in all turns:
 * {@code -DsurfaceSheets=20}.
 */
class SurfaceTest {
    private static final int SHEETS = Integer.getInteger("surfaceSheets", 0);

    @TempDir Path folder;

    /** A printer sheet, rendered once. */
    private record Page(Chart chart, RenderedSheet rendered, double top, double bottom) {
        static Page of(String size) throws Exception {
            Chart chart =
                    Charts.create(
                            Recipe.of(
                                    Recipe.Kind.PRINTER,
                                    PageSize.parse(size),
                                    Margins.all(10),
                                    RgbSpace.SRGB));
            ByteArrayOutputStream pdf = new ByteArrayOutputStream();
            ChartPdf.write(chart, pdf);
            double top = Double.POSITIVE_INFINITY;
            double bottom = 0;
            for (Patch patch : chart.sheets().get(0).patches()) {
                if (patch.area().height() > 40 && patch.area().height() > patch.area().width()) {
                    top = Math.min(top, patch.area().y());
                    bottom = Math.max(bottom, patch.area().bottom());
                }
            }
            return new Page(chart, RenderedSheet.of(pdf.toByteArray(), 1, 600), top, bottom);
        }
    }

    private static Print print(
            Page page,
            double grain,
            List<Printing.Line> lines,
            List<Printing.Band> bands,
            long seed)
            throws Exception {
        Surface surface = new Surface(0.10, 0.08, grain, 0.05, 0.15, 0.2, 0.3);
        PaperModel paper =
                PaperModel.faultless("Paper S (simulated)", new Lab(96, 0, -1), new Lab(6, 0, 0))
                        .withSurface(surface);
        Printing printing = new Printing(1, 1, 0.3, -0.2, lines, bands);
        return PrintRoom.print(page.rendered(), page.chart(), 1, paper, printing, seed);
    }

    private PrintSurface evaluated(Print print, Flatbed flatbed, long seed) throws Exception {
        Path scan = folder.resolve("scan.tif");
        PrintRoom.scan(print, flatbed, seed, scan);
        PrintSurface surface =
                Evaluator.evaluate(EvaluationRequest.of(scan)).evaluation().surface();
        assertNotNull(surface);
        return surface;
    }

    private static Flatbed turned(double samplesPerInch, double degrees) {
        return Flatbed.ordinary(samplesPerInch)
                .withPlacing(Placing.STRAIGHT.withDegrees(degrees).withWobble(0.04, 90));
    }

    @Test
    void linesAndBandsOfAPrinterSheet() throws Exception {
        Page page = Page.of("A5");
        double at = page.top() + 0.4 * (page.bottom() - page.top());
        Printing.Line line = new Printing.Line(Printing.Across.Y, at, 0.085, 0.2);
        Printing.Band band = new Printing.Band(Printing.Across.Y, 3.3, 0.3);
        Print print = print(page, 0.8, List.of(line), List.of(band), 5);
        PrintSurface found = evaluated(print, turned(600, 0.6), 5);
        assertNotNull(found.lines());
        assertNotNull(found.bands());
        assertEquals(1, found.lines().size(), found.lines().toString());
        PrintLine one = found.lines().get(0);
        assertEquals(Along.Y, one.line().along());
        assertEquals(print.pageY(at), one.line().positionMm(), 0.3);
        assertEquals(0.2, one.line().contrast(), 0.06);
        assertEquals("light", one.line().polarity());
        assertEquals(SurfaceCause.PRINT, one.cause());
        assertEquals(3.3, found.bands().get(0).band().periodMm(), 0.03 * 3.3);
        assertEquals(0.3, found.bands().get(0).band().amplitudeDeltaL(), 0.06);
        assertTrue(found.bands().get(0).band().visible());
        assertNotNull(found.grain());
        assertNotNull(found.grain().midtones());
        assertEquals(0.8, found.grain().midtones().graininess(), 0.08);

        PrintSurface coarse = evaluated(print, turned(300, 0.6), 5);
        assertNull(coarse.lines(), "not judged, never none found");
        assertNull(coarse.bands());
    }

    @Test
    void streaksOfTheScannerAreNotThePrints() throws Exception {
        Page page = Page.of("A5");
        Print print = print(page, 0.8, List.of(), List.of(), 6);
        Path scan = folder.resolve("scan.tif");
        PrintRoom.scan(print, turned(600, 0.6), 6, scan);
        int width = ScanFiles.open(scan).info().width();
        int height = ScanFiles.open(scan).info().height();
        byte[] bytes = Files.readAllBytes(scan);
        int start = bytes.length - 6 * width * height;
        ByteBuffer pixels = ByteBuffer.wrap(bytes);
        int column = width / 4;
        for (int y = 0; y < height; y++) {
            for (int sample = 3 * column; sample < 3 * (column + 2); sample++) {
                int at = start + 2 * (y * 3 * width + sample);
                int code = Short.toUnsignedInt(pixels.getShort(at));
                pixels.putShort(at, (short) (0.93 * code));
            }
        }
        Files.write(scan, bytes);
        PrintSurface found = Evaluator.evaluate(EvaluationRequest.of(scan)).evaluation().surface();
        assertNotNull(found);
        assertEquals(List.of(), found.lines());
        assertTrue(!found.scannerLines().isEmpty(), "the streak is told as the scanner's");
    }

    /** What the design promises, over many sheets. */
    @Test
    @EnabledIfSystemProperty(named = "surfaceSheets", matches = "[1-9]\\d*")
    void manySheets() throws Exception {
        Page page = Page.of("A4");
        Tally tally = new Tally();
        Random random = new Random(1);
        for (int seed = 0; seed < SHEETS; seed++) {
            List<Printing.Line> lines = new ArrayList<>();
            List<Printing.Band> bands = new ArrayList<>();
            if (seed % 2 == 1) {
                for (int k = 0; k < 3; k++) {
                    double share = (k + 0.1 + 0.8 * random.nextDouble()) / 3;
                    double at = page.top() + 2 + share * (page.bottom() - page.top() - 4);
                    double contrast = k % 2 == 0 ? 0.2 : -0.2;
                    lines.add(new Printing.Line(Printing.Across.Y, at, 0.085, contrast));
                }
                double period = 1 + 9 * random.nextDouble();
                bands.add(new Printing.Band(Printing.Across.Y, period, 0.3));
            }
            double grain = 0.5 + random.nextDouble();
            Print print = print(page, grain, lines, bands, seed);
            double degrees = 90 * random.nextInt(4) - 1 + 2 * random.nextDouble();
            tally.add(print, evaluated(print, turned(600, degrees), seed));
        }
        System.out.println(tally);
        assertTrue(tally.found >= 0.95 * tally.lines, tally.toString());
        assertTrue(tally.falseLines <= SHEETS / 20, tally.toString());
        assertTrue(tally.bandsFound >= 0.95 * tally.bands, tally.toString());
    }

    /** What was found on many sheets. */
    private static final class Tally {
        private int lines;
        private int found;
        private int falseLines;
        private int bands;
        private int bandsFound;
        private int otherBands;

        void add(Print print, PrintSurface surface) {
            assertNotNull(surface.lines());
            assertNotNull(surface.bands());
            List<PrintLine> left = new ArrayList<>(surface.lines());
            for (Printing.Line line : print.printing().lines()) {
                double at = print.pageY(line.atMm());
                boolean there =
                        left.removeIf(
                                l ->
                                        l.line().along() == Along.Y
                                                && Math.abs(l.line().positionMm() - at) <= 0.3
                                                && l.line().contrast() > 0 == line.contrast() > 0);
                lines++;
                found += there ? 1 : 0;
            }
            falseLines += left.size();
            List<PrintBand> others = new ArrayList<>(surface.bands());
            for (Printing.Band band : print.printing().bands()) {
                boolean there =
                        others.removeIf(
                                b -> Math.abs(b.band().periodMm() / band.periodMm() - 1) <= 0.03);
                bands++;
                bandsFound += there ? 1 : 0;
            }
            otherBands += others.size();
        }

        @Override
        public String toString() {
            return found
                    + " of "
                    + lines
                    + " lines, "
                    + falseLines
                    + " false, "
                    + bandsFound
                    + " of "
                    + bands
                    + " bands, "
                    + otherBands
                    + " others";
        }
    }
}
