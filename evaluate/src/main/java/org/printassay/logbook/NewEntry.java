package org.printassay.logbook;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.printassay.compare.PrintFigures;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.PrintDetails;
import org.printassay.report.EvaluationJson;

/** An addition made ready for the tables, so that the logbook is locked for writing alone. */
record NewEntry(EntryRows.Draft draft, PrintFigures values) {
    static NewEntry of(Addition addition) {
        Evaluation evaluation = addition.evaluation();
        PackedText text = PackedText.of(EvaluationJson.write(evaluation));
        EntryRows.Draft draft =
                new EntryRows.Draft(
                        Identity.of(evaluation, text),
                        Series.of(evaluation.details()),
                        addition.readAt(),
                        Instant.now(),
                        plain(evaluation.chartId()),
                        evaluation.print(),
                        Identity.manner(evaluation),
                        Identity.calibration(evaluation),
                        plain(addition.note()),
                        text);
        return new NewEntry(draft, PrintFigures.of(evaluation));
    }

    private static @Nullable String plain(@Nullable String text) {
        return text == null ? null : PrintDetails.plain(text);
    }
}
