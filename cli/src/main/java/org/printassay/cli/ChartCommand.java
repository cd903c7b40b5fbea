package org.printassay.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.printassay.chart.Chart;
import org.printassay.chart.ChartFile;
import org.printassay.chart.Charts;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Sheet;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Makes a chart to print. */
@Command(
        name = "chart",
        mixinStandardHelpOptions = true,
        description = "Makes a chart to print by the route your pictures take.",
        footer = {
            "",
            "Example:",
            "  printassay chart --page Letter --margin-mm 12 --out chart",
            "Then open how-to-print-and-scan.html in that folder."
        })
final class ChartCommand implements Callable<Integer> {
    private static final int MOST_MEGAPIXELS = 130;

    @Option(
            names = "--recipe",
            paramLabel = "NAME-OR-FILE",
            defaultValue = "paper",
            description =
                    "What the chart is for: paper (tone, colours, neutrality), short (few large"
                            + " patches, from 4 x 6 in), printer (lines, bands, evenness), or a"
                            + " recipe file (default: ${DEFAULT-VALUE}).")
    private String recipeName = "paper";

    @Option(
            names = "--page",
            paramLabel = "SIZE",
            defaultValue = "A4",
            description =
                    "A6 to A2, Letter, Legal, Tabloid, 13x19in, WxHmm, WxHin, or the width of a"
                            + " roll, 610mm or 24in (default:"
                            + " ${DEFAULT-VALUE}).")
    private String page = "A4";

    @Option(
            names = "--margin-mm",
            paramLabel = "MM",
            description =
                    "Unprinted margin: one value, or top,right,bottom,left (default: 10; 5 for the"
                            + " short sheet).")
    private @Nullable String margins;

    @Option(
            names = "--space",
            paramLabel = "NAME",
            defaultValue = "srgb",
            description =
                    "RGB encoding: srgb, adobe-rgb, display-p3, romm (default: ${DEFAULT-VALUE}).")
    private String space = "srgb";

    @Option(
            names = "--dpi",
            paramLabel = "N",
            defaultValue = "300",
            description = "Samples an inch of the TIFF (default: ${DEFAULT-VALUE}).")
    private int dpi = 300;

    @Option(
            names = "--prints",
            paramLabel = "N",
            defaultValue = "1",
            description =
                    "How many prints you will make: each gets a number in its sheet code, and a"
                            + " folder of its own when more than one (default: ${DEFAULT-VALUE}).")
    private int prints = 1;

    @Option(
            names = "--colours-from",
            paramLabel = "PICTURE",
            description =
                    "A sheet of greys and of the colours that a picture has most of; with a recipe"
                            + " file, as one more section of it.")
    private @Nullable Path picture;

    @Option(
            names = "--route",
            paramLabel = "TEXT",
            description =
                    "How it will be printed: program, profile, intent, driver settings; kept in"
                            + " chart.json for evaluate.")
    private @Nullable String route;

