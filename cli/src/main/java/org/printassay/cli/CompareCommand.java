package org.printassay.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.printassay.compare.Comparability.Caution;
import org.printassay.compare.Comparison;
import org.printassay.compare.EarlierSpread;
import org.printassay.compare.KnownSpread;
import org.printassay.compare.NamedPrint;
import org.printassay.compare.Question;
import org.printassay.evaluation.Finding;
import org.printassay.logbook.Logbook;
import org.printassay.logbook.SteadyPrints;
import org.printassay.problem.Problem;
import org.printassay.report.ComparisonJson;
import org.printassay.report.ComparisonPage;
import org.printassay.report.ComparisonReports;
import org.printassay.report.ComparisonSpread;
import org.printassay.report.ComparisonWords;
import org.printassay.report.EvaluationJson;
import org.printassay.report.paged.PageFormat;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Lays prints side by side and says in what they differ, and in what they cannot be told apart. */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        description = {
            "Lays prints of several papers, printers or routes side by side: what differs, by how"
                    + " much and how surely, and which suits dark pictures, black and white, skin and"
                    + " colour.",
            "",
            "Prints with the same paper, printer and route count as repeats of each other. Only"
                    + " with repeats, or with --spread or --logbook-spread, can anything be said of"
                    + " papers rather than of these prints."
        },
        footer = {
            "",
            "Example:",
            "  printassay compare paper-a-1/ paper-a-2/ paper-b-1/ paper-b-2/ --question skin",
            "Then open comparison.html in the folder that it names.",
            "",
            "Exit codes: 0 done, 2 wrong use, 3 an input cannot be read or these prints must not be"
                    + " compared, 5 the output cannot be written."
        })
final class CompareCommand implements Callable<Integer> {
    /** Lines printed before the path. */
    private static final int MOST_LINES = 7;

    @Parameters(
            arity = "1..*",
            paramLabel = "EVALUATION",
            description =
                    "Two or more evaluation.json files, or folders that evaluate has written; a"
                            + " folder of such folders stands for all of them.")
    private List<Path> inputs = new ArrayList<>();

    @Option(
            names = "--against",
            paramLabel = "NAME",
            defaultValue = "",
            description =
                    "The side that the others are shown against: its name, or its number in the"
                            + " order given (default: the first).")
    private String against = "";

    @Option(
            names = "--question",
            paramLabel = "NAME",
            description =
                    "What to rank for first: dark-pictures, black-and-white, skin or colour (all"
                            + " are on the page).")
    private @Nullable String question;

    @Option(
            names = "--spread",
            paramLabel = "FILE",
            description =
                    "comparison.json of an earlier comparison with several prints a paper: how"
                            + " prints differ among themselves is taken from it, too.")
    private @Nullable Path spread;

    @Mixin private LogbookSpreadOption logbook = new LogbookSpreadOption();

