package org.printassay.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.printassay.check.Check;
import org.printassay.check.CheckWords;
import org.printassay.check.ToleranceFile;
import org.printassay.check.ToleranceSet;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.PrintDetails;
import org.printassay.logbook.Logbook;
import org.printassay.prints.CheckSummary;
import org.printassay.prints.Summary;
import org.printassay.problem.Problem;
import org.printassay.report.CheckJson;
import org.printassay.report.CheckReports;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Holds prints against a baseline: within, drifted, failed or cannot tell. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = {
            "Checks whether a printer still prints as its baseline: within, drifted, failed or"
                    + " cannot tell, for each quantity and overall; with a folder, several files or"
                    + " --list, for many prints.",
            "",
            "Without --baseline a print is held against the baseline that the logbook keeps of its"
                    + " printer, paper and route (printassay log baseline)."
        },
        footer = {
            "",
            "Example, before and after cleaning nozzles:",
            "  printassay check after.tif --baseline before.tif --tolerances fine",
            "Against the logbook, by how prints lie apart there:",
            "  printassay check after.tif --paper \"Paper A\" --printer \"Printer 1\""
                    + " --logbook-spread",
            "",
            "Exit codes: 0 within, or drifted inside the tolerances; 1 failed; 6 cannot tell; 3 and 4"
                    + " when prints must not be compared. Of several prints the first of 70, 5, 3,"
                    + " 4, 6, 1, 0 that occurred."
        })
final class CheckCommand implements Callable<Integer> {
    /** Lines on the terminal before those that say what it rests on. */
    private static final int MOST_LINES = 7;

    @Parameters(
            arity = "0..*",
            paramLabel = "FILE",
            description =
                    "Prints to check: evaluation.json or its folder, scans or measurement files, or"
                            + " folders of scans or of what evaluate has written. Several files are"
                            + " of several prints, but for scans that names and sheet codes say are"
                            + " of one.")
    private List<Path> files = new ArrayList<>();

    @Option(
            names = "--baseline",
            paramLabel = "FILE",
            description =
                    "What to check against: evaluation.json or its folder, a scan or a measurement"
                            + " (default: the logbook's baseline).")
    private @Nullable Path baseline;

    @Mixin private LogbookSpreadOption logbook = new LogbookSpreadOption();

    @Option(
            names = "--list",
            paramLabel = "FILE",
            description = "A list of the files of many prints, as for evaluate.")
    private @Nullable Path list;

    @Option(
            names = "--tolerances",
            paramLabel = "NAME",
            defaultValue = "workshop",
            description = "fine, workshop, or a file (default: ${DEFAULT-VALUE}).")
    private String tolerances = "workshop";

    @Option(
            names = "--show-tolerances",
            paramLabel = "NAME",
            description =
                    "Print the tolerances fine or workshop, to be saved, edited and named with"
                            + " --tolerances.")
    private @Nullable String showTolerances;

