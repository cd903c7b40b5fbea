package org.printassay.benchmark;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import org.printassay.chart.Chart;
import org.printassay.chart.Charts;
import org.printassay.colour.RgbSpace;
import org.printassay.demo.DemoScenario;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.Placing;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.RenderedSheet;
import org.printassay.pdf.ChartPdf;
import org.printassay.problem.Problem;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;

/** Makes the scans that benchmarks read: an A4 sheet, 16 bit, with the usual faults; simulated. */
public final class SimulatedScans {
    private SimulatedScans() {}

    /** Arguments: samples an inch, and the TIFF file to write. */
    public static void main(String[] arguments) throws Exception {
        write(Double.parseDouble(arguments[0]), Path.of(arguments[1]));
    }

    static void write(double samplesPerInch, Path to) throws Problem, IOException {
        Chart chart =
                Charts.create(Recipe.paper(PageSize.parse("A4"), Margins.all(10), RgbSpace.SRGB));
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        ChartPdf.write(chart, pdf);
        RenderedSheet page =
                RenderedSheet.of(pdf.toByteArray(), 1, RenderedSheet.USUAL_DOTS_PER_INCH);
        DemoScenario scenario = DemoScenario.smoothBaryta();
        Print print = PrintRoom.print(page, chart, 1, scenario.paper(), scenario.printing(), 5);
        Flatbed flatbed =
                Flatbed.ordinary(samplesPerInch)
                        .withPlacing(Placing.STRAIGHT.withDegrees(0.7).withBorder(2));
        PrintRoom.scan(print, flatbed, 5, to);
    }
}
