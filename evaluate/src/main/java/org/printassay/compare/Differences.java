package org.printassay.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.TDistribution;
import org.jspecify.annotations.Nullable;

/**
 * Differences between two sides with 95 % intervals.
 *
 * <p>Where a side has repeats, their spread is pooled and holds everything that changes from print
 * to print, reading included (two-sample t interval with pooled variance: NIST/SEMATECH e-Handbook
 * of Statistical Methods, 7.3.1). Else the random parts of both readings are combined, with the
 * spread between prints where one is known. Systematic parts cancel where both were read alike;
 * where not, both count in full (ISO/IEC Guide 98-3, 5.2).
 */
public final class Differences {
    private static final double NORMAL_95 = 1.96;

    private Differences() {}

    /**
     * All figures that both sides have.
     *
     * @param spread between prints where there are no repeats
     * @param readAlike whether systematic parts are the same on both sides
     */
    public static List<Difference> between(
            Side one, Side other, PrintSpread spread, boolean readAlike) {
        List<Difference> differences = new ArrayList<>();
        for (Figure figure : Figure.values()) {
            of(figure, one, other, spread, readAlike).ifPresent(differences::add);
        }
        return differences;
    }

    /** One figure; empty when a side lacks it. */
    public static Optional<Difference> of(
            Figure figure, Side one, Side other, PrintSpread spread, boolean readAlike) {
        return of(figure, one.values(figure), other.values(figure), spread, readAlike);
    }

    /** As above, of the figure of each print. */
    static Optional<Difference> of(
            Figure figure,
            List<FigureValue> first,
            List<FigureValue> second,
            PrintSpread spread,
            boolean readAlike) {
        if (first.isEmpty() || second.isEmpty()) {
            return Optional.empty();
        }
        double shared =
                readAlike ? 0 : Math.hypot(largestSystematic(first), largestSystematic(second));
        int freedom = first.size() + second.size() - 2;
        double shares = 1.0 / first.size() + 1.0 / second.size();
        if (freedom > 0) {
            double variance = (squares(first) + squares(second)) / freedom;
            double deviation = Math.max(Math.sqrt(variance), rounding(figure));
            return Optional.of(
                    difference(
                            figure,
                            first,
                            second,
                            deviation * Math.sqrt(shares),
                            student(freedom),
                            shared,
                            Difference.Basis.REPEATS));
        }
        Double between = spread.of(figure).orElse(null);
        Double random = random(first.get(0), second.get(0), between);
        return Optional.of(
                difference(
                        figure,
                        first,
                        second,
                        random,
                        NORMAL_95,
                        shared,
                        between == null
                                ? Difference.Basis.THESE_PRINTS
                                : Difference.Basis.KNOWN_SPREAD));
    }

    /** Repeats may agree by chance to the last whole number; no less than its rounding is known. */
    private static double rounding(Figure figure) {
        return figure.decimals() == 0 && !figure.key().contains("chroma") ? 0.29 : 0;
    }

    private static @Nullable Double random(
            FigureValue one, FigureValue other, @Nullable Double between) {
        if (one.random() == null || other.random() == null) {
            // A spread seen between prints holds what reading adds.
            return between == null ? null : Double.valueOf(Math.sqrt(2) * between);
        }
        double reading = Math.hypot(one.random(), other.random());
        return between == null ? reading : Math.max(reading, Math.sqrt(2) * between);
    }

    private static Difference difference(
            Figure figure,
            List<FigureValue> first,
            List<FigureValue> second,
            @Nullable Double random,
            double factor,
            double shared,
            Difference.Basis basis) {
        Double standard = random == null ? null : Double.valueOf(Math.hypot(random, shared));
        Double halfWidth =
                random == null
                        ? null
                        : Double.valueOf(Math.hypot(factor * random, NORMAL_95 * shared));
        return new Difference(figure, mean(first), mean(second), standard, halfWidth, basis);
    }

    private static double student(int freedom) {
        return new TDistribution(null, freedom).inverseCumulativeProbability(0.975);
    }

    private static double mean(List<FigureValue> values) {
        return values.stream().mapToDouble(FigureValue::value).average().orElseThrow();
    }

    private static double squares(List<FigureValue> values) {
        double mean = mean(values);
        return values.stream().mapToDouble(v -> Math.pow(v.value() - mean, 2)).sum();
    }

    private static double largestSystematic(List<FigureValue> values) {
        return values.stream().mapToDouble(FigureValue::systematic).max().orElse(0);
    }
}