    @Mixin private EvaluationOptions options = new EvaluationOptions();

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Where to write (default: the first input's name with -check).")
    private @Nullable Path out;

    @Option(names = "--force", description = "Write over another check.")
    private boolean force;

    @Option(names = "--json", description = "Print check.json, or checks.json of many prints.")
    private boolean json;

    @Spec
    private @SuppressWarnings("NullAway.Init") CommandSpec spec;

    @Override
    public Integer call() throws Exception {
        if (showTolerances != null) {
            return show(showTolerances);
        }
        if (list != null && !files.isEmpty()) {
            throw Problem.usage("name the prints in the list or on the command line, not both.");
        }
        if (list == null && files.isEmpty()) {
            throw Problem.usage(
                    "name the print to check, and what to check against with --baseline FILE (else"
                            + " the logbook's baseline).");
        }
        // Wrong options are told before the work.
        ToleranceSet allowed = ToleranceFile.named(tolerances);
        options.request(files, PrintDetails.UNKNOWN);
        options.pages();
        CheckedPrints reading = new CheckedPrints(options);
        List<Path> inputs = new ArrayList<>(one() ? files : List.of());
        if (baseline != null) {
            inputs.add(baseline);
        }
        OutputFolder folder = new OutputFolder(place(), reading.inputs(inputs));
        folder.refuseUnwritable();
        Optional<Evaluation> held = named(reading);
        Optional<Logbook> open = logbook();
        try (CheckAgainst against = new CheckAgainst(allowed, held, open, logbook.spread())) {
            return one() ? checkOne(reading, against, folder) : checkMany(reading, against, folder);
        }
    }

    /** Whether there is one print alone. */
    private boolean one() {
        return list == null
                && files.size() == 1
                && (!Files.isDirectory(files.get(0))
                        || Files.exists(files.get(0).resolve(EvaluationFolders.FILE)));
    }

    /** Where a logbook was never begun, nobody meant it to be used. */
    private Optional<Logbook> logbook() throws Problem {
        try {
            return logbook.open(baseline == null);
        } catch (Problem e) {
            if (e.kind() == Problem.Kind.INPUT && baseline == null && !logbook.named()) {
                throw Problem.usage(
                        "name what to check against with --baseline FILE, or keep a baseline in"
                                + " the logbook ("
                                + e.getMessage()
                                + ")");
            }
            throw e;
        }
    }

    private Optional<Evaluation> named(CheckedPrints reading) throws Problem {
        if (baseline == null) {
            return Optional.empty();
        }
        try (ProgressLine progress = new ProgressLine("Reading the baseline")) {
            return Optional.of(reading.read(baseline, progress));
        }
    }

    private int checkOne(CheckedPrints reading, CheckAgainst against, OutputFolder folder)
            throws Problem {
        Check check;
        try (ProgressLine progress = new ProgressLine("Reading")) {
            check = against.check(reading.read(files.get(0), progress));
        }
        CheckResults.write(check, options.pages(), folder, force);
        PrintWriter to = spec.commandLine().getOut();
        if (json) {
            to.print(CheckJson.write(check));
            to.flush();
        } else {
            lines(check).forEach(line -> to.println(PlainText.line(line)));
            to.println("Report: " + PlainText.path(folder.path().resolve(CheckReports.PAGE)));
        }
        return check.outcome().exitCode();
    }

    private int checkMany(CheckedPrints reading, CheckAgainst against, OutputFolder folder)
            throws Problem {
        Path held =
                baseline != null && Files.isDirectory(baseline)
                        ? baseline.resolve(EvaluationFolders.FILE)
                        : baseline;
        ManyInputs inputs =
                list != null
                        ? ManyInputs.listed(list)
                        : ManyInputs.toCheck(files, options.expected(), folder.path(), held);
        CheckSummary summary = new ManyChecks(options, reading, against, folder, force).of(inputs);
        PrintWriter to = spec.commandLine().getOut();
        if (json) {
            to.print(summary.json());
            to.flush();
        } else {
            PlainText.lines(summary.table()).forEach(to::println);
            to.println(
                    summary.words()
                            + " Summary: "
                            + PlainText.path(folder.path().resolve(Summary.PAGE)));
        }
        ManyEvaluations.complaints(summary.outcomes())
                .forEach(line -> spec.commandLine().getErr().println(PlainText.line(line)));
        return summary.exitCode();
    }

    private int show(String name) throws Problem {
        if (!ToleranceFile.OURS.contains(name)) {
            throw Problem.usage(
                    "--show-tolerances must be "
                            + String.join(" or ", ToleranceFile.OURS)
                            + ", got "
                            + name
                            + ".");
        }
        spec.commandLine().getOut().print(ToleranceFile.text(name));
        spec.commandLine().getOut().flush();
        return 0;
    }

    private Path place() throws Problem {
        if (out != null) {
            return out;
        }
        Path first = (list == null ? files.get(0) : list).toAbsolutePath().normalize();
        if (first.getFileName() == null) {
            throw Problem.usage("name a folder for the results with --out.");
        }
        return first.resolveSibling(first.getFileName() + "-check");
    }

    private static List<String> lines(Check check) {
        List<String> lines = new ArrayList<>();
        lines.add(CheckWords.headline(check));
        check.cautions().forEach(caution -> lines.add("- " + caution.text()));
        CheckWords.sentences(check).forEach(sentence -> lines.add("- " + sentence));
        List<String> shown = new ArrayList<>(lines.subList(0, Math.min(MOST_LINES, lines.size())));
        shown.add(CheckWords.basis(check));
        return shown;
    }
}
