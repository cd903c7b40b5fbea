package org.printassay.benchmark;

import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
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
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;

/** Makes a folder of scans of as many prints on the three papers of the demo; simulated. */
public final class FolderOfScans {
    private FolderOfScans() {}

    /** Arguments: how many, samples an inch, and the folder to write to. */
    public static void main(String[] arguments) throws Exception {
        int count = Integer.parseInt(arguments[0]);
        double samplesPerInch = Double.parseDouble(arguments[1]);
        Path folder = Files.createDirectories(Path.of(arguments[2]));
        Chart chart =
                Charts.create(Recipe.paper(PageSize.parse("A4"), Margins.all(10), RgbSpace.SRGB));
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        ChartPdf.write(chart, pdf);
        RenderedSheet page =
                RenderedSheet.of(pdf.toByteArray(), 1, RenderedSheet.USUAL_DOTS_PER_INCH);
        List<DemoScenario> papers = DemoScenario.threePapers();
        for (int i = 1; i <= count; i++) {
            DemoScenario scenario = papers.get(i % papers.size());
            Print print = PrintRoom.print(page, chart, 1, scenario.paper(), scenario.printing(), i);
            Flatbed flatbed =
                    Flatbed.ordinary(samplesPerInch)
                            .withPlacing(Placing.STRAIGHT.withDegrees(0.7).withBorder(2));
            String name = String.format(Locale.ROOT, "scan-%03d.tif", i);
            PrintRoom.scan(print, flatbed, i, folder.resolve(name));
        }
    }
}
