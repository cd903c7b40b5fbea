package org.printassay.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.printassay.evaluation.Evaluator;
import org.printassay.evaluation.Progress;
import org.printassay.prints.EvaluatedPrint;
import org.printassay.prints.ManyPrints;
import org.printassay.prints.OnePrint;
import org.printassay.prints.Outcome;
import org.printassay.prints.Summary;
import org.printassay.problem.Problem;

/** Evaluates many prints, each into a folder of its own, and sums up. */
final class ManyEvaluations {
    private final EvaluationOptions options;
    private final OutputFolder folder;
    private final boolean force;

    ManyEvaluations(EvaluationOptions options, OutputFolder folder, boolean force) {
        this.options = options;
        this.folder = folder;
        this.force = force;
    }

    Summary of(ManyInputs inputs) throws Problem {
        refuseOthers(inputs.prints());
        Summary summary;
        try (ProgressLine progress =
                new ProgressLine("Reading " + inputs.prints().size() + " prints")) {
            summary =
                    new Summary(
                            ManyPrints.run(inputs.prints(), this::evaluated, progress),
                            inputs.skipped());
        }
        folder.write(summary::write);
        return summary;
    }

    private EvaluatedPrint evaluated(OnePrint print, Progress progress) throws Problem {
        Evaluator.Result result =
                Evaluator.evaluate(options.request(print.files(), print.said()), progress);
        List<Path> inputs = new ArrayList<>(print.files());
        inputs.addAll(options.files());
        PrintResults.write(
                result,
                options.pages(),
                print.files().get(0),
                new OutputFolder(folder.path().resolve(print.name()), inputs),
                force);
        return EvaluatedPrint.of(print.name(), result.evaluation());
    }

    /** A summary of quite other prints, or somebody's page, is not written over unasked. */
    private void refuseOthers(List<OnePrint> prints) throws Problem {
        Path there = folder.path().resolve(Summary.JSON);
        boolean page = Files.exists(folder.path().resolve(Summary.PAGE));
        if (force || (!Files.exists(there) && !page)) {
            return;
        }
        Set<String> names = new HashSet<>();
        prints.forEach(print -> names.add(print.name()));
        try {
            for (JsonNode old : new ObjectMapper().readTree(there.toFile()).path("prints")) {
                if (names.contains(old.path("name").asText())) {
                    return;
                }
            }
        } catch (IOException e) {
            // Not a summary of ours.
        }
        throw Problem.output(
                folder.path().toString(),
                "holds "
                        + (Files.exists(there) ? "the summary of other prints" : "another page")
                        + ". Name another folder with --out, or write over it with --force.");
    }

    /** A line for each print that failed or was not what its name says. */
    static List<String> complaints(Summary summary) {
        List<String> lines = new ArrayList<>();
        for (Outcome<EvaluatedPrint> outcome : summary.outcomes()) {
            String name = outcome.print().name();
            Outcome.Failure failure = outcome.failure();
            if (failure != null) {
                lines.add(name + ": " + failure.text());
            } else if (!outcome.note().isEmpty()) {
                lines.add(name + ": " + outcome.note() + ".");
            }
        }
        return lines;
    }
}
