package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.Placing;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.Printing;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.evaluation.Evaluator;
import org.printassay.evaluation.PrintBand;
import org.printassay.evaluation.PrintLine;
import org.printassay.evaluation.PrintSurface;
import org.printassay.evaluation.SurfaceCause;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.surface.Along;

/**
 * Lines and bands on simulated scans of the printer sheet. A longer run, A4 sheets in all turns:
 * {@code -DsurfaceSheets=20}.
 */
class SurfaceTest {
    private static final int SHEETS = Integer.getInteger("surfaceSheets", 0);

    @TempDir Path folder;

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
        PrinterSheet page = PrinterSheet.of("A5");
        double at = page.top() + 0.4 * (page.bottom() - page.top());
        Printing.Line line = new Printing.Line(Printing.Across.Y, at, 0.085, 0.2);
        Printing.Band band = new Printing.Band(Printing.Across.Y, 3.3, 0.3);
        Print print = page.print(0.8, List.of(line), List.of(band), 5);
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

    /**
     * Strong lines are told as lines and make the print no grainier; a repeat that was enlarged
     * tells nothing of either, and takes nothing away.
     */
    @Test
    void strongLinesAreNoGrainAndAnEnlargedRepeatTakesNothingAway() throws Exception {
        PrinterSheet page = PrinterSheet.of("A5");
        List<Printing.Line> lines = new ArrayList<>();
        for (double share : new double[] {0.44, 0.48, 0.53, 0.57}) {
            double at = page.top() + share * (page.bottom() - page.top());
            lines.add(new Printing.Line(Printing.Across.Y, at, 0.085, 1.5));
        }
        Print print = page.print(0.8, lines, List.of(), 6);
        Path fine = folder.resolve("fine.tif");
        PrintRoom.scan(print, turned(600, 0.6), 6, fine);
        Evaluation alone = Evaluator.evaluate(EvaluationRequest.of(fine)).evaluation();
        PrintSurface surface = alone.surface();
        assertNotNull(surface);
        assertNotNull(surface.lines());
        assertEquals(4, surface.lines().size(), surface.lines().toString());
        assertNotNull(surface.grain());
        assertNotNull(surface.grain().midtones());
        assertEquals(0.8, surface.grain().midtones().graininess(), 0.08);

        Path coarse = folder.resolve("coarse.tif");
        PrintRoom.scan(print, turned(300, 0.3), 7, coarse);
        Path enlarged = folder.resolve("enlarged.png");
        enlarge(coarse, enlarged);
        Evaluation both = Evaluator.evaluate(EvaluationRequest.of(fine, enlarged)).evaluation();
        List<WarningCode> told = both.warnings().stream().map(Warning::code).toList();
        assertTrue(told.contains(WarningCode.UPSAMPLED), both.warnings().toString());
        assertTrue(told.contains(WarningCode.RESOLUTION_LOW), both.warnings().toString());
        assertFalse(told.contains(WarningCode.LINES_NOT_JUDGED), both.warnings().toString());
        PrintSurface again = both.surface();
        assertNotNull(again);
        assertNotNull(again.lines());
        assertEquals(surface.lines().size(), again.lines().size());
        assertNotNull(again.grain());
    }

    private static void enlarge(Path from, Path to) throws IOException {
        BufferedImage small = ImageIO.read(from.toFile());
        BufferedImage large =
                new BufferedImage(
                        2 * small.getWidth(), 2 * small.getHeight(), BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = large.createGraphics();
        graphics.setRenderingHint(
                RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        graphics.drawImage(small, 0, 0, large.getWidth(), large.getHeight(), null);
        graphics.dispose();
        ImageIO.write(large, "png", to.toFile());
    }

    /** Fewer than one false line in 20 clean sheets, over many. */
    @Test
    @EnabledIfSystemProperty(named = "surfaceSheets", matches = "[1-9]\\d*")
    void cleanSheets() throws Exception {
        Tally clean = many(false, new Random(1));
        assertTrue(20 * clean.falseLines < SHEETS, clean.toString());
    }

    /** Of three lines and a band on every sheet 95 % are found, over many. */
    @Test
    @EnabledIfSystemProperty(named = "surfaceSheets", matches = "[1-9]\\d*")
    void markedSheets() throws Exception {
        Tally marked = many(true, new Random(2));
        assertTrue(20 * marked.falseLines < SHEETS, marked.toString());
        assertTrue(marked.found >= 0.95 * marked.lines, marked.toString());
        assertTrue(marked.bandsFound >= 0.95 * marked.bands, marked.toString());
    }

    private Tally many(boolean marked, Random random) throws Exception {
        PrinterSheet page = PrinterSheet.of("A4");
        Tally tally = new Tally();
        for (int seed = 0; seed < SHEETS; seed++) {
            List<Printing.Line> lines = new ArrayList<>();
            List<Printing.Band> bands = new ArrayList<>();
            if (marked) {
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
            Print print = page.print(grain, lines, bands, seed);
            double degrees = 90 * random.nextInt(4) - 1 + 2 * random.nextDouble();
            tally.add(print, evaluated(print, turned(600, degrees), seed));
            System.out.println(
                    (marked ? "Marked" : "Clean") + " sheet " + (seed + 1) + ": " + tally);
        }
        return tally;
    }

    /** What was found on many sheets. */
    private static final class Tally {
        private int lines;
        private int found;
        private int falseLines;
        private int bands;
        private int bandsFound;
        private int otherBands;
        private double farthest;

        void add(Print print, PrintSurface surface) {
            assertNotNull(surface.lines());
            assertNotNull(surface.bands());
            List<PrintLine> left = new ArrayList<>(surface.lines());
            for (Printing.Line line : print.printing().lines()) {
                double at = print.pageY(line.atMm());
                List<PrintLine> there =
                        left.stream()
                                .filter(l -> l.line().along() == Along.Y)
                                .filter(l -> Math.abs(l.line().positionMm() - at) <= 0.3)
                                .filter(l -> l.line().contrast() > 0 == line.contrast() > 0)
                                .toList();
                left.removeAll(there);
                lines++;
                found += there.isEmpty() ? 0 : 1;
                for (PrintLine one : there) {
                    farthest = Math.max(farthest, Math.abs(one.line().positionMm() - at));
                }
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
                    + " lines, farthest "
                    + farthest
                    + " mm, "
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
