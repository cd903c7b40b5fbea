package org.printassay.cli;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import org.printassay.logbook.Added;
import org.printassay.logbook.Logbook;
import org.printassay.logbook.LogbookImport;
import org.printassay.logbook.LogbookJson;
import org.printassay.logbook.Opening;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Takes an export into the logbook. */
@Command(
        name = "import",
        mixinStandardHelpOptions = true,
        description =
                "Adds the entries of an export. What is there already stays as it is; a damaged file"
                        + " changes nothing.",
        footer = {"", "Example:", "  printassay log import logbook.jsonl.gz"})
final class LogImportCommand implements Callable<Integer> {
    @Parameters(paramLabel = "FILE", description = "File that log export wrote.")
    private @SuppressWarnings("NullAway.Init") Path file;

    @Mixin private LogOptions options = new LogOptions();

    @Override
    public Integer call() throws Exception {
        LogbookImport checked = LogbookImport.of(file);
        try (Logbook logbook = options.open(Opening.BEGIN);
                ProgressLine progress = new ProgressLine("Importing")) {
            Map<Added.Outcome, Integer> outcomes = checked.into(logbook, progress::reached);
            Map<String, Integer> counts = new LinkedHashMap<>();
            for (Added.Outcome outcome : Added.Outcome.values()) {
                counts.put(outcome.key(), outcomes.getOrDefault(outcome, 0));
            }
            if (options.json()) {
                options.print(LogbookJson.counts(logbook.place(), "import", counts));
                return 0;
            }
            options.say(
                    counts.get("added")
                            + " added, "
                            + counts.get("already-there")
                            + " were there already.");
            if (outcomes.containsKey(Added.Outcome.OTHER_RESULTS)) {
                options.say(
                        counts.get("other-results")
                                + " were there with other results, which stay.");
            }
        }
        return 0;
    }
}