    @Option(
            names = "--report-page",
            paramLabel = "PAGE",
            description =
                    "Pages of comparison.pdf: A4 or Letter (default: as the first chart's page).")
    private @Nullable String reportPage;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            defaultValue = "comparison",
            description = "Where to write (default: ${DEFAULT-VALUE}).")
    private Path out = Path.of("comparison");

    @Option(
            names = "--force",
            description = "Write even where a comparison of other prints stands.")
    private boolean force;

    @Option(names = "--json", description = "Print the comparison as JSON.")
    private boolean json;

    @Spec
    private @SuppressWarnings("NullAway.Init") CommandSpec spec;

    @Override
    public Integer call() throws Exception {
        Optional<Question> asked = asked();
        List<Path> files = new ArrayList<>();
        for (Path input : inputs) {
            files.addAll(files(input));
        }
        refuseTwice(files);
        Optional<PageFormat> pages = ReportPageOption.format(reportPage);
        List<NamedPrint> prints = new ArrayList<>();
        for (Path file : files) {
            prints.add(new NamedPrint(source(file), EvaluationJson.read(file)));
        }
        Comparison comparison = Comparison.of(prints, known(prints), against);
        if (spread != null) {
            files.add(spread);
        }
        OutputFolder folder = new OutputFolder(out, files);
        folder.refuseUnwritable();
        SameComparison.refuseOther(folder.path(), comparison, force);
        ComparisonPage.Showing showing = new ComparisonPage.Showing(asked, Map.of(), false);
        PageFormat format = pages.orElseGet(() -> ComparisonReports.pagesLike(comparison));
        folder.write(part -> ComparisonReports.writeAll(comparison, showing, format, part));
        if (json) {
            spec.commandLine().getOut().print(ComparisonJson.write(comparison));
            spec.commandLine().getOut().flush();
        } else {
            print(comparison, asked, folder.path());
        }
        return 0;
    }

    /** How prints differ among themselves, where it is known beforehand. */
    private KnownSpread known(List<NamedPrint> prints) throws Problem {
        if (spread != null && logbook.spread()) {
            throw Problem.usage(
                    "take how prints differ from --spread or from --logbook-spread, not both.");
        }
        if (spread != null) {
            EarlierSpread earlier = ComparisonSpread.read(spread);
            return new KnownSpread(earlier.usableWith(prints), earlier.where(), List.of());
        }
        Optional<Logbook> opened = logbook.open(false);
        if (opened.isEmpty()) {
            return KnownSpread.NONE;
        }
        try (Logbook open = opened.get()) {
            return new SteadyPrints(open)
                    .spread(prints.stream().map(NamedPrint::evaluation).toList());
        }
    }

    /** What may be asked. */
    static final class QuestionNames implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return Arrays.stream(Question.values()).map(Question::key).iterator();
        }
    }

    private Optional<Question> asked() throws Problem {
        if (question == null) {
            return Optional.empty();
        }
        Optional<Question> found = Question.ofKey(question);
        if (found.isEmpty()) {
            throw Problem.usage(
                    "--question must be "
                            + Arrays.stream(Question.values())
                                    .map(Question::key)
                                    .collect(Collectors.joining(", "))
                            + "; got "
                            + PlainText.line(question)
                            + ".");
        }
        return found;
    }

    /** The file itself, or what a folder holds: one evaluation, or folders with one each. */
    private static List<Path> files(Path input) throws Problem {
        if (!Files.isDirectory(input)) {
            return List.of(input);
        }
        List<Path> inside = EvaluationFolders.in(input);
        if (inside.isEmpty()) {
            throw Problem.input(
                    PlainText.path(input),
                    "holds no evaluation.json. Name a folder that evaluate has written.");
        }
        return inside;
    }

    private static void refuseTwice(List<Path> files) throws IOException, Problem {
        for (int i = 0; i < files.size(); i++) {
            for (int k = 0; k < i; k++) {
                boolean there = Files.exists(files.get(i)) && Files.exists(files.get(k));
                if (there && Files.isSameFile(files.get(i), files.get(k))) {
                    throw Problem.usage(
                            PlainText.path(files.get(i))
                                    + " is named twice. Name every print once.");
                }
            }
        }
    }

    /** What a print is called when nobody named its paper: its folder, or its file. */
    private static String source(Path file) {
        Path whole = file.toAbsolutePath().normalize();
        Path folder = whole.getParent();
        boolean usual = String.valueOf(whole.getFileName()).equals(EvaluationFolders.FILE);
        Path name = usual && folder != null ? folder.getFileName() : whole.getFileName();
        return String.valueOf(name);
    }

    private void print(Comparison c, Optional<Question> asked, Path folder) {
        List<String> lines = new ArrayList<>();
        asked.ifPresent(q -> lines.add(ComparisonWords.places(c, c.ranking(q))));
        List<Caution> cautions = c.comparability().cautions();
        if (!cautions.isEmpty()) {
            int more = cautions.size() - 1;
            lines.add(
                    "First: "
                            + cautions.get(0).text()
                            + (more > 0 ? " (" + more + " more on the page)" : ""));
        }
        for (Finding finding : c.findings()) {
            lines.add((finding.text() + " " + finding.sureness()).strip());
        }
        lines.stream()
                .limit(MOST_LINES)
                .forEach(l -> spec.commandLine().getOut().println("- " + PlainText.line(l)));
        String known = ComparisonWords.known(c);
        if (!known.isEmpty()) {
            spec.commandLine().getOut().println(PlainText.line(known));
        }
        spec.commandLine()
                .getOut()
                .println(
                        "Comparison of "
                                + c.these()
                                + ": "
                                + PlainText.path(folder.resolve("comparison.html")));
    }
}
