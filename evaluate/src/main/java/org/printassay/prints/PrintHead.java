package org.printassay.prints;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.printassay.evaluation.PrintDetails;
import org.printassay.evaluation.SourceFile;
import org.printassay.json.JsonNumbers;
import org.printassay.report.SummaryView;
import org.printassay.scan.ScanFiles;

/** What every summary says of each print before its results, and of what has none. */
final class PrintHead {
    private PrintHead() {}

    /** What was said about a print; of one that failed, what the list says. */
    static PrintDetails said(PrintOutcome<? extends ReadPrint> outcome) {
        ReadPrint print = outcome.result();
        return print == null ? outcome.print().said() : print.details();
    }

    /** Names of its files. */
    static String files(PrintOutcome<? extends ReadPrint> outcome) {
        ReadPrint print = outcome.result();
        List<String> names =
                print == null
                        ? outcome.print().files().stream().map(ScanFiles::displayName).toList()
                        : print.files().stream().map(SourceFile::name).toList();
        return String.join("; ", names);
    }

    /**
     * The print as JSON, without results.
     *
     * @param key of the file with its results
     * @param file what that is called in the print's folder
     */
    static ObjectNode json(PrintOutcome<? extends ReadPrint> outcome, String key, String file) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        ReadPrint print = outcome.result();
        PrintOutcome.Failure failure = outcome.failure();
        node.put("name", outcome.print().name());
        node.put(key, print == null ? null : outcome.print().name() + "/" + file);
        if (failure == null) {
            node.putNull("problem");
        } else {
            node.putObject("problem")
                    .put("exitCode", failure.exitCode())
                    .put("text", failure.text());
        }
        node.put("note", outcome.note().isEmpty() ? null : outcome.note());
        ArrayNode files = node.putArray("files");
        if (print == null) {
            for (Path one : outcome.print().files()) {
                files.addObject().put("name", ScanFiles.displayName(one)).putNull("sha256");
            }
        } else {
            for (SourceFile one : print.files()) {
                files.addObject().put("name", one.name()).put("sha256", one.sha256());
            }
        }
        PrintDetails said = said(outcome);
        node.put("paper", said.paper());
        node.put("printer", said.printer());
        node.put("route", said.route());
        node.set("driedHours", JsonNumbers.decimal(said.driedHours(), 2));
        return node;
    }

    /** What was passed over, as JSON. */
    static void skipped(List<Skipped> skipped, ObjectNode to) {
        ArrayNode all = to.putArray("skipped");
        for (Skipped one : skipped) {
            all.addObject().put("name", one.name()).put("why", one.why());
        }
    }

    /** Prints that failed, for a page. */
    static List<SummaryView.Left> failed(List<? extends PrintOutcome<?>> outcomes) {
        List<SummaryView.Left> failed = new ArrayList<>();
        for (PrintOutcome<?> outcome : outcomes) {
            PrintOutcome.Failure failure = outcome.failure();
            if (failure != null) {
                failed.add(new SummaryView.Left(outcome.print().name(), failure.text()));
            }
        }
        return failed;
    }

    /** What was passed over, for a page. */
    static List<SummaryView.Left> left(List<Skipped> skipped) {
        return skipped.stream().map(s -> new SummaryView.Left(s.name(), s.why())).toList();
    }
}
