package org.printassay.check;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.printassay.compare.Comparability;
import org.printassay.compare.KnownSpread;
import org.printassay.compare.PatchDrift;
import org.printassay.compare.PrintLabel;
import org.printassay.evaluation.Evaluation;
import org.printassay.sheet.Section;

/**
 * One print held against its baseline.
 *
 * @param seen how unchanged prints were seen to lie apart; {@link KnownSpread#NONE} where the
 *     tolerances state all
 * @param cautions what readers must know of how the two may be compared
 * @param rule how outcomes were decided
 * @param changes every quantity that both prints have, in the order of {@link Quantity}
 * @param missing quantities of the tolerances that a print lacks
 * @param surface lines and bands
 * @param patches all codes one by one; null when the prints have too few in common
 */
public record Check(
        Baseline baseline,
        Evaluation print,
        ToleranceSet tolerances,
        KnownSpread seen,
        List<Comparability.Caution> cautions,
        DecisionRule rule,
        List<Change> changes,
        List<Quantity> missing,
        SurfaceChange surface,
        @Nullable PatchDrift patches) {
    public Check {
        cautions = List.copyOf(cautions);
        changes = List.copyOf(changes);
        missing = List.copyOf(missing);
    }

    /** One of the changes; empty when it was not compared. */
    public Optional<Change> change(Quantity quantity) {
        return changes.stream().filter(c -> c.quantity() == quantity).findFirst();
    }

    /** Of everything together: what tints could have told and nobody looked at cannot be told. */
    public Outcome outcome() {
        return untilUnlooked().or(surface.outcome());
    }

    /**
     * Of everything that was looked at. Where none of the quantities could be compared, lines and
     * bands can fail a print, and not pass it.
     */
    Outcome untilUnlooked() {
        Outcome all = surface.found();
        if (changes.isEmpty()) {
            all = all.or(Outcome.CANNOT_TELL);
        }
        for (Change change : changes) {
            all = all.or(change.outcome());
        }
        return all;
    }

    /** What the print was read from, first file. */
    public String printName() {
        return PrintLabel.byFile(print);
    }

    /** What it was held against. */
    public String baselineName() {
        return baseline.name();
    }

    /** Whether any of the sheets has tints, on which lines can be looked for. */
    public boolean hasTints() {
        return Stream.concat(baseline.prints().stream(), Stream.of(print))
                .flatMap(one -> one.patches().stream())
                .anyMatch(patch -> patch.section().equals(Optional.of(Section.TINTS)));
    }
}
