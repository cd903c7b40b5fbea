package org.printassay.check;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiPredicate;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.PrintBand;
import org.printassay.evaluation.PrintLine;
import org.printassay.evaluation.PrintSurface;
import org.printassay.evaluation.SurfaceCause;
import org.printassay.surface.FoundBand;
import org.printassay.surface.FoundLine;

/**
 * Matches lines and bands of two prints by place. The same nozzle meets the same place of the
 * picture again, for a printer prints the same page alike.
 */
final class SurfaceMatch {
    /** Lines nearer to each other than this are one: two placements and the paper's own stretch. */
    private static final double SAME_MM = 1;

    private static final double SAME_PERIOD = 0.1;

    private final ToleranceSet tolerances;

    private SurfaceMatch(ToleranceSet tolerances) {
        this.tolerances = tolerances;
    }

    /** Compares; tolerances may leave out lines, bands or both. */
    static SurfaceChange between(Baseline baseline, Evaluation print, ToleranceSet tolerances) {
        PrintSurface after = print.surface();
        return new SurfaceMatch(tolerances)
                .between(
                        all(baseline, PrintSurface::lines, SurfaceMatch::sameLine),
                        all(baseline, PrintSurface::bands, SurfaceMatch::sameBand),
                        after == null ? null : after.lines(),
                        after == null ? null : after.bands());
    }

    /** What any print of a baseline has, each once; null when none was looked at. */
    private static <T> @Nullable List<T> all(
            Baseline baseline,
            Function<PrintSurface, @Nullable List<T>> part,
            BiPredicate<T, T> same) {
        List<T> all = null;
        for (Evaluation print : baseline.prints()) {
            List<T> own = print.surface() == null ? null : part.apply(print.surface());
            if (own != null) {
                all = all == null ? new ArrayList<>() : all;
                for (T one : own) {
                    if (all.stream().noneMatch(there -> same.test(there, one))) {
                        all.add(one);
                    }
                }
            }
        }
        return all;
    }

    private SurfaceChange between(
            @Nullable List<PrintLine> oldLines,
            @Nullable List<PrintBand> oldBands,
            @Nullable List<PrintLine> lines,
            @Nullable List<PrintBand> bands) {
        boolean compareLines =
                tolerances.lineContrast() != null && oldLines != null && lines != null;
        boolean compareBands =
                tolerances.bandOverThreshold() != null && oldBands != null && bands != null;
        Split<PrintLine> byLine =
                compareLines && oldLines != null && lines != null
                        ? Split.of(oldLines, lines, SurfaceMatch::sameLine)
                        : Split.none();
        Split<PrintBand> byBand =
                compareBands && oldBands != null && bands != null
                        ? Split.of(visible(oldBands), visible(bands), SurfaceMatch::sameBand)
                        : Split.none();
        return new SurfaceChange(
                compareLines,
                byLine.added,
                byLine.kept,
                byLine.gone,
                compareBands,
                byBand.added,
                byBand.kept,
                byBand.gone,
                outcome(byLine.added, byBand.added));
    }

    /** Which are new, were there before, or are gone. */
    private record Split<T>(List<T> added, List<T> kept, List<T> gone) {
        static <T> Split<T> none() {
            return new Split<>(List.of(), List.of(), List.of());
        }

        static <T> Split<T> of(List<T> before, List<T> after, BiPredicate<T, T> same) {
            List<T> added = new ArrayList<>();
            List<T> kept = new ArrayList<>();
            for (T one : after) {
                (before.stream().anyMatch(b -> same.test(b, one)) ? kept : added).add(one);
            }
            List<T> gone =
                    before.stream()
                            .filter(b -> after.stream().noneMatch(a -> same.test(b, a)))
                            .toList();
            return new Split<>(added, kept, gone);
        }
    }

    private static boolean sameLine(PrintLine one, PrintLine other) {
        FoundLine a = one.line();
        FoundLine b = other.line();
        return one.sheet() == other.sheet()
                && a.along() == b.along()
                && a.contrast() > 0 == b.contrast() > 0
                && Math.abs(a.positionMm() - b.positionMm()) <= SAME_MM;
    }

    private static boolean sameBand(PrintBand one, PrintBand other) {
        FoundBand a = one.band();
        FoundBand b = other.band();
        return one.sheet() == other.sheet()
                && a.along() == b.along()
                && Math.abs(a.periodMm() - b.periodMm()) <= SAME_PERIOD * a.periodMm();
    }

    private static List<PrintBand> visible(List<PrintBand> bands) {
        return bands.stream().filter(b -> b.band().visible()).toList();
    }

    private Outcome outcome(List<PrintLine> lines, List<PrintBand> bands) {
        Outcome outcome = Outcome.WITHIN;
        for (PrintLine line : lines) {
            outcome = outcome.or(of(line));
        }
        for (PrintBand band : bands) {
            outcome = outcome.or(of(band));
        }
        return outcome;
    }

    private Outcome of(PrintLine line) {
        Double limit = tolerances.lineContrast();
        boolean beyond = limit != null && Math.abs(line.line().contrast()) >= limit;
        return of(beyond, line.cause());
    }

    private Outcome of(PrintBand band) {
        Double limit = tolerances.bandOverThreshold();
        return of(limit != null && band.band().overThreshold() >= limit, band.cause());
    }

    /** What may be the scanner's is no failure of the print. */
    private static Outcome of(boolean beyond, SurfaceCause cause) {
        return !beyond
                ? Outcome.DRIFTED
                : cause == SurfaceCause.PRINT ? Outcome.FAILED : Outcome.CANNOT_TELL;
    }
}
