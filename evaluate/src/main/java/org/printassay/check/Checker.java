package org.printassay.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.compare.CommonCodes;
import org.printassay.compare.Comparability;
import org.printassay.compare.Difference;
import org.printassay.compare.Differences;
import org.printassay.compare.Figure;
import org.printassay.compare.PatchDrift;
import org.printassay.compare.PrintSpread;
import org.printassay.compare.Readers;
import org.printassay.compare.Side;
import org.printassay.compare.WedgeDepth;
import org.printassay.compare.WedgeShift;
import org.printassay.evaluation.Evaluation;
import org.printassay.problem.Problem;

/**
 * Checks a print against a baseline.
 *
 * <p>The uncertainty of a change holds how well both prints were read, and how far unchanged prints
 * lie apart: as stated by the tolerances, added as squares; or as it was seen among prints, which
 * holds the reading too, so the larger of the two counts. What is stated by how colour was obtained
 * cancels, since both were read alike.
 */
public final class Checker {
    private final Side before;
    private final Side after;
    private final ToleranceSet tolerances;
    private final PrintSpread seen;
    private final boolean readAlike;

    private Checker(
            Evaluation baseline,
            Evaluation print,
            ToleranceSet tolerances,
            PrintSpread seen,
            boolean readAlike) {
        this.before = Side.of("baseline", List.of(baseline));
        this.after = Side.of("print", List.of(print));
        this.tolerances = tolerances;
        this.seen = seen;
        this.readAlike = readAlike;
    }

    /** A change before anything is decided. */
    private record Found(
            Quantity quantity,
            @Nullable Double before,
            @Nullable Double after,
            double change,
            @Nullable Double reading) {}

    /** Checks by what the tolerances state of unchanged prints. */
    public static Check check(Evaluation baseline, Evaluation print, ToleranceSet tolerances)
            throws Problem {
        return check(baseline, print, tolerances, PrintSpread.UNKNOWN);
    }

    /**
     * Checks a print.
     *
     * @param seen how unchanged prints were seen to lie apart, reading included; where it is known
     *     it holds instead of what the tolerances state
     * @throws Problem when the two must not be compared
     */
    public static Check check(
            Evaluation baseline, Evaluation print, ToleranceSet tolerances, PrintSpread seen)
            throws Problem {
        Comparability fit = Fitness.judge(baseline, print);
        Checker checker =
                new Checker(
                        baseline,
                        print,
                        tolerances,
                        seen,
                        Readers.alikeForCheck(fit, baseline, print));
        return checker.judge(fit);
    }

    private Check judge(Comparability fit) {
        Evaluation baseline = before.prints().get(0);
        Evaluation print = after.prints().get(0);
        PatchDrift patches = PatchDrift.between(baseline, print).orElse(null);
        List<Found> found = new ArrayList<>();
        List<Quantity> missing = new ArrayList<>();
        for (Quantity quantity : tolerances.quantities().keySet()) {
            Optional<Found> change =
                    switch (quantity) {
                        case SHADOW_SHIFT -> shift(quantity, WedgeShift.ofShadows(baseline, print));
                        case HIGHLIGHT_SHIFT ->
                                shift(quantity, WedgeShift.ofHighlights(baseline, print));
                        case SHADOW_DEPTH -> depth(quantity, WedgeDepth.ofShadows(baseline, print));
                        case HIGHLIGHT_DEPTH ->
                                depth(quantity, WedgeDepth.ofHighlights(baseline, print));
                        case MEAN_DRIFT -> drift(patches);
                        default -> figure(quantity);
                    };
            change.ifPresentOrElse(found::add, () -> missing.add(quantity));
        }
        if (found.stream().anyMatch(f -> f.quantity == Quantity.BLACK_L)) {
            // The same black, once against perfect white and once against paper.
            found.removeIf(f -> f.quantity == Quantity.BLACK_RELATIVE_L);
        }
        DecisionRule rule = DecisionRule.of(tolerances.falseAlarms(), found.size());
        List<Change> changes =
                found.stream().map(f -> decided(decidable(f, patches, rule), rule)).toList();
        SurfaceChange surface = SurfaceMatch.between(baseline, print, tolerances);
        Outcome outcome = surface.outcome();
        for (Change change : changes) {
            outcome = outcome.or(change.outcome());
        }
        if (changes.isEmpty()) {
            outcome = Outcome.CANNOT_TELL;
        }
        return new Check(
                baseline,
                print,
                tolerances,
                fit.cautions(),
                rule,
                changes,
                missing,
                surface,
                patches,
                outcome);
    }

    private Optional<Found> figure(Quantity quantity) {
        Figure figure = quantity.figure().orElseThrow();
        if (CommonCodes.leftOut(List.of(before.prints().get(0), after.prints().get(0)))
                .contains(figure)) {
            return Optional.empty();
        }
        Optional<Difference> difference =
                Differences.of(figure, before, after, PrintSpread.UNKNOWN, readAlike);
        return difference.map(
                d -> new Found(quantity, d.one(), d.other(), d.value(), d.standard()));
    }

    private static Optional<Found> shift(Quantity quantity, Optional<WedgeShift> shift) {
        return shift.map(s -> new Found(quantity, null, null, s.levels(), s.standard()));
    }

    private static Optional<Found> depth(Quantity quantity, Optional<WedgeDepth> depth) {
        return depth.map(d -> new Found(quantity, null, null, d.deltaL(), d.standard()));
    }

    private static Optional<Found> drift(@Nullable PatchDrift patches) {
        return Optional.ofNullable(patches)
                .map(p -> new Found(Quantity.MEAN_DRIFT, null, null, p.drift(), null));
    }

    /** Without twins the noise that drift is cleared of is only supposed. */
    private static Found decidable(Found found, @Nullable PatchDrift patches, DecisionRule rule) {
        return found.quantity != Quantity.MEAN_DRIFT || patches == null || !patches.noiseKnown()
                ? found
                : new Found(
                        found.quantity,
                        null,
                        null,
                        found.change,
                        patches.halfWidth(rule.factor()) / rule.factor());
    }

    private Change decided(Found found, DecisionRule rule) {
        Tolerance tolerance = tolerances.of(found.quantity).orElseThrow();
        double from = found.before == null ? 0 : found.before;
        Double known = found.quantity.figure().flatMap(seen::of).orElse(null);
        double spread = known == null ? tolerance.spreadAround(from) : known;
        double limit = tolerance.limitFrom(from);
        Double standard = standard(found.reading, spread, known != null);
        Integer freedom =
                known == null ? null : found.quantity.figure().flatMap(seen::freedom).orElse(null);
        Double u = rule.halfWidth(standard, freedom);
        return new Change(
                found.quantity,
                found.before,
                found.after,
                found.change,
                standard,
                u,
                limit,
                spread,
                known != null,
                DecisionRule.decide(found.change, u, limit));
    }

    private static @Nullable Double standard(
            @Nullable Double reading, double spread, boolean spreadSeen) {
        double apart = Math.sqrt(2) * spread;
        if (reading == null) {
            return spreadSeen ? Double.valueOf(apart) : null;
        }
        return spreadSeen ? Math.max(reading, apart) : Math.hypot(reading, apart);
    }
}
