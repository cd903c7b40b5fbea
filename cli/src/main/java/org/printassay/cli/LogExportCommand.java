package org.printassay.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.printassay.logbook.Logbook;
import org.printassay.logbook.LogbookExport;
import org.printassay.logbook.LogbookJson;
import org.printassay.logbook.Opening;
import org.printassay.problem.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes the logbook into a file of JSON lines. */
@Command(
        name = "export",
        mixinStandardHelpOptions = true,
        description =
                "Writes entries with their evaluations as JSON, one a line; packed when the name ends"
                        + " in .gz.",
        footer = {"", "Example:", "  printassay log export logbook.jsonl.gz"})
final class LogExportCommand implements Callable<Integer> {
    @Parameters(paramLabel = "FILE", description = "Where to write.")
    private @SuppressWarnings("NullAway.Init") Path file;

    @Option(names = "--force", description = "Write over a file that is there.")
    private boolean force;

    @Mixin private LogSelection selection = new LogSelection();
    @Mixin private LogOptions options = new LogOptions();

    @Override
    public Integer call() throws Exception {
        Path to = file.toAbsolutePath().normalize();
        if (Files.isDirectory(to) || (Files.exists(to) && !force)) {
            throw Problem.output(
                    to.toString(), "is there already. Name another file, or use --force.");
        }
        try (Logbook logbook = options.open(Opening.READ)) {
            int entries = write(logbook, to);
            if (options.json()) {
                options.print(
                        LogbookJson.counts(logbook.place(), "export", Map.of("exported", entries)));
            } else {
                options.say(entries + " exported: " + PlainText.path(to));
            }
        }
        return 0;
    }

    /** Written beside its place and then moved, so that no half of it is ever seen. */
    private int write(Logbook logbook, Path to) throws Problem {
        Path part = null;
        Thread sweeper = null;
        try (ProgressLine progress = new ProgressLine("Exporting")) {
            Path folder = Files.createDirectories(to.resolveSibling(".").normalize());
            String end = to.toString().endsWith(".gz") ? ".gz" : ".jsonl";
            // Not a temporary file of the system's: that one only its owner may read.
            Path unfinished =
                    Files.createFile(folder.resolve(".export-part-" + UUID.randomUUID() + end));
            part = unfinished;
            sweeper = new Thread(() -> remove(unfinished), "remove unfinished export");
            Runtime.getRuntime().addShutdownHook(sweeper);
            int entries =
                    LogbookExport.write(
                            logbook, selection.selection(), unfinished, progress::reached);
            Files.move(
                    unfinished,
                    to,
                    StandardCopyOption.ATOMIC_MOVE,
                    StandardCopyOption.REPLACE_EXISTING);
            return entries;
        } catch (IOException e) {
            throw Problem.output(
                    to.toString(), "cannot be written (" + e.getClass().getSimpleName() + ").");
        } finally {
            if (part != null) {
                remove(part);
            }
            forget(sweeper);
        }
    }

    private static void remove(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            // Nothing more can be done; the file's name says that it is a part.
        }
    }

    private static void forget(@Nullable Thread sweeper) {
        try {
            if (sweeper != null) {
                Runtime.getRuntime().removeShutdownHook(sweeper);
            }
        } catch (IllegalStateException e) {
            // Already shutting down: the sweeper runs, and finds nothing left.
        }
    }
}
