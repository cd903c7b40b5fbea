package org.printassay.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.printassay.logbook.Entry;
import org.printassay.logbook.Logbook;
import org.printassay.logbook.LogbookJson;
import org.printassay.logbook.Opening;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Removes entries. */
@Command(
        name = "remove",
        mixinStandardHelpOptions = true,
        description =
                "Removes entries, all that are named or none. They cannot be brought back but from"
                        + " an export or their evaluation.json.",
        footer = {"", "Example:", "  printassay log remove 12"})
final class LogRemoveCommand implements Callable<Integer> {
    @Parameters(
            arity = "1..*",
            paramLabel = "NUMBER",
            description = "Numbers of entries, as log list tells them.")
    private List<Long> ids = new ArrayList<>();

    @Mixin private LogOptions options = new LogOptions();

    @Override
    public Integer call() throws Exception {
        try (Logbook logbook = options.open(Opening.CHANGE)) {
            List<Entry> gone = logbook.remove(ids);
            if (options.json()) {
                options.print(LogbookJson.entries(logbook.place(), "remove", gone));
            } else {
                gone.forEach(entry -> options.say("removed: " + LogOptions.line(entry)));
            }
        }
        return 0;
    }
}
