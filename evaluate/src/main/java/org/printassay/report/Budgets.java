package org.printassay.report;

import static java.util.Map.entry;

import java.util.List;
import java.util.Map;
import org.printassay.evaluation.Evaluation;
import org.printassay.metric.Budget;

/** The table that says what uncertainties are made of. */
final class Budgets {
    private static final Map<String, String> NAMES =
            Map.ofEntries(
                    entry("white.lab.l", "Paper white, L*"),
                    entry("white.lab.a", "Paper white, a*"),
                    entry("white.lab.b", "Paper white, b*"),
                    entry("black.lab.l", "Deepest black, L*"),
                    entry("black.lab.a", "Deepest black, a*"),
                    entry("black.lab.b", "Deepest black, b*"),
                    entry("tone.rmsDeltaL", "Tone, RMS dL*"),
                    entry("neutrality.cast.a", "Greys, mean da*"),
                    entry("neutrality.cast.b", "Greys, mean db*"),
                    entry("colours.meanDeltaE00", "Colours, mean dE00"),
                    entry("colours.gamutVolume", "Gamut volume"),
                    entry("white.density", "Paper white, density"),
                    entry("black.density", "Dmax"),
                    entry("shadows.firstVisible", "First level told from black"),
                    entry("highlights.lastVisible", "Last level told from paper"),
                    entry("evenness.maxDeltaE00", "Largest between equal patches, dE00"),
                    entry("evenness.gradient.overSheet", "Lightness over the sheet, L*"));

    private Budgets() {}

    static List<ReportView.Budget> rows(Evaluation e) {
        return e.uncertainty().stream().map(Budgets::row).toList();
    }

    private static ReportView.Budget row(Budget budget) {
        return new ReportView.Budget(
                Words.typeset(NAMES.getOrDefault(budget.figure(), budget.figure())),
                budget.unit().equals("level")
                        ? Words.number(budget.value(), 0)
                        : shown(budget, budget.value()),
                part(budget, Budget.Kind.RANDOM),
                part(budget, Budget.Kind.LIGHT),
                part(budget, Budget.Kind.CALIBRATION),
                part(budget, Budget.Kind.SYSTEMATIC),
                shown(budget, budget.halfWidth()));
    }

    /** All parts by the factor of the whole, so that the squares of a line add up. */
    private static String part(Budget budget, Budget.Kind kind) {
        return budget.parts().stream()
                .filter(part -> part.kind() == kind)
                .map(part -> shown(budget, budget.coverageFactor() * part.standard()))
                .findFirst()
                .orElse("");
    }

    private static String shown(Budget budget, double value) {
        return budget.value() > 1000 ? Parts.grouped(value) : Words.number(value, 2);
    }
}
