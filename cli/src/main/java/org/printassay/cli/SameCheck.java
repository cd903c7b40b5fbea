package org.printassay.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.printassay.check.Check;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.SourceFile;
import org.printassay.problem.Problem;
import org.printassay.report.CheckReports;

/** Keeps a check from being written over one of other prints, or over somebody's own page. */
final class SameCheck {
    private SameCheck() {}

    /**
     * Refuses a folder that holds a check of other files.
     *
     * @throws Problem output, unless {@code force}
     */
    static void refuseOther(Path folder, Check check, boolean force) throws Problem {
        Path there = folder.resolve(CheckReports.JSON);
        boolean page = Files.exists(folder.resolve(CheckReports.PAGE));
        if (force || (!Files.exists(there) && !page)) {
            return;
        }
        if (!same(there, check)) {
            throw Problem.output(
                    folder.toString(),
                    "holds a check of other prints. Name another folder with --out, or write over"
                            + " it with --force.");
        }
    }

    private static boolean same(Path there, Check check) {
        try {
            JsonNode old = new ObjectMapper().readTree(there.toFile());
            List<String> before = new ArrayList<>();
            old.at("/baseline/prints").forEach(print -> before.addAll(sums(print)));
            before.addAll(sums(old.path("print")));
            List<String> now = new ArrayList<>();
            check.baseline().prints().forEach(print -> now.addAll(sums(print)));
            now.addAll(sums(check.print()));
            return before.equals(now);
        } catch (IOException e) {
            return false;
        }
    }

    private static List<String> sums(JsonNode print) {
        List<String> sums = new ArrayList<>();
        for (JsonNode file : print.path("files")) {
            sums.add(file.path("sha256").asText());
        }
        return sums;
    }

    private static List<String> sums(Evaluation print) {
        return print.files().stream().map(SourceFile::sha256).toList();
    }
}
