package org.printassay.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.evaluation.Evaluator;
import org.printassay.evaluation.Finding;
import org.printassay.evaluation.PrintDetails;
import org.printassay.prints.Summary;
import org.printassay.problem.Problem;
import org.printassay.report.EvaluationJson;
import org.printassay.report.paged.PageFormat;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Reads scans or measurement files of one print, or of many, and says how the paper prints. */
@Command(
        name = "evaluate",
        mixinStandardHelpOptions = true,
        description = {
            "Reads a scan, or an instrument's measurement file, of one print; with a folder, --many or"
                    + " --list, those of many prints."
        },
        footer = {
            "",
            "Example:",
            "  printassay evaluate scan.tif --paper \"Paper A\" --dried-hours 24",
            "Then open report.html in the folder that it names.",
            "",
            "  printassay evaluate scans --out results",
            "Then open index.html: every scan in the folder scans is read. Names that agree up to a"
                    + " mark at the end, as baryta-1.tif and baryta-2.tif, are of one print where the"
                    + " sheet code agrees too."
        })
final class EvaluateCommand implements Callable<Integer> {
    @Parameters(
            arity = "0..*",
            paramLabel = "FILE",
            description =
                    "Scans of one print (TIFF, PNG, JPEG, PDF), or measurement files of it (ISO 28178"
                            + " text, CSV, CxF3, a typed list); or folders of scans of many prints.")
    private List<Path> files = new ArrayList<>();

    @Option(names = "--many", description = "The files are of many prints.")
    private boolean many;

    @Option(
            names = "--list",
            paramLabel = "FILE",
            description =
                    "A list of the files of many prints: CSV with the columns file, print, paper,"
                            + " printer, route, driedHours, or JSON (printassay/prints/1).")
    private @Nullable Path list;

    @Mixin private EvaluationOptions options = new EvaluationOptions();

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Where to write (default: the first input's name with -evaluation).")
    private @Nullable Path out;

    @Option(names = "--force", description = "Write over another print's results.")
    private boolean force;

    @Option(
            names = "--json",
            description = "Print evaluation.json, or summary.json of many prints.")
    private boolean json;

    @Spec
    private @SuppressWarnings("NullAway.Init") CommandSpec spec;

    @Override
    public Integer call() throws Exception {
        if (list != null && !files.isEmpty()) {
            throw Problem.usage("name the files in the list or on the command line, not both.");
        }
        if (list == null && files.isEmpty()) {
            throw Problem.usage("name a scan, a measurement file, a folder, or a --list.");
        }
        boolean folders = files.stream().anyMatch(Files::isDirectory);
        return many || folders || list != null ? evaluateMany() : evaluateOne();
    }

    private int evaluateOne() throws Problem {
        EvaluationRequest request = options.request(files, PrintDetails.UNKNOWN);
        Optional<PageFormat> pages = options.pages();
        OutputFolder folder = new OutputFolder(place(), inputs(files));
        folder.refuseUnwritable();
        Evaluator.Result result;
        try (ProgressLine progress = new ProgressLine("Reading")) {
            result = Evaluator.evaluate(request, progress);
        }
        PrintResults.write(result, pages, files.get(0), folder, force);
        Evaluation evaluation = result.evaluation();
        if (json) {
            spec.commandLine().getOut().println(EvaluationJson.write(evaluation));
        } else {
            print(evaluation, folder.path());
        }
        return 0;
    }

    private int evaluateMany() throws Problem {
        // Wrong options are told before the work.
        options.request(files, PrintDetails.UNKNOWN);
        options.pages();
        Path place = place();
        OutputFolder folder = new OutputFolder(place, inputs(List.of()));
        folder.refuseUnwritable();
        ManyInputs inputs =
                list != null
                        ? ManyInputs.listed(list)
                        : ManyInputs.named(files, options.expected(), folder.path());
        Summary summary = new ManyEvaluations(options, folder, force).of(inputs);
        if (json) {
            spec.commandLine().getOut().print(summary.json());
            spec.commandLine().getOut().flush();
        } else {
            PlainText.lines(summary.table()).forEach(spec.commandLine().getOut()::println);
            spec.commandLine()
                    .getOut()
                    .println(
                            summary.words()
                                    + " Summary: "
                                    + PlainText.path(folder.path().resolve(Summary.PAGE)));
        }
        ManyEvaluations.complaints(summary.outcomes())
                .forEach(line -> spec.commandLine().getErr().println(PlainText.line(line)));
        return summary.exitCode();
    }

    private List<Path> inputs(List<Path> read) {
        List<Path> all = new ArrayList<>(read);
        all.addAll(options.files());
        all.removeIf(file -> !Files.exists(file));
        return all;
    }

    private Path place() throws Problem {
        if (out != null) {
            return out;
        }
        Path first = (list == null ? files.get(0) : list).toAbsolutePath().normalize();
        if (first.getFileName() == null) {
            throw Problem.usage("name a folder for the results with --out.");
        }
        return first.resolveSibling(first.getFileName() + "-evaluation");
    }

    private void print(Evaluation evaluation, Path folder) {
        for (Finding finding : evaluation.findings()) {
            String advice = finding.advice().isEmpty() ? "" : " " + finding.advice();
            spec.commandLine().getOut().println("- " + PlainText.line(finding.text() + advice));
        }
        if (evaluation.measurement() != null) {
            for (String note : evaluation.measurement().notes()) {
                spec.commandLine().getOut().println("  (" + PlainText.line(note) + ")");
            }
        }
        int notes = evaluation.warnings().size();
        spec.commandLine()
                .getOut()
                .println(
                        "Report, with "
                                + notes
                                + (notes == 1 ? " note" : " notes")
                                + " on how far to trust it: "
                                + PlainText.path(folder.resolve("report.html")));
    }
}
