package org.printassay.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.PrintDetails;
import org.printassay.evaluation.SourceFile;
import org.printassay.problem.Problem;

/** Keeps the results of one print from being written over those of another. */
final class SamePrint {
    private static final String RESULT = "evaluation.json";

    private SamePrint() {}

    /**
     * Refuses a folder that holds the results of another print: other chart, print number, paper,
     * printer or inputs.
     *
     * @throws Problem output, unless {@code force}
     */
    static void refuseOther(Path folder, Evaluation evaluation, boolean force) throws Problem {
        Path there = folder.resolve(RESULT);
        if (force || !Files.exists(there)) {
            return;
        }
        String difference = difference(there, evaluation);
        if (difference != null) {
            throw Problem.output(
                    folder.toString(),
                    "holds results of another print ("
                            + difference
                            + "). Name another folder with --out, or write over it with --force.");
        }
    }

    private static @Nullable String difference(Path there, Evaluation evaluation) {
        JsonNode old;
        try {
            old = new ObjectMapper().readTree(there.toFile());
        } catch (IOException e) {
            return "its evaluation.json cannot be read";
        }
        if (!Objects.equals(text(old.at("/chart/id")), evaluation.chartId())) {
            return "another chart";
        }
        Integer print = evaluation.print();
        if (!Objects.equals(
                text(old.at("/chart/print")), print == null ? null : print.toString())) {
            return "another print number";
        }
        if (!PrintDetails.same(text(old.at("/paper")), evaluation.details().paper())) {
            return "another paper";
        }
        if (!PrintDetails.same(text(old.at("/printer")), evaluation.details().printer())) {
            return "another printer";
        }
        List<String> checksums = new ArrayList<>();
        for (JsonNode file : old.at("/source/files")) {
            checksums.add(file.path("sha256").asText());
        }
        List<String> now = evaluation.files().stream().map(SourceFile::sha256).toList();
        return checksums.equals(now) ? null : "other inputs";
    }

    private static @Nullable String text(JsonNode node) {
        return node.isMissingNode() || node.isNull() ? null : node.asText();
    }
}
