package org.printassay.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.printassay.check.Check;
import org.printassay.check.CheckWords;
import org.printassay.check.Checker;
import org.printassay.check.Outcome;
import org.printassay.check.ToleranceFile;
import org.printassay.check.ToleranceSet;
import org.printassay.evaluation.Evaluation;
import org.printassay.problem.Problem;
import org.printassay.report.CheckJson;
import org.printassay.report.CheckPage;
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
        description =
                "Checks whether a printer still prints as its baseline: within, drifted, failed or"
                        + " cannot tell, for each quantity and overall.",
        footer = {
            "",
            "Example, before and after cleaning nozzles:",
            "  printassay check after.tif --baseline before.tif --tolerances fine",
            "",
            "Exit codes: 0 within, or drifted inside the tolerances; 1 failed; 6 cannot tell; 3 and 4"
                    + " when prints must not be compared. Of several prints the first of 70, 5, 3,"
                    + " 4, 6, 1, 0 that occurred."
        })
final class CheckCommand implements Callable<Integer> {
    /** Lines on the terminal before the path. */
    private static final int MOST_LINES = 7;

    private static final int FAILED = 1;
    private static final int CANNOT_TELL = 6;

    @Parameters(
            arity = "0..*",
            paramLabel = "FILE",
            description =
                    "Prints to check: evaluation.json or its folder, or a scan or measurement file,"
                            + " each of a print of its own. Scans that show one print together are"
                            + " evaluated first.")
    private List<Path> files = new ArrayList<>();

    @Option(
            names = "--baseline",
            paramLabel = "FILE",
            description =
                    "What to check against: evaluation.json or its folder, a scan or a measurement.")
    private @Nullable Path baseline;

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

    @Option(names = "--json", description = "Print check.json.")
    private boolean json;

    @Spec
    private @SuppressWarnings("NullAway.Init") CommandSpec spec;

    @Override
    public Integer call() throws Exception {
        if (showTolerances != null) {
            return show(showTolerances);
        }
        if (files.isEmpty() || baseline == null) {
            throw Problem.usage(
                    "name the print to check, and what to check against with --baseline FILE.");
        }
        ToleranceSet allowed = ToleranceFile.named(tolerances);
        CheckedPrints inputs = new CheckedPrints(options);
        OutputFolder folder = new OutputFolder(place(), inputs.inputs(files, baseline));
        folder.refuseUnwritable();
        List<Check> checks = new ArrayList<>();
        List<Integer> codes = new ArrayList<>();
        try (ProgressLine progress = new ProgressLine("Reading")) {
            Evaluation before = inputs.read(baseline, progress);
            for (Path file : files) {
                try {
                    checks.add(Checker.check(before, inputs.read(file, progress), allowed));
                } catch (Problem e) {
                    if (files.size() == 1) {
                        throw e;
                    }
                    spec.commandLine().getErr().println(PlainText.line(e.getMessage()));
                    codes.add(e.kind().exitCode);
                }
            }
        }
        if (!checks.isEmpty()) {
            checks.forEach(check -> codes.add(code(check.outcome())));
            SameCheck.refuseOther(folder.path(), checks, force);
            write(folder, checks);
            print(checks, folder.path());
        }
        return gravest(codes);
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

    private static int code(Outcome outcome) {
        return switch (outcome) {
            case WITHIN, DRIFTED -> 0;
            case FAILED -> FAILED;
            case CANNOT_TELL -> CANNOT_TELL;
        };
    }

    private static int gravest(List<Integer> codes) {
        return org.printassay.prints.Outcome.exitCode(
                IntStream.range(0, codes.size()).map(codes::get));
    }

    private Path place() throws Problem {
        if (out != null) {
            return out;
        }
        Path first = files.get(0).toAbsolutePath().normalize();
        if (first.getFileName() == null) {
            throw Problem.usage("name a folder for the results with --out.");
        }
        return first.resolveSibling(first.getFileName() + "-check");
    }

    private static void write(OutputFolder folder, List<Check> checks) throws Problem {
        String text = CheckJson.write(checks);
        String page = CheckPage.write(checks, false);
        folder.write(
                part -> {
                    save(part.resolve(SameCheck.JSON), text);
                    save(part.resolve(SameCheck.PAGE), page);
                });
    }

    private static void save(Path file, String text) throws IOException {
        Files.writeString(file, text, StandardCharsets.UTF_8);
    }

    private void print(List<Check> checks, Path folder) {
        PrintWriter to = spec.commandLine().getOut();
        if (json) {
            to.print(CheckJson.write(checks));
            to.flush();
            return;
        }
        lines(checks).forEach(line -> to.println(PlainText.line(line)));
        to.println("Report: " + PlainText.path(folder.resolve(SameCheck.PAGE)));
    }

    private static List<String> lines(List<Check> checks) {
        List<String> lines = new ArrayList<>();
        if (checks.size() == 1) {
            Check check = checks.get(0);
            lines.add(CheckWords.headline(check));
            check.cautions().forEach(caution -> lines.add("- " + caution.text()));
            CheckWords.sentences(check).forEach(sentence -> lines.add("- " + sentence));
            return lines.subList(0, Math.min(MOST_LINES, lines.size()));
        }
        List<Check> weightiestFirst = new ArrayList<>(checks);
        weightiestFirst.sort(Comparator.comparing(Check::outcome).reversed());
        for (Check check : weightiestFirst) {
            List<String> sentences = CheckWords.sentences(check);
            lines.add(
                    check.printName()
                            + ": "
                            + check.outcome().words()
                            + (sentences.isEmpty() ? "." : ". " + sentences.get(0)));
        }
        if (lines.size() > MOST_LINES) {
            int more = lines.size() - MOST_LINES + 1;
            lines.subList(MOST_LINES - 1, lines.size()).clear();
            lines.add("and " + more + " more.");
        }
        return lines;
    }
}
