package org.printassay.cli;

import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.printassay.logbook.Entry;
import org.printassay.logbook.Logbook;
import org.printassay.logbook.LogbookJson;
import org.printassay.logbook.Opening;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Lists what the logbook holds. */
@Command(
        name = "list",
        mixinStandardHelpOptions = true,
        description = "Lists entries, oldest first.",
        footer = {"", "Example:", "  printassay log list --paper \"Paper A\" --since 2026-01-01"})
final class LogListCommand implements Callable<Integer> {
    @Mixin private LogSelection selection = new LogSelection();

    @Option(
            names = "--since",
            paramLabel = "TIME",
            description = "Prints read then or later: a day or a moment.")
    private @Nullable String since;

    @Option(
            names = "--last",
            paramLabel = "N",
            defaultValue = "50",
            description = "The newest so many, 0 for all (default: ${DEFAULT-VALUE}).")
    private int last = 50;

    @Mixin private LogOptions options = new LogOptions();

    @Override
    public Integer call() throws Exception {
        try (Logbook logbook = options.open(Opening.READ)) {
            List<Entry> entries = logbook.entries(selection.selection(since, last));
            if (options.json()) {
                options.print(LogbookJson.entries(logbook.place(), "list", entries));
                return 0;
            }
            entries.forEach(entry -> options.say(LogOptions.line(entry)));
            if (entries.isEmpty()) {
                options.say("No entry fits.");
            } else if (entries.size() == last) {
                options.say("The newest " + last + "; --last 0 lists all.");
            }
        }
        return 0;
    }
}
