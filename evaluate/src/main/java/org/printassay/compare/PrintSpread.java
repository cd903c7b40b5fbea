package org.printassay.compare;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * How prints of one printer, paper and route differ though nothing changed: standard deviations by
 * figure, from repeats or from a logbook, with how many repeats tell them.
 *
 * @param deviations standard deviation between prints, in the figure's unit
 * @param freedoms degrees of freedom of each deviation; a figure that is missing here is known from
 *     so many prints that it counts as exact
 */
public record PrintSpread(Map<Figure, Double> deviations, Map<Figure, Integer> freedoms) {
    /** Standard deviation of a number that was rounded to whole ones. */
    static final double ROUNDED = Math.sqrt(1 / 12.0);

    /** Nothing known. */
    public static final PrintSpread UNKNOWN = new PrintSpread(Map.of());

    public PrintSpread {
        deviations = Map.copyOf(deviations);
        freedoms = Map.copyOf(freedoms);
        deviations.forEach(
                (figure, deviation) -> {
                    if (!(deviation >= 0 && Double.isFinite(deviation))) {
                        throw new IllegalArgumentException(
                                "spread of " + figure.key() + " is " + deviation);
                    }
                });
        freedoms.forEach(
                (figure, freedom) -> {
                    if (freedom < 1) {
                        throw new IllegalArgumentException(
                                "spread of " + figure.key() + " has freedom " + freedom);
                    }
                });
    }

    /** Deviations that are known from many prints. */
    public PrintSpread(Map<Figure, Double> deviations) {
        this(deviations, Map.of());
    }

    /** Standard deviation between prints; empty when unknown. */
    public Optional<Double> of(Figure figure) {
        return Optional.ofNullable(deviations.get(figure));
    }

    /** Degrees of freedom of it; empty for many, or when it is unknown. */
    public Optional<Integer> freedom(Figure figure) {
        return Optional.ofNullable(freedoms.get(figure));
    }

    /**
     * What repeats on any number of sides tell, pooled: sums of squares about each side's own mean
     * over all degrees of freedom (NIST/SEMATECH e-Handbook of Statistical Methods, 7.3.1 for two
     * sides, 7.4.3 for more). Takes prints on all sides to spread alike.
     */
    public static PrintSpread ofRepeats(List<Side> sides) {
        Map<Figure, Double> deviations = new EnumMap<>(Figure.class);
        Map<Figure, Integer> freedoms = new EnumMap<>(Figure.class);
        for (Figure figure : Figure.values()) {
            pooled(figure, sides.stream().map(side -> side.values(figure)).toList())
                    .ifPresent(
                            pooled -> {
                                deviations.put(figure, pooled.deviation());
                                freedoms.put(figure, pooled.freedom());
                            });
        }
        return new PrintSpread(deviations, freedoms);
    }

    /** A pooled standard deviation. */
    record Pooled(Figure figure, double deviation, int freedom) {
        PrintSpread spread() {
            return new PrintSpread(Map.of(figure, deviation), Map.of(figure, freedom));
        }
    }

    /** Pools the values of one figure; empty without repeats. */
    static Optional<Pooled> pooled(Figure figure, List<List<FigureValue>> sides) {
        double squares = 0;
        int freedom = 0;
        for (List<FigureValue> values : sides) {
            double mean = values.stream().mapToDouble(FigureValue::value).average().orElse(0);
            squares += values.stream().mapToDouble(v -> Math.pow(v.value() - mean, 2)).sum();
            freedom += Math.max(0, values.size() - 1);
        }
        // Repeats may agree by chance to the last digit; no less than its rounding is known.
        double least = ROUNDED * figure.step();
        return freedom == 0
                ? Optional.empty()
                : Optional.of(
                        new Pooled(figure, Math.max(Math.sqrt(squares / freedom), least), freedom));
    }

    /**
     * Both together: weighted by their degrees of freedom; one that is known from many prints
     * stands by itself.
     */
    public PrintSpread and(PrintSpread other) {
        Map<Figure, Double> deviations = new EnumMap<>(Figure.class);
        Map<Figure, Integer> freedoms = new EnumMap<>(Figure.class);
        for (Figure figure : Figure.values()) {
            Double mine = this.deviations.get(figure);
            Double its = other.deviations.get(figure);
            Integer freedom = this.freedoms.get(figure);
            Integer itsFreedom = other.freedoms.get(figure);
            if (mine != null && (its == null || freedom == null)) {
                deviations.put(figure, mine);
                put(freedoms, figure, freedom);
            } else if (its != null && (mine == null || itsFreedom == null)) {
                deviations.put(figure, its);
                put(freedoms, figure, itsFreedom);
            } else if (mine != null && its != null && freedom != null && itsFreedom != null) {
                int all = freedom + itsFreedom;
                deviations.put(
                        figure, Math.sqrt((freedom * mine * mine + itsFreedom * its * its) / all));
                freedoms.put(figure, all);
            }
        }
        return new PrintSpread(deviations, freedoms);
    }

    private static void put(
            Map<Figure, Integer> freedoms, Figure figure, @Nullable Integer freedom) {
        if (freedom != null) {
            freedoms.put(figure, freedom);
        }
    }
}
