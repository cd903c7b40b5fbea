package org.printassay.prints;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.StringJoiner;
import org.printassay.check.Outcome;
import org.printassay.evaluation.PrintDetails;
import org.printassay.report.CheckSummaryPage;
import org.printassay.report.CheckSummaryView;
import org.printassay.report.JsonText;

/**
 * What came of checking many prints.
 *
 * @param tolerances name of the tolerances
 * @param outcomes one a print
 * @param skipped files that were passed over
 */
public record CheckSummary(
        String tolerances, List<PrintOutcome<CheckedPrint>> outcomes, List<Skipped> skipped) {
    /** File of it for scripts. */
    public static final String JSON = "checks.json";

    private static final String CSV = "checks.csv";

    private static final String COLUMNS =
            "print,files,paper,printer,route,outcome,first finding,held against,exit code,problem";

    public CheckSummary {
        outcomes = List.copyOf(outcomes);
        skipped = List.copyOf(skipped);
    }

    /** The first of 70, 5, 3, 4, 6, 1, 0 that occurred. */
    public int exitCode() {
        return PrintOutcome.exitCode(outcomes.stream().mapToInt(CheckSummary::exitCode));
    }

    private static int exitCode(PrintOutcome<CheckedPrint> outcome) {
        CheckedPrint print = outcome.result();
        return print == null ? outcome.exitCode() : print.outcome().exitCode();
    }

    /** In a sentence, what became of how many prints. */
    public String words() {
        List<String> parts = new ArrayList<>();
        for (Outcome one : weightiestFirst()) {
            long count = checked().stream().filter(print -> print.outcome() == one).count();
            if (count > 0) {
                parts.add(count + " " + one.words());
            }
        }
        int read = checked().size();
        int not = outcomes.size() - read;
        return Summary.count(read, "print")
                + " checked"
                + (parts.isEmpty() ? "" : ": " + String.join(", ", parts))
                + (not == 0 ? "" : "; " + not + " not checked")
                + (skipped.isEmpty()
                        ? ""
                        : "; " + Summary.count(skipped.size(), "file") + " passed over")
                + ".";
    }

    private static List<Outcome> weightiestFirst() {
        List<Outcome> all = new ArrayList<>(List.of(Outcome.values()));
        all.sort(Comparator.reverseOrder());
        return all;
    }

    private List<CheckedPrint> checked() {
        List<CheckedPrint> all = new ArrayList<>();
        for (PrintOutcome<CheckedPrint> outcome : outcomes) {
            CheckedPrint print = outcome.result();
            if (print != null) {
                all.add(print);
            }
        }
        return all;
    }

    /** Prints that were checked, weightiest outcome first. */
    private List<CheckedPrint> ordered() {
        List<CheckedPrint> all = checked();
        all.sort(Comparator.comparing(CheckedPrint::outcome).reversed());
        return all;
    }

    /** The file for scripts, {@code printassay/checks/1}. */
    public String json() {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("schema", "printassay/checks/1");
        root.put("exitCode", exitCode());
        root.put("tolerances", tolerances);
        root.put("checked", checked().size());
        root.put("notChecked", outcomes.size() - checked().size());
        ArrayNode prints = root.putArray("prints");
        for (PrintOutcome<CheckedPrint> outcome : outcomes) {
            CheckedPrint print = outcome.result();
            ObjectNode node = PrintHead.json(outcome, "check", "check.json");
            node.put("outcome", print == null ? null : print.outcome().key());
            ArrayNode sentences = node.putArray("sentences");
            if (print != null) {
                print.sentences().forEach(sentences::add);
            }
            node.put("baseline", print == null ? null : print.baseline());
            node.put("spread", print == null ? null : print.spread());
            prints.add(node);
        }
        PrintHead.skipped(skipped, root);
        return JsonText.write(root);
    }

    /** A table for a terminal, weightiest outcome first. */
    public String table() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("Print", "Outcome", "What changed"));
        for (CheckedPrint print : ordered()) {
            rows.add(
                    List.of(
                            TextTable.shortened(print.name()),
                            print.outcome().words(),
                            print.first()));
        }
        return TextTable.ofWords(rows);
    }

    private String csv() {
        StringBuilder out = new StringBuilder(COLUMNS).append("\r\n");
        for (PrintOutcome<CheckedPrint> outcome : outcomes) {
            CheckedPrint print = outcome.result();
            PrintOutcome.Failure failure = outcome.failure();
            PrintDetails said = PrintHead.said(outcome);
            StringJoiner cells = new StringJoiner(",");
            cells.add(SummaryTable.text(outcome.print().name()));
            cells.add(SummaryTable.text(PrintHead.files(outcome)));
            cells.add(SummaryTable.text(said.paper()));
            cells.add(SummaryTable.text(said.printer()));
            cells.add(SummaryTable.text(said.route()));
            cells.add(print == null ? "" : print.outcome().key());
            cells.add(SummaryTable.text(print == null ? null : print.first()));
            cells.add(SummaryTable.text(print == null ? null : print.baseline()));
            cells.add(String.valueOf(exitCode(outcome)));
            cells.add(SummaryTable.text(failure == null ? null : failure.text()));
            out.append(cells).append("\r\n");
        }
        return out.toString();
    }

    /**
     * Writes {@code checks.json}, {@code checks.csv} and {@code index.html}.
     *
     * @throws IOException when they cannot be written
     */
    public void write(Path folder) throws IOException {
        Files.writeString(folder.resolve(JSON), json(), StandardCharsets.UTF_8);
        Files.writeString(folder.resolve(CSV), csv(), StandardCharsets.UTF_8);
        List<CheckSummaryView.Print> prints =
                ordered().stream()
                        .map(
                                print ->
                                        CheckSummaryPage.line(
                                                print.name(),
                                                print.outcome(),
                                                print.first(),
                                                print.baseline()))
                        .toList();
        Files.writeString(
                folder.resolve(Summary.PAGE),
                CheckSummaryPage.write(
                        words(),
                        tolerances,
                        prints,
                        PrintHead.failed(outcomes),
                        PrintHead.left(skipped)),
                StandardCharsets.UTF_8);
    }
}
