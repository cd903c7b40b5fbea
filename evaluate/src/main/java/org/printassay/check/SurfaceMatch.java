package org.printassay.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleBiFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.PrintBand;
import org.printassay.evaluation.PrintLine;
import org.printassay.evaluation.PrintSurface;
import org.printassay.reading.WarningCode;
import org.printassay.sheet.Section;
import org.printassay.surface.FoundBand;
import org.printassay.surface.FoundLine;

/**
 * Matches lines and bands of two prints by place, one to one, nearest first. The same nozzle meets
 * the same place of the picture again, for a printer prints the same page alike.
 */
final class SurfaceMatch {
    /** Lines nearer to each other than this are one: two placements and the paper's own stretch. */
    private static final double SAME_MM = 1;

    private static final double SAME_PERIOD = 0.1;

    private final ToleranceSet tolerances;
    private final SurfaceGrowth growth;

    private SurfaceMatch(ToleranceSet tolerances) {
        this.tolerances = tolerances;
        this.growth = new SurfaceGrowth(tolerances);
    }

    /** Compares; tolerances may leave out lines, bands or both. */
    static SurfaceChange between(Baseline baseline, Evaluation print, ToleranceSet tolerances) {
        PrintSurface after = print.surface();
        boolean tints =
                Stream.concat(baseline.prints().stream(), Stream.of(print))
                        .anyMatch(SurfaceMatch::hasTints);
        boolean whole =
                !leavesOut(print) && baseline.prints().stream().anyMatch(one -> !leavesOut(one));
        return new SurfaceMatch(tolerances)
                .between(
                        all(
                                baseline,
                                PrintSurface::lines,
                                SurfaceMatch::apart,
                                line -> line.line().strength()),
                        all(
                                baseline,
                                PrintSurface::bands,
                                SurfaceMatch::apart,
                                band -> band.band().overThreshold()),
                        after == null ? null : after.lines(),
                        after == null ? null : after.bands(),
                        tints,
                        whole);
    }

    /**
     * What any print of a baseline has, each once and as strong as in any; null when none was
     * looked at.
     */
    private static <T> @Nullable List<T> all(
            Baseline baseline,
            Function<PrintSurface, @Nullable List<T>> part,
            ToDoubleBiFunction<T, T> apart,
            ToDoubleFunction<T> strength) {
        List<T> all = null;
        for (Evaluation print : baseline.prints()) {
            List<T> own = print.surface() == null ? null : part.apply(print.surface());
            if (own != null) {
                List<T> there = all == null ? List.of() : all;
                Split<T> split = Split.of(there, own, apart, (a, b) -> Outcome.WITHIN);
                all = new ArrayList<>(split.gone);
                all.addAll(split.added);
                for (Grown<T> pair : split.same) {
                    boolean grown =
                            strength.applyAsDouble(pair.after())
                                    > strength.applyAsDouble(pair.before());
                    all.add(grown ? pair.after() : pair.before());
                }
            }
        }
        return all;
    }

    /** Whether a scan could have told lines and bands. */
    private static boolean hasTints(Evaluation print) {
        return print.fromScan()
                && print.patches().stream()
                        .anyMatch(p -> p.section().equals(Optional.of(Section.TINTS)));
    }

    /** Whether lines were not looked for at all, or not on every sheet. */
    private static boolean leavesOut(Evaluation print) {
        return print.warnings().stream().anyMatch(w -> w.code() == WarningCode.LINES_NOT_JUDGED);
    }

    /**
     * Compares.
     *
     * @param tints whether a sheet has tints that could have told
     * @param whole whether nothing was left out in the prints that were looked at
     */
    private SurfaceChange between(
            @Nullable List<PrintLine> oldLines,
            @Nullable List<PrintBand> oldBands,
            @Nullable List<PrintLine> lines,
            @Nullable List<PrintBand> bands,
            boolean tints,
            boolean whole) {
        Split<PrintLine> byLine = Split.none();
        Split<PrintBand> byBand = Split.none();
        boolean compareLines =
                tolerances.lineContrast() != null && oldLines != null && lines != null;
        if (compareLines && oldLines != null && lines != null) {
            byLine = Split.of(oldLines, lines, SurfaceMatch::apart, growth::grown);
        }
        boolean compareBands =
                tolerances.bandOverThreshold() != null && oldBands != null && bands != null;
        if (compareBands && oldBands != null && bands != null) {
            // Bands that are not seen are matched too: at the threshold a band may be seen in one
            // print alone and be the same.
            byBand =
                    Split.of(oldBands, bands, SurfaceMatch::apart, growth::grown)
                            .seen(b -> b.band().visible());
        }
        List<String> unlooked = new ArrayList<>();
        if (tints && tolerances.lineContrast() != null && !(compareLines && whole)) {
            unlooked.add("lines");
        }
        if (tints && tolerances.bandOverThreshold() != null && !(compareBands && whole)) {
            unlooked.add("bands");
        }
        return new SurfaceChange(
                compareLines,
                byLine.added,
                byLine.worse,
                byLine.kept(),
                byLine.gone,
                compareBands,
                byBand.added,
                byBand.worse,
                byBand.kept(),
                byBand.gone,
                unlooked,
                byLine.outcome(growth::added).or(byBand.outcome(growth::added)));
    }

