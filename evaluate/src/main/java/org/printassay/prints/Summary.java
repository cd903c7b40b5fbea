package org.printassay.prints;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.printassay.report.SummaryPage;
import org.printassay.report.SummaryView;

/**
 * What came of many prints.
 *
 * @param outcomes one a print
 * @param skipped files that were passed over
 */
public record Summary(List<PrintOutcome<EvaluatedPrint>> outcomes, List<Skipped> skipped) {
    /** File of it for scripts. */
    public static final String JSON = "summary.json";

    /** Page of it. */
    public static final String PAGE = "index.html";

    public Summary {
        outcomes = List.copyOf(outcomes);
        skipped = List.copyOf(skipped);
    }

    /** The first of 70, 5, 3, 4, 0 that occurred. */
    public int exitCode() {
        return PrintOutcome.exitCode(outcomes.stream().mapToInt(PrintOutcome::exitCode));
    }

    /** How many prints were evaluated. */
    public long evaluated() {
        return outcomes.stream().filter(outcome -> outcome.result() != null).count();
    }

    /** In a sentence, how many prints were evaluated. */
    public String words() {
        int failed = outcomes.size() - (int) evaluated();
        return count((int) evaluated(), "print")
                + " evaluated"
                + (failed == 0 ? "" : ", " + failed + " not")
                + (skipped.isEmpty() ? "" : "; " + count(skipped.size(), "file") + " passed over")
                + ".";
    }

    static String count(int n, String what) {
        return n + " " + what + (n == 1 ? "" : "s");
    }

    /** The file for scripts. */
    public String json() {
        return SummaryJson.write(this);
    }

    /** A table for a terminal. */
    public String table() {
        return SummaryTable.text(this);
    }

    /**
     * Writes {@code summary.json}, {@code summary.csv} and {@code index.html}.
     *
     * @throws IOException when they cannot be written
     */
    public void write(Path folder) throws IOException {
        Files.writeString(folder.resolve(JSON), json(), StandardCharsets.UTF_8);
        Files.writeString(
                folder.resolve("summary.csv"), SummaryTable.csv(this), StandardCharsets.UTF_8);
        Files.writeString(folder.resolve(PAGE), page(), StandardCharsets.UTF_8);
    }

    private String page() {
        List<SummaryView.Print> prints = new ArrayList<>();
        for (PrintOutcome<EvaluatedPrint> outcome : outcomes) {
            EvaluatedPrint print = outcome.result();
            if (print != null) {
                prints.add(print.line());
            }
        }
        return SummaryPage.write(
                words(), prints, PrintHead.failed(outcomes), PrintHead.left(skipped));
    }
}
