package org.printassay.acceptance;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.printassay.chart.Chart;
import org.printassay.chart.Charts;
import org.printassay.colour.RgbSpace;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.Printing;
import org.printassay.demo.print.RenderedSheet;
import org.printassay.pdf.ChartPdf;
import org.printassay.problem.Problem;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;

/**
 * A chart, and its first sheet rendered once as printers get it, to be printed as often as wanted
 * (simulated).
 */
record RenderedChart(Chart chart, RenderedSheet rendered) {
    /** A new chart of a kind on a page, for sRGB. */
    static RenderedChart of(Recipe.Kind kind, String page, double marginMm) throws Exception {
        return of(
                Charts.create(
                        Recipe.of(
                                kind, PageSize.parse(page), Margins.all(marginMm), RgbSpace.SRGB)));
    }

    static RenderedChart of(Chart chart) throws IOException, Problem {
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        ChartPdf.write(chart, pdf);
        return new RenderedChart(
                chart, RenderedSheet.of(pdf.toByteArray(), 1, RenderedSheet.USUAL_DOTS_PER_INCH));
    }

    Print print(PaperModel paper, Printing printing, long seed) throws Problem {
        return PrintRoom.print(rendered, chart, 1, paper, printing, seed);
    }
}