    /** Which are new, were there before and are stronger or are not, or are gone. */
    private record Split<T>(
            List<T> added, List<Grown<T>> worse, List<Grown<T>> same, List<T> gone) {
        static <T> Split<T> none() {
            return new Split<>(List.of(), List.of(), List.of(), List.of());
        }

        /** What is told of those that are seen; what is not seen any more is gone. */
        Split<T> seen(Predicate<T> visible) {
            List<T> away = new ArrayList<>(gone.stream().filter(visible).toList());
            for (Grown<T> pair : same) {
                if (visible.test(pair.before()) && !visible.test(pair.after())) {
                    away.add(pair.before());
                }
            }
            return new Split<>(
                    added.stream().filter(visible).toList(),
                    worse.stream().filter(pair -> visible.test(pair.after())).toList(),
                    same.stream().filter(pair -> visible.test(pair.after())).toList(),
                    away);
        }

        /**
         * Pairs.
         *
         * @param apart how far two are apart, 1 being the furthest that may be one; NaN when they
         *     are of different kinds
         */
        static <T> Split<T> of(
                List<T> before,
                List<T> after,
                ToDoubleBiFunction<T, T> apart,
                BiFunction<T, T, Outcome> grown) {
            record Near(int one, int other, double apart) {}
            List<Near> near = new ArrayList<>();
            for (int i = 0; i < before.size(); i++) {
                for (int k = 0; k < after.size(); k++) {
                    double distance = apart.applyAsDouble(before.get(i), after.get(k));
                    if (distance <= 1) {
                        near.add(new Near(i, k, distance));
                    }
                }
            }
            near.sort(Comparator.comparingDouble(Near::apart));
            Set<Integer> paired = new HashSet<>();
            Set<Integer> known = new HashSet<>();
            List<Grown<T>> worse = new ArrayList<>();
            List<Grown<T>> same = new ArrayList<>();
            for (Near pair : near) {
                if (paired.contains(pair.one) || known.contains(pair.other)) {
                    continue;
                }
                paired.add(pair.one);
                known.add(pair.other);
                T one = before.get(pair.one);
                T other = after.get(pair.other);
                Outcome outcome = grown.apply(one, other);
                (outcome == Outcome.WITHIN ? same : worse).add(new Grown<>(one, other, outcome));
            }
            return new Split<>(left(after, known), worse, same, left(before, paired));
        }

        private static <T> List<T> left(List<T> all, Set<Integer> taken) {
            List<T> left = new ArrayList<>();
            for (int i = 0; i < all.size(); i++) {
                if (!taken.contains(i)) {
                    left.add(all.get(i));
                }
            }
            return left;
        }

        List<T> kept() {
            return same.stream().map(Grown::after).toList();
        }

        Outcome outcome(Function<T, Outcome> ofNew) {
            Outcome outcome = Outcome.WITHIN;
            for (T one : added) {
                outcome = outcome.or(ofNew.apply(one));
            }
            for (Grown<T> one : worse) {
                outcome = outcome.or(one.outcome());
            }
            return outcome;
        }
    }

    private static double apart(PrintLine one, PrintLine other) {
        FoundLine a = one.line();
        FoundLine b = other.line();
        boolean alike =
                one.sheet() == other.sheet()
                        && a.along() == b.along()
                        && a.contrast() > 0 == b.contrast() > 0;
        return alike ? Math.abs(a.positionMm() - b.positionMm()) / SAME_MM : Double.NaN;
    }

    private static double apart(PrintBand one, PrintBand other) {
        FoundBand a = one.band();
        FoundBand b = other.band();
        boolean alike = one.sheet() == other.sheet() && a.along() == b.along();
        return alike
                ? Math.abs(a.periodMm() - b.periodMm()) / (SAME_PERIOD * a.periodMm())
                : Double.NaN;
    }
}
