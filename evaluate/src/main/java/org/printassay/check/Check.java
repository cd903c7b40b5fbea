package org.printassay.check;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.compare.Comparability;
import org.printassay.compare.PatchDrift;
import org.printassay.evaluation.Evaluation;

/**
 * One print held against its baseline.
 *
 * @param cautions what readers must know of how the two may be compared
 * @param rule how outcomes were decided
 * @param changes every quantity that both prints have, in the order of {@link Quantity}
 * @param missing quantities of the tolerances that a print lacks
 * @param surface lines and bands
 * @param patches all codes one by one; null when the prints have too few in common
 * @param outcome of everything together
 */
public record Check(
        Evaluation baseline,
        Evaluation print,
        ToleranceSet tolerances,
        List<Comparability.Caution> cautions,
        DecisionRule rule,
        List<Change> changes,
        List<Quantity> missing,
        SurfaceChange surface,
        @Nullable PatchDrift patches,
        Outcome outcome) {
    public Check {
        cautions = List.copyOf(cautions);
        changes = List.copyOf(changes);
        missing = List.copyOf(missing);
    }

    /** One of the changes; empty when it was not compared. */
    public Optional<Change> change(Quantity quantity) {
        return changes.stream().filter(c -> c.quantity() == quantity).findFirst();
    }

    /** Of everything that was looked at. */
    Outcome untilUnlooked() {
        Outcome all = changes.isEmpty() ? Outcome.CANNOT_TELL : surface.found();
        for (Change change : changes) {
            all = all.or(change.outcome());
        }
        return all;
    }

    /** What the print was read from, first file. */
    public String printName() {
        return name(print);
    }

    /** What the baseline was read from, first file. */
    public String baselineName() {
        return name(baseline);
    }

    static String name(Evaluation evaluation) {
        return evaluation.files().isEmpty() ? "evaluation" : evaluation.files().get(0).name();
    }
}
