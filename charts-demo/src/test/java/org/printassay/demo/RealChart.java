package org.printassay.demo;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.printassay.chart.Chart;
import org.printassay.chart.Charts;
import org.printassay.colour.RgbSpace;
import org.printassay.demo.print.RenderedSheet;
import org.printassay.pdf.ChartPdf;
import org.printassay.problem.Problem;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;

/** One real chart with its PDF, rendered once for all tests. */
public final class RealChart {
    /** A4, sRGB. */
    public static final Chart CHART = chart(RgbSpace.SRGB);

    /** Its first page. */
    public static final RenderedSheet RENDERED = rendered(CHART);

    private RealChart() {}

    static Chart chart(RgbSpace space) {
        try {
            return Charts.create(
                    new Recipe(
                            Recipe.Kind.PAPER,
                            new PageSize("A4", 210, 297),
                            Margins.all(12),
                            space,
                            Recipe.Kind.PAPER.currentLayout()));
        } catch (Problem e) {
            throw new IllegalStateException(e);
        }
    }

    static RenderedSheet rendered(Chart chart) {
        try {
            ByteArrayOutputStream pdf = new ByteArrayOutputStream();
            ChartPdf.write(chart, pdf);
            return RenderedSheet.of(pdf.toByteArray(), 1, RenderedSheet.USUAL_DOTS_PER_INCH);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (Problem e) {
            throw new IllegalStateException(e);
        }
    }
}
