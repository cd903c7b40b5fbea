package org.printassay.acceptance;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.printassay.colour.Lab;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.paper.Surface;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.Printing;
import org.printassay.problem.Problem;
import org.printassay.recipe.Recipe;
import org.printassay.scan.ScanFiles;
import org.printassay.sheet.Patch;

/**
 * A printer sheet, rendered once, and what scanners do to it; simulated.
 *
 * @param page the sheet
 * @param top of the tints along the page, millimetres
 * @param bottom of them
 */
record PrinterSheet(RenderedChart page, double top, double bottom) {
    static PrinterSheet of(String size) throws Exception {
        RenderedChart page = RenderedChart.of(Recipe.Kind.PRINTER, size, 10);
        double top = Double.POSITIVE_INFINITY;
        double bottom = 0;
        for (Patch patch : page.chart().sheets().get(0).patches()) {
            if (patch.area().height() > 40 && patch.area().height() > patch.area().width()) {
                top = Math.min(top, patch.area().y());
                bottom = Math.max(bottom, patch.area().bottom());
            }
        }
        return new PrinterSheet(page, top, bottom);
    }

    Print print(double grain, List<Printing.Line> lines, List<Printing.Band> bands, long seed)
            throws Problem {
        Surface surface = new Surface(0.10, 0.08, grain, 0.05, 0.15, 0.2, 0.3);
        PaperModel paper =
                PaperModel.faultless("Paper S (simulated)", new Lab(96, 0, -1), new Lab(6, 0, 0))
                        .withSurface(surface);
        Printing printing = new Printing(1, 1, 0.3, -0.2, lines, bands);
        return page.print(paper, printing, seed);
    }

    /**
     * Draws what a dirty or badly adjusted sensor element leaves: two columns of a 16 bit TIFF
     * whose codes are multiplied, as far as codes go.
     *
     * @param share where, of the scan's width
     */
    static void streak(Path scan, double share, double factor) throws IOException, Problem {
        int width = ScanFiles.open(scan).info().width();
        int height = ScanFiles.open(scan).info().height();
        byte[] bytes = Files.readAllBytes(scan);
        int start = bytes.length - 6 * width * height;
        ByteBuffer pixels = ByteBuffer.wrap(bytes);
        int column = (int) (share * width);
        for (int y = 0; y < height; y++) {
            for (int sample = 3 * column; sample < 3 * (column + 2); sample++) {
                int at = start + 2 * (y * 3 * width + sample);
                int code = Short.toUnsignedInt(pixels.getShort(at));
                pixels.putShort(at, (short) Math.min(65535, Math.round(factor * code)));
            }
        }
        Files.write(scan, bytes);
    }
}
