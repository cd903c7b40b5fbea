package org.printassay.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.printassay.check.Check;
import org.printassay.evaluation.Progress;
import org.printassay.prints.CheckSummary;
import org.printassay.prints.CheckedPrint;
import org.printassay.prints.ManyPrints;
import org.printassay.prints.OnePrint;
import org.printassay.problem.Problem;

/** Checks many prints, each into a folder of its own, and sums up. */
final class ManyChecks {
    private final EvaluationOptions options;
    private final CheckedPrints reading;
    private final CheckAgainst against;
    private final OutputFolder folder;
    private final boolean force;

    ManyChecks(
            EvaluationOptions options,
            CheckedPrints reading,
            CheckAgainst against,
            OutputFolder folder,
            boolean force) {
        this.options = options;
        this.reading = reading;
        this.against = against;
        this.folder = folder;
        this.force = force;
    }

    CheckSummary of(ManyInputs inputs) throws Problem {
        SameSummary.refuseOthers(folder.path(), CheckSummary.JSON, inputs.prints(), force);
        CheckSummary summary;
        try (ProgressLine progress =
                new ProgressLine("Checking " + inputs.prints().size() + " prints")) {
            summary =
                    new CheckSummary(
                            against.tolerances(),
                            ManyPrints.run(inputs.prints(), this::checked, progress),
                            inputs.skipped());
        }
        folder.write(summary::write);
        return summary;
    }

    private CheckedPrint checked(OnePrint print, Progress progress) throws Problem {
        Check check = against.check(reading.read(print.files(), print.said(), progress));
        List<Path> inputs = new ArrayList<>(print.files());
        inputs.addAll(options.files());
        CheckResults.write(
                check,
                options.pages(),
                new OutputFolder(folder.path().resolve(print.name()), inputs),
                force);
        return CheckedPrint.of(print.name(), check);
    }
}
