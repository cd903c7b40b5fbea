package org.printassay.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Differences between two sides with 95 % intervals.
 *
 * <p>Where there are repeats, their spread is pooled and holds everything that changes from print
 * to print, reading included (two-sample t interval with pooled variance: NIST/SEMATECH e-Handbook
 * of Statistical Methods, 7.3.1). Else the random parts of both readings are combined, with the
 * spread between prints where one is known. Systematic parts cancel where both were read alike;
 * where not, both count in full (ISO/IEC Guide 98-3, 5.2), and the degrees of freedom are those of
 * the sum (G.4, Welch and Satterthwaite).
 */
public final class Differences {
    /** Degrees of freedom from which a spread counts as exact. */
    private static final double MANY = 1e6;

    private Differences() {}

    /**
     * All figures that both sides have, by their own repeats.
     *
     * @param spread between prints that was known beforehand
     * @param readAlike whether systematic parts are the same on both sides
     */
    public static List<Difference> between(
            Side one, Side other, PrintSpread spread, boolean readAlike) {
        return between(one, other, PrintSpread.ofRepeats(List.of(one, other)), spread, readAlike);
    }

    /**
     * All figures that both sides have.
     *
     * @param repeats spread seen among repeats, of these sides and of others
     * @param known spread between prints that was known beforehand
     * @param readAlike whether systematic parts are the same on both sides
     */
    static List<Difference> between(
            Side one, Side other, PrintSpread repeats, PrintSpread known, boolean readAlike) {
        List<Difference> differences = new ArrayList<>();
        for (Figure figure : Figure.values()) {
            of(figure, one.values(figure), other.values(figure), repeats, known, readAlike)
                    .ifPresent(differences::add);
        }
        return differences;
    }

    /**
     * One figure by what each print tells of its own reading alone, whatever repeats say; empty
     * when a side lacks it.
     */
    public static Optional<Difference> ofReading(
            Figure figure, Side one, Side other, boolean readAlike) {
        return of(
                figure,
                one.values(figure),
                other.values(figure),
                PrintSpread.UNKNOWN,
                PrintSpread.UNKNOWN,
                readAlike);
    }

    /** One figure of the figures of each print; empty when a side lacks it. */
    static Optional<Difference> of(
            Figure figure,
            List<FigureValue> first,
            List<FigureValue> second,
            PrintSpread spread,
            boolean readAlike) {
        PrintSpread repeats =
                PrintSpread.pooled(figure, List.of(first, second))
                        .map(PrintSpread.Pooled::spread)
                        .orElse(PrintSpread.UNKNOWN);
        return of(figure, first, second, repeats, spread, readAlike);
    }

    private static Optional<Difference> of(
            Figure figure,
            List<FigureValue> first,
            List<FigureValue> second,
            PrintSpread repeats,
            PrintSpread known,
            boolean readAlike) {
        if (first.isEmpty() || second.isEmpty()) {
            return Optional.empty();
        }
        double shared =
                readAlike ? 0 : Math.hypot(largestSystematic(first), largestSystematic(second));
        PrintSpread all = repeats.and(known);
        Double random = random(first, second, all.of(figure).orElse(null));
        // Without repeats of its own, a known spread may be less than what reading alone adds.
        boolean repeated = repeats.of(figure).isPresent();
        Double reading = reading(first, second);
        if (!repeated && random != null && reading != null) {
            random = Math.max(random, reading);
        }
        Difference.Basis basis =
                repeated
                        ? Difference.Basis.REPEATS
                        : random == null
                                ? Difference.Basis.THESE_PRINTS
                                : Difference.Basis.KNOWN_SPREAD;
        Double standard = random == null ? reading : random;
        Double freedom =
                random == null ? null : all.freedom(figure).map(Integer::doubleValue).orElse(null);
        return Optional.of(
                Difference.of(
                        figure,
                        mean(first),
                        mean(second),
                        standard == null ? null : Double.valueOf(Math.hypot(standard, shared)),
                        effective(standard, freedom, shared),
                        basis));
    }

    /** From how prints differ that are meant to be alike; null when that is not known. */
    private static @Nullable Double random(
            List<FigureValue> first, List<FigureValue> second, @Nullable Double between) {
        return between == null
                ? null
                : Double.valueOf(between * Math.sqrt(1.0 / first.size() + 1.0 / second.size()));
    }

    /** From what one print tells of its own reading; null when one does not. */
    private static @Nullable Double reading(List<FigureValue> first, List<FigureValue> second) {
        double sum = 0;
        for (List<FigureValue> side : List.of(first, second)) {
            for (FigureValue value : side) {
                if (value.random() == null) {
                    return null;
                }
                sum += value.random() * value.random() / ((double) side.size() * side.size());
            }
        }
        return Math.sqrt(sum);
    }

    /**
     * Degrees of freedom when only the random part is told by few; null for so many that Student's
     * distribution is the normal one.
     */
    private static @Nullable Double effective(
            @Nullable Double random, @Nullable Double freedom, double shared) {
        if (random == null || freedom == null || shared == 0) {
            return freedom;
        }
        double ratio = shared / random;
        double all = freedom * Math.pow(1 + ratio * ratio, 2);
        return all < MANY ? Double.valueOf(all) : null;
    }

    private static double mean(List<FigureValue> values) {
        return values.stream().mapToDouble(FigureValue::value).average().orElseThrow();
    }

    private static double largestSystematic(List<FigureValue> values) {
        return values.stream().mapToDouble(FigureValue::systematic).max().orElse(0);
    }
}
