package org.printassay.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.Finding;
import org.printassay.logbook.Logbook;
import org.printassay.logbook.Opening;
import org.printassay.report.Reports;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Gives an evaluation back. */
@Command(
        name = "show",
        mixinStandardHelpOptions = true,
        description = "Shows one entry; its files can be written again, but for pictures of scans.",
        footer = {"", "Example:", "  printassay log show 12 --out print-12"})
final class LogShowCommand implements Callable<Integer> {
    @Parameters(paramLabel = "NUMBER", description = "Number of the entry, as log list tells it.")
    private long id;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Write evaluation.json, the report and readings here.")
    private @Nullable Path out;

    @Option(names = "--force", description = "Write over another print's results.")
    private boolean force;

    @Mixin private LogOptions options = new LogOptions();

    @Override
    public Integer call() throws Exception {
        try (Logbook logbook = options.open(Opening.READ)) {
            Evaluation evaluation = logbook.evaluation(id);
            if (out != null) {
                OutputFolder folder = new OutputFolder(out, List.of());
                SamePrint.refuseOther(folder.path(), evaluation, force);
                Instant read = logbook.entry(id).readAt();
                folder.write(
                        Reports::earlier,
                        part -> {
                            Reports.writeAll(evaluation, List.of(), false, part);
                            Reports.writeCxf(evaluation, read, part);
                        });
            }
            if (options.json()) {
                options.print(logbook.text(id));
                return 0;
            }
            options.say(LogOptions.line(logbook.entry(id)));
            for (Finding finding : evaluation.findings()) {
                options.say("- " + finding.text());
            }
            if (out != null) {
                options.say("Report: " + out.resolve("report.html"));
            }
        }
        return 0;
    }
}
