package org.printassay.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.compare.CommonCodes;
import org.printassay.compare.Comparability;
import org.printassay.compare.Differences;
import org.printassay.compare.Figure;
import org.printassay.compare.KnownSpread;
import org.printassay.compare.PatchDrift;
import org.printassay.compare.Readers;
import org.printassay.compare.Side;
import org.printassay.compare.ToneBend;
import org.printassay.compare.WedgeDepth;
import org.printassay.compare.WedgeShift;
import org.printassay.evaluation.Evaluation;
import org.printassay.problem.Problem;

/**
 * Checks a print against a baseline.
 *
 * <p>The uncertainty of a change holds how well all prints were read, and how far unchanged prints
 * lie apart: as stated by the tolerances, added as squares; or as it was seen among prints, which
 * holds the reading too, so the larger of the two counts where all were read alike. Of a baseline
 * of several prints the mean counts, whose own prints lie apart by as much. What is stated by how
 * colour was obtained cancels, since all were read alike.
 */
public final class Checker {
    private final Baseline baseline;
    private final Side before;
    private final Side after;
    private final ToleranceSet tolerances;
    private final KnownSpread seen;
    private final boolean readAlike;

    private Checker(
            Baseline baseline,
            Evaluation print,
            ToleranceSet tolerances,
            KnownSpread seen,
            boolean readAlike) {
        this.baseline = baseline;
        this.before = Side.of("baseline", baseline.prints());
        this.after = Side.of("print", List.of(print));
        this.tolerances = tolerances;
        this.seen = seen;
        this.readAlike = readAlike;
    }

    /**
     * A change before anything is decided.
     *
     * @param freedom of what reading adds; null for many
     * @param looks how many changes it is the largest of
     */
    private record Found(
            Quantity quantity,
            String place,
            @Nullable Double before,
            @Nullable Double after,
            double change,
            @Nullable Double reading,
            @Nullable Integer freedom,
            int looks) {
        static Found between(Quantity quantity, double change, @Nullable Double reading) {
            return new Found(quantity, "", null, null, change, reading, null, 1);
        }
    }

    /** Checks against one print, by what the tolerances state of unchanged prints. */
    public static Check check(Evaluation baseline, Evaluation print, ToleranceSet tolerances)
            throws Problem {
        return check(Baseline.of(baseline), print, tolerances, KnownSpread.NONE);
    }

    /**
     * Checks a print.
     *
     * @param seen how unchanged prints were seen to lie apart, reading included; where it is known
     *     it holds instead of what the tolerances state
     * @throws Problem when the two must not be compared
     */
    public static Check check(
            Baseline baseline, Evaluation print, ToleranceSet tolerances, KnownSpread seen)
            throws Problem {
        Comparability fit = Fitness.judge(baseline, print);
        boolean readAlike = Readers.alikeForCheck(fit, baseline.prints(), print);
        return new Checker(baseline, print, tolerances, seen, readAlike).judge(fit);
    }

    private Check judge(Comparability fit) {
        Evaluation print = after.prints().get(0);
        PatchDrift patches = PatchDrift.between(before, after).orElse(null);
        List<Found> found = new ArrayList<>();
        List<Quantity> missing = new ArrayList<>();
        for (Quantity quantity : tolerances.quantities().keySet()) {
            Optional<Found> change =
                    switch (quantity) {
                        case SHADOW_SHIFT -> shift(quantity, WedgeShift.ofShadows(before, after));
                        case HIGHLIGHT_SHIFT ->
                                shift(quantity, WedgeShift.ofHighlights(before, after));
                        case SHADOW_DEPTH -> depth(quantity, WedgeDepth.ofShadows(before, after));
                        case HIGHLIGHT_DEPTH ->
                                depth(quantity, WedgeDepth.ofHighlights(before, after));
                        case TONE_BEND -> ToneBend.between(before, after).map(Checker::bend);
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
        boolean sound =
                fit.cautions().stream()
                        .noneMatch(c -> c.reason() == Comparability.Reason.SCAN_FAULT);
        List<Change> changes =
                found.stream()
                        .map(f -> decided(decidable(f, patches, rule), rule))
                        .map(change -> sound ? change : change.inDoubt())
                        .toList();
        SurfaceChange surface = SurfaceMatch.between(baseline, print, tolerances);
        return new Check(
                baseline,
                print,
                tolerances,
                seen,
                fit.cautions(),
                rule,
                changes,
                missing,
                surface,
                patches);
    }

    private Optional<Found> figure(Quantity quantity) {
        Figure figure = quantity.figure().orElseThrow();
        List<Evaluation> all = new ArrayList<>(baseline.prints());
        all.addAll(after.prints());
        if (CommonCodes.leftOut(all).contains(figure)) {
            return Optional.empty();
        }
        return Differences.ofReading(figure, before, after, readAlike)
                .map(
                        d ->
                                new Found(
                                        quantity,
                                        "",
                                        d.one(),
                                        d.other(),
                                        d.value(),
                                        d.standard(),
                                        null,
                                        1));
    }

    private static Optional<Found> shift(Quantity quantity, Optional<WedgeShift> shift) {
        return shift.map(s -> Found.between(quantity, s.levels(), s.standard()));
    }

    private static Optional<Found> depth(Quantity quantity, Optional<WedgeDepth> depth) {
        return depth.map(d -> Found.between(quantity, d.deltaL(), d.standard()));
    }

    private static Found bend(ToneBend bend) {
        return new Found(
                Quantity.TONE_BEND,
                "around level " + bend.level(),
                null,
                null,
                bend.deltaL(),
                bend.standard(),
                bend.freedom(),
                bend.looks());
    }

    private static Optional<Found> drift(@Nullable PatchDrift patches) {
        return Optional.ofNullable(patches)
                .map(p -> Found.between(Quantity.MEAN_DRIFT, p.drift(), null));
    }

    /** Without twins the noise that drift is cleared of is only supposed. */
    private static Found decidable(Found found, @Nullable PatchDrift patches, DecisionRule rule) {
        return found.quantity != Quantity.MEAN_DRIFT || patches == null || !patches.noiseKnown()
                ? found
                : Found.between(
                        found.quantity,
                        found.change,
                        patches.halfWidth(rule.factor()) / rule.factor());
    }

    private Change decided(Found found, DecisionRule rule) {
        Tolerance tolerance = tolerances.of(found.quantity).orElseThrow();
        double from = found.before == null ? 0 : found.before;
        Optional<Figure> figure = found.quantity.figure();
        Double known = figure.flatMap(seen.spread()::of).orElse(null);
        double spread = known == null ? tolerance.spreadAround(from) : known;
        double limit = tolerance.limitFrom(from);
        Double standard = standard(found.reading, spread, known != null);
        Integer freedom =
                known == null ? found.freedom : figure.flatMap(seen.spread()::freedom).orElse(null);
        Double u = rule.halfWidth(standard, freedom, found.looks);
        return new Change(
                found.quantity,
                found.place,
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

    private @Nullable Double standard(@Nullable Double reading, double spread, boolean spreadSeen) {
        double apart = spread * Math.sqrt(1 + 1.0 / baseline.prints().size());
        if (reading == null) {
            return spreadSeen ? Double.valueOf(apart) : null;
        }
        return spreadSeen && readAlike ? Math.max(reading, apart) : Math.hypot(reading, apart);
    }
}
