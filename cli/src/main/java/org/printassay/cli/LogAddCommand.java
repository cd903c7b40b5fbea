package org.printassay.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.printassay.logbook.Added;
import org.printassay.logbook.Addition;
import org.printassay.logbook.Logbook;
import org.printassay.logbook.LogbookJson;
import org.printassay.logbook.Opening;
import org.printassay.problem.Problem;
import org.printassay.report.EvaluationJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Adds evaluations to the logbook. */
@Command(
        name = "add",
        mixinStandardHelpOptions = true,
        description =
                "Adds evaluations. A print that is there already is told and not added again.",
        footer = {
            "",
            "Example:",
            "  printassay log add scan.tif-evaluation/evaluation.json --note \"new ink\""
        })
final class LogAddCommand implements Callable<Integer> {
    @Parameters(arity = "1..*", paramLabel = "FILE", description = "evaluation.json of a print.")
    private List<Path> files = new ArrayList<>();

    @Option(
            names = "--read-at",
            paramLabel = "TIME",
            description =
                    "When the prints were read: a day or a moment (default: when each file was"
                            + " written).")
    private @Nullable String readAt;

    @Option(names = "--note", paramLabel = "TEXT", description = "A note to keep with them.")
    private @Nullable String note;

    @Option(
            names = "--replace",
            description = "Put these results in the place of others of the same print.")
    private boolean replace;

    @Mixin private LogOptions options = new LogOptions();

    @Override
    public Integer call() throws Exception {
        if (note != null && note.length() > 1000) {
            throw Problem.usage("--note may have 1000 characters, got " + note.length() + ".");
        }
        // All are read before any is added: a damaged one changes nothing.
        Map<Path, Addition> read = new LinkedHashMap<>();
        for (Path file : files) {
            read.put(file, new Addition(EvaluationJson.read(file), time(file), note));
        }
        Map<String, Added> added = new LinkedHashMap<>();
        try (Logbook logbook = options.open(Opening.BEGIN)) {
            List<Path> paths = List.copyOf(read.keySet());
            for (int from = 0; from < paths.size(); from += Addition.AT_ONCE) {
                List<Path> some =
                        paths.subList(from, Math.min(paths.size(), from + Addition.AT_ONCE));
                List<Added> outcomes =
                        logbook.addAll(some.stream().map(read::get).toList(), replace);
                for (int i = 0; i < some.size(); i++) {
                    added.put(some.get(i).toString(), outcomes.get(i));
                    if (!options.json()) {
                        options.say(words(some.get(i), outcomes.get(i)));
                    }
                }
            }
            if (options.json()) {
                options.print(LogbookJson.added(logbook.place(), added));
            }
        }
        long kept =
                added.values().stream()
                        .filter(one -> one.outcome() == Added.Outcome.OTHER_RESULTS)
                        .count();
        if (kept > 0) {
            throw Problem.output(
                    kept + (kept == 1 ? " print" : " prints"),
                    "in the logbook already with other results, which stay. Use --replace to put"
                            + " these in their place.");
        }
        return 0;
    }

    private Instant time(Path file) throws Problem, IOException {
        if (readAt != null) {
            return LogSelection.time("--read-at", readAt);
        }
        Instant written = Files.getLastModifiedTime(file).toInstant();
        Instant now = Instant.now();
        return written.isAfter(now) ? now : written;
    }

    private static String words(Path file, Added added) {
        String entry = LogOptions.line(added.entry());
        return file.getFileName()
                + switch (added.outcome()) {
                    case ADDED -> " added: " + entry;
                    case ALREADY_THERE -> " is there already, nothing changed: " + entry;
                    case OTHER_RESULTS -> " is there already with other results: " + entry;
                    case REPLACED -> " put in the place of other results: " + entry;
                };
    }
}