    @Option(
            names = "--preview",
            description = "Write a picture of each sheet for the screen too, preview-1.png.")
    private boolean preview;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            defaultValue = "chart",
            description = "Where to write (default: ${DEFAULT-VALUE}).")
    private Path out = Path.of("chart");

    @Option(names = "--force", description = "Write over another chart's files.")
    private boolean force;

    @Option(names = "--json", description = "Print the result as JSON.")
    private boolean json;

    @Spec
    private @SuppressWarnings("NullAway.Init") CommandSpec spec;

    @Override
    public Integer call() throws Exception {
        RgbSpace encoding = Spaces.parse(space);
        if (dpi < 72 || dpi > 2400) {
            throw Problem.usage("--dpi must be 72 to 2400, got " + dpi + ".");
        }
        if (prints < 1 || prints > ChartSet.MOST_PRINTS) {
            throw Problem.usage(
                    "--prints must be 1 to " + ChartSet.MOST_PRINTS + ", got " + prints + ".");
        }
        WantedRecipe wanted =
                WantedRecipe.of(
                        recipeName,
                        page,
                        spec.commandLine().getParseResult().hasMatchedOption("--page"),
                        Optional.ofNullable(margins),
                        encoding,
                        spec.commandLine().getParseResult().hasMatchedOption("--space"),
                        Optional.ofNullable(picture));
        Recipe recipe = wanted.recipe();
        Chart chart = wanted.chart();
        for (String note : wanted.notes()) {
            spec.commandLine().getErr().println(PlainText.line(note));
        }
        refuseTooLarge(chart);
        OutputFolder folder = new OutputFolder(out, List.of());
        refuseOtherChart(folder.path(), chart);
        folder.refuseUnwritable();
        folder.write(
                there -> ChartSet.others(there, chart),
                part -> {
                    for (int print = 1; print <= prints; print++) {
                        Path target =
                                prints == 1
                                        ? part
                                        : Files.createDirectory(ChartSet.print(part, print));
                        ChartSet.write(
                                print == 1 ? chart : Charts.create(recipe, print),
                                dpi,
                                preview,
                                Optional.ofNullable(route),
                                target);
                    }
                });
        if (json) {
            spec.commandLine().getOut().println(summary(chart, wanted.notes(), folder.path()));
        } else {
            spec.commandLine()
                    .getOut()
                    .println(
                            "Chart "
                                    + chart.id()
                                    + ", "
                                    + count(chart.sheets().size(), "sheet")
                                    + (prints == 1 ? "" : ", " + prints + " prints")
                                    + ": "
                                    + PlainText.path(folder.path()));
            spec.commandLine()
                    .getOut()
                    .println("Open how-to-print-and-scan.html first: it tells how to print it.");
        }
        return 0;
    }

    /** A TIFF is drawn in memory. */
    private void refuseTooLarge(Chart chart) throws Problem {
        for (Sheet sheet : chart.sheets()) {
            RectMm area = sheet.printable();
            double megapixels = area.width() * area.height() * dpi * dpi / (25.4 * 25.4) / 1e6;
            if (megapixels > MOST_MEGAPIXELS) {
                throw Problem.usage(
                        String.format(
                                Locale.ROOT,
                                "--dpi %d makes a TIFF of %.0f million pixels on this page; %d million"
                                        + " are the most. Name a lower --dpi.",
                                dpi,
                                megapixels,
                                MOST_MEGAPIXELS));
            }
        }
    }

    private static String count(int n, String what) {
        return n + " " + what + (n == 1 ? "" : "s");
    }

    /** A folder that holds another chart is somebody's: it is not written over unasked. */
    private void refuseOtherChart(Path folder, Chart chart) throws Problem {
        if (force) {
            return;
        }
        for (Path there : ChartSet.chartFiles(folder)) {
            String other;
            try {
                other = "chart " + ChartFile.read(there).id();
            } catch (Problem e) {
                other = "something else";
            }
            if (!other.equals("chart " + chart.id())) {
                throw Problem.output(
                        folder.toString(),
                        "holds "
                                + other
                                + ". Name another folder with --out, or write over it with"
                                + " --force.");
            }
        }
    }

    private String summary(Chart chart, List<String> notes, Path folder) throws Exception {
        ObjectMapper mapper = new ObjectMapper();
        ObjectNode root = mapper.createObjectNode();
        root.put("schema", "printassay/chart-made/1");
        root.put("id", chart.id());
        root.put("sheets", chart.sheets().size());
        root.put("prints", prints);
        root.put("folder", folder.toString());
        ArrayNode told = root.putArray("notes");
        notes.forEach(told::add);
        ArrayNode files = root.putArray("files");
        try (Stream<Path> walk = Files.walk(folder)) {
            walk.filter(Files::isRegularFile)
                    .map(file -> folder.relativize(file).toString().replace('\\', '/'))
                    .sorted()
                    .forEach(files::add);
        }
        return mapper.writerWithDefaultPrettyPrinter().writeValueAsString(root);
    }
}
