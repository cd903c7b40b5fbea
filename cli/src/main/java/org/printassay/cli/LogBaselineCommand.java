package org.printassay.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.printassay.logbook.Entry;
import org.printassay.logbook.Logbook;
import org.printassay.logbook.LogbookJson;
import org.printassay.logbook.Opening;
import org.printassay.logbook.Selection;
import org.printassay.logbook.Series;
import org.printassay.problem.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Names the state that a printer is held to. */
@Command(
        name = "baseline",
        mixinStandardHelpOptions = true,
        description = {
            "Names the prints that show a printer as it should be; each printer, paper and route has"
                    + " its own, and check without --baseline holds prints against it. Without"
                    + " numbers: shows them."
        },
        footer = {"", "Example:", "  printassay log baseline 3 4 5 6 7 8 9 10"})
final class LogBaselineCommand implements Callable<Integer> {
    @Parameters(
            arity = "0..*",
            paramLabel = "NUMBER",
            description = "Numbers of entries of one printer, paper, route and chart.")
    private List<Long> ids = new ArrayList<>();

    @Option(
            names = "--clear",
            description =
                    "Take the baseline of a printer, paper and route away; with --read-as, that of"
                            + " one way of reading.")
    private boolean clear;

    @Mixin private LogSelection selection = new LogSelection();
    @Mixin private LogOptions options = new LogOptions();

    @Override
    public Integer call() throws Exception {
        if (clear && !ids.isEmpty()) {
            throw Problem.usage(
                    "--clear takes no numbers; choose with --printer, --paper, --route.");
        }
        if (!ids.isEmpty() && !selection.selection().equals(Selection.ALL)) {
            throw Problem.usage(
                    "Numbers name the prints: they do not go with options that select.");
        }
        boolean changes = clear || !ids.isEmpty();
        try (Logbook logbook = options.open(changes ? Opening.CHANGE : Opening.READ)) {
            List<Entry> entries =
                    clear ? cleared(logbook) : ids.isEmpty() ? shown(logbook) : set(logbook);
            if (options.json()) {
                String done = clear ? "baseline-cleared" : "baseline";
                options.print(LogbookJson.entries(logbook.place(), done, entries));
                return 0;
            }
            entries.forEach(
                    entry -> options.say((clear ? "no longer: " : "") + LogOptions.line(entry)));
            if (entries.isEmpty()) {
                options.say("There is no baseline; trends take the first 20 prints for it.");
            }
        }
        return 0;
    }

    private List<Entry> set(Logbook logbook) throws Problem {
        return logbook.setBaseline(ids);
    }

    private List<Entry> shown(Logbook logbook) throws Problem {
        return logbook.entries(selection.selection()).stream().filter(Entry::baseline).toList();
    }

    private List<Entry> cleared(Logbook logbook) throws Problem {
        List<Entry> there = shown(logbook);
        List<Series> series = there.stream().map(Entry::series).distinct().toList();
        if (series.size() > 1) {
            throw Problem.usage(
                    "There are baselines of "
                            + series.size()
                            + " series. Choose one with --printer, --paper, --route.");
        }
        return logbook.clearBaseline(there.stream().map(Entry::id).toList());
    }
}
