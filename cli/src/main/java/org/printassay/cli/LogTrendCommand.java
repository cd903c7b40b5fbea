package org.printassay.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.printassay.compare.Figure;
import org.printassay.logbook.Logbook;
import org.printassay.logbook.LogbookJson;
import org.printassay.logbook.Opening;
import org.printassay.logbook.SeriesTrend;
import org.printassay.problem.Problem;
import org.printassay.report.TrendPage;
import org.printassay.report.TrendText;
import org.printassay.report.TrendWords;
import org.printassay.report.plot.ControlPlot;
import org.printassay.trend.Shift;
import org.printassay.trend.Trend;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Tells how a printer changes over time. */
@Command(
        name = "trend",
        mixinStandardHelpOptions = true,
        description =
                "Tells how one printer, paper and route change over time: limits, jumps, drifts.",
        footer = {
            "",
            "Example:",
            "  printassay log trend white.lab.b --paper \"Paper A\" --out trend"
        })
final class LogTrendCommand implements Callable<Integer> {
    @Parameters(
            arity = "0..*",
            paramLabel = "FIGURE",
            description =
                    "What to follow, by its key in evaluation.json: white.lab.l,"
                            + " shadows.firstVisible, ... or all (default: the usual ones). One alone"
                            + " is drawn too.")
    private List<String> names = new ArrayList<>();

    @Mixin private LogSelection selection = new LogSelection();

    @Option(
            names = "--last",
            paramLabel = "N",
            defaultValue = "100",
            description =
                    "Draw the newest so many prints, at most 200 (default: ${DEFAULT-VALUE}). Limits"
                            + " always come from the whole series.")
    private int last = 100;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Write trend.html with plots, and trend.json, here.")
    private @Nullable Path out;

    @Mixin private LogOptions options = new LogOptions();

    @Override
    public Integer call() throws Exception {
        if (last < 1 || last > ControlPlot.MOST) {
            throw Problem.usage("--last must be 1 to " + ControlPlot.MOST + ", got " + last + ".");
        }
        List<Figure> figures = figures();
        SeriesTrend trend;
        try (Logbook logbook = options.open(Opening.READ)) {
            trend = SeriesTrend.of(logbook, selection.selection(), figures);
            if (trend.trends().isEmpty()) {
                throw Problem.input(
                        logbook.place().shown(), "none of these prints has such a figure.");
            }
        }
        if (out != null) {
            write(trend, out);
        }
        if (options.json()) {
            options.print(LogbookJson.trend(trend));
        } else {
            print(trend);
        }
        return 0;
    }

    private List<Figure> figures() throws Problem {
        if (names.isEmpty()) {
            return SeriesTrend.USUAL;
        }
        if (names.equals(List.of("all"))) {
            return List.of(Figure.values());
        }
        List<Figure> figures = new ArrayList<>();
        for (String name : names) {
            figures.add(
                    Figure.ofKey(name)
                            .orElseThrow(
                                    () ->
                                            Problem.usage(
                                                    "There is no figure "
                                                            + PlainText.line(name)
                                                            + ". There are: all, "
                                                            + known()
                                                            + ".")));
        }
        return figures.stream().distinct().toList();
    }

    private static String known() {
        return Arrays.stream(Figure.values()).map(Figure::key).collect(Collectors.joining(", "));
    }

    private void write(SeriesTrend trend, Path to) throws Problem {
        new OutputFolder(to, List.of())
                .write(
                        part -> {
                            Files.writeString(
                                    part.resolve("trend.json"), LogbookJson.trend(trend) + "\n");
                            Files.writeString(
                                    part.resolve("trend.html"),
                                    TrendPage.write(
                                            trend.series().shown(),
                                            about(trend),
                                            trend.notes(),
                                            trend.trends(),
                                            last));
                        });
    }

    private static String about(SeriesTrend trend) {
        int prints = trend.entries().size();
        return prints
                + (prints == 1 ? " print" : " prints")
                + ", "
                + trend.entries().get(0).readAt().toString().substring(0, 10)
                + " to "
                + trend.entries().get(prints - 1).readAt().toString().substring(0, 10)
                + ", read as "
                + trend.manner();
    }

    private void print(SeriesTrend series) {
        options.say(series.series().shown() + ": " + about(series));
        series.notes().forEach(note -> options.say("Note: " + note));
        for (Trend trend : series.trends()) {
            options.say("- " + trend.quantity().label() + ": " + TrendWords.state(trend));
        }
        if (series.trends().size() == 1) {
            Trend only = series.trends().get(0);
            for (Shift change : only.changes()) {
                options.say("  " + TrendWords.change(only, change));
            }
            TrendText.plot(only).forEach(line -> options.out().println(line));
            options.say(TrendText.LEGEND);
        }
        String chance = TrendWords.chance(series.trends());
        if (!chance.isEmpty()) {
            options.say(chance);
        }
        if (out != null) {
            options.say("Page: " + out.resolve("trend.html"));
        }
    }
}
