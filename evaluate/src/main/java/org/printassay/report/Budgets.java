package org.printassay.report;

import java.util.List;
import java.util.Map;
import org.printassay.evaluation.Evaluation;
import org.printassay.metric.Budget;

/** The table that says what uncertainties are made of. */
final class Budgets {
    private static final Map<String, String> NAMES =
            Map.of(
                    "white.lab.l", "Paper white, L*",
                    "white.lab.a", "Paper white, a*",
                    "white.lab.b", "Paper white, b*",
                    "black.lab.l", "Deepest black, L*",
                    "black.lab.a", "Deepest black, a*",
                    "black.lab.b", "Deepest black, b*",
                    "tone.rmsDeltaL", "Tone, RMS dL*",
                    "neutrality.cast.a", "Greys, mean da*",
                    "neutrality.cast.b", "Greys, mean db*",
                    "colours.meanDeltaE00", "Colours, mean dE00");

    private Budgets() {}

    static List<ReportView.Budget> rows(Evaluation e) {
        return e.uncertainty().stream().map(Budgets::row).toList();
    }

    private static ReportView.Budget row(Budget budget) {
        return new ReportView.Budget(
                Words.typeset(NAMES.getOrDefault(budget.figure(), budget.figure())),
                Words.number(budget.value(), 2),
                part(budget, Budget.Kind.RANDOM),
                part(budget, Budget.Kind.LIGHT),
                part(budget, Budget.Kind.CALIBRATION),
                part(budget, Budget.Kind.SYSTEMATIC),
                Words.number(budget.halfWidth(), 2));
    }

    /** All parts by the factor of the whole, so that the squares of a line add up. */
    private static String part(Budget budget, Budget.Kind kind) {
        return budget.parts().stream()
                .filter(part -> part.kind() == kind)
                .map(part -> Words.number(budget.coverageFactor() * part.standard(), 2))
                .findFirst()
                .orElse("");
    }
}
