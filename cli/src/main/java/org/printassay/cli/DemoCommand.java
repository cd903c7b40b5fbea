package org.printassay.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.printassay.chart.Chart;
import org.printassay.chart.Charts;
import org.printassay.colour.RgbSpace;
import org.printassay.compare.Comparison;
import org.printassay.compare.KnownSpread;
import org.printassay.compare.NamedPrint;
import org.printassay.demo.DemoScenario;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.RenderedSheet;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.evaluation.Evaluator;
import org.printassay.evaluation.PrintDetails;
import org.printassay.problem.Problem;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.report.ComparisonPage;
import org.printassay.report.JsonText;
import org.printassay.report.Reports;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The whole job on the simulated print room. */
@Command(
        name = "demo",
        mixinStandardHelpOptions = true,
        description = {
            "Does the whole job on an invented, simulated print room: makes the chart, prints it on"
                    + " three papers, scans the prints and evaluates them."
        },
        footer = {"", "Example:", "  printassay demo --out demo", "Then open demo/index.html."})
final class DemoCommand implements Callable<Integer> {
    private static final int DPI = 300;
    private static final String SCANNER = "Flatbed 1 (simulated)";

    @Option(
            names = "--out",
            paramLabel = "DIR",
            defaultValue = "demo",
            description = "Where to write (default: ${DEFAULT-VALUE}).")
    private Path out = Path.of("demo");

    @Option(names = "--json", description = "Print the result as JSON.")
    private boolean json;

    @Spec
    private @SuppressWarnings("NullAway.Init") CommandSpec spec;

    @Override
    public Integer call() throws Exception {
        OutputFolder folder = new OutputFolder(out, List.of());
        if (!isFree(folder.path())) {
            throw Problem.output(
                    folder.path().toString(),
                    "is there already and holds no demo. Name another folder with --out.");
        }
        folder.refuseUnwritable();
        folder.write(this::run);
        if (json) {
            spec.commandLine().getOut().print(summary(folder.path()));
            spec.commandLine().getOut().flush();
        } else {
            spec.commandLine()
                    .getOut()
                    .println(
                            "Three papers, simulated: open "
                                    + PlainText.path(folder.path().resolve("index.html")));
        }
        return 0;
    }

    private static String summary(Path folder) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("schema", "printassay/demo-made/1");
        root.put("simulated", true);
        root.put("folder", folder.toString());
        root.put("page", "index.html");
        ArrayNode prints = root.putArray("prints");
        for (DemoScenario scenario : DemoScenario.threePapers()) {
            prints.addObject()
                    .put("paper", scenario.paper().name())
                    .put("printer", scenario.printer())
                    .put("scan", scenario.key() + "/scan.tif")
                    .put("measurement", scenario.key() + "/measurement.txt")
                    .put("evaluation", scenario.key() + "/evaluation.json")
                    .put("report", scenario.key() + "/report.html");
        }
        return JsonText.write(root);
    }

    /** Whether a demo may be written here: nothing is there, or an earlier demo. */
    private static boolean isFree(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return !Files.exists(folder);
        }
        try (Stream<Path> inside = Files.list(folder)) {
            boolean demo =
                    Files.exists(folder.resolve("index.html"))
                            && Files.exists(folder.resolve("chart/chart.json"));
            return demo || inside.findAny().isEmpty();
        }
    }

    private void run(Path folder) throws IOException, Problem {
        Chart chart =
                Charts.create(Recipe.paper(PageSize.parse("A4"), Margins.all(10), RgbSpace.SRGB));
        Path charts = Files.createDirectory(folder.resolve("chart"));
        ChartSet.write(chart, DPI, false, Optional.empty(), charts);
        RenderedSheet rendered = PrintRoom.render(charts.resolve("chart.pdf"), 1);
        List<NamedPrint> prints = new ArrayList<>();
        Map<String, String> reports = new LinkedHashMap<>();
        for (DemoScenario scenario : DemoScenario.threePapers()) {
            spec.commandLine()
                    .getErr()
                    .println(scenario.paper().name() + ": printing, scanning, reading");
            Path place = Files.createDirectory(folder.resolve(scenario.key()));
            Print print =
                    PrintRoom.print(
                            rendered,
                            chart,
                            1,
                            scenario.paper(),
                            scenario.printing(),
                            scenario.seed());
            Path scan = place.resolve("scan.tif");
            PrintRoom.scan(print, scenario.flatbed(), scenario.seed(), scan);
            PrintRoom.measure(print, scenario.seed(), place.resolve("measurement.txt"));
            Evaluator.Result result =
                    Evaluator.evaluate(
                            new EvaluationRequest(
                                    List.of(scan),
                                    Optional.empty(),
                                    Optional.empty(),
                                    new PrintDetails(
                                            scenario.paper().name(),
                                            scenario.printer(),
                                            scenario.route(),
                                            scenario.driedHours(),
                                            SCANNER,
                                            null),
                                    EvaluationRequest.JUST_VISIBLE,
                                    RgbSpace.SRGB));
            Reports.writeAll(result.evaluation(), Previews.of(result), true, place);
            prints.add(new NamedPrint(scenario.key(), result.evaluation()));
            reports.put(scenario.paper().name(), scenario.key() + "/report.html");
        }
        Comparison comparison = Comparison.of(prints, KnownSpread.NONE, "");
        Files.writeString(
                folder.resolve("index.html"),
                ComparisonPage.write(
                        comparison, new ComparisonPage.Showing(Optional.empty(), reports, true)));
    }
}
