package org.printassay.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.printassay.evaluation.Evaluator;
import org.printassay.evaluation.Progress;
import org.printassay.prints.EvaluatedPrint;
import org.printassay.prints.ManyPrints;
import org.printassay.prints.OnePrint;
import org.printassay.prints.PrintOutcome;
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
        SameSummary.refuseOthers(folder.path(), Summary.JSON, inputs.prints(), force);
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

    /** A line for each print that failed or was not what its name says. */
    static List<String> complaints(List<? extends PrintOutcome<?>> outcomes) {
        List<String> lines = new ArrayList<>();
        for (PrintOutcome<?> outcome : outcomes) {
            String name = outcome.print().name();
            PrintOutcome.Failure failure = outcome.failure();
            if (failure != null) {
                lines.add(name + ": " + failure.text());
            } else if (!outcome.note().isEmpty()) {
                lines.add(name + ": " + outcome.note() + ".");
            }
        }
        return lines;
    }
}
