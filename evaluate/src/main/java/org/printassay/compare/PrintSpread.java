package org.printassay.compare;

import java.util.Map;
import java.util.Optional;

/**
 * How prints of one printer, paper and route differ though nothing changed: standard deviations by
 * figure, from repeats or from a logbook.
 */
public record PrintSpread(Map<Figure, Double> deviations) {
    /** Nothing known. */
    public static final PrintSpread UNKNOWN = new PrintSpread(Map.of());

    public PrintSpread {
        deviations = Map.copyOf(deviations);
        deviations.forEach(
                (figure, deviation) -> {
                    if (!(deviation >= 0 && Double.isFinite(deviation))) {
                        throw new IllegalArgumentException(
                                "spread of " + figure.key() + " is " + deviation);
                    }
                });
    }

    /** Standard deviation between prints; empty when unknown. */
    public Optional<Double> of(Figure figure) {
        return Optional.ofNullable(deviations.get(figure));
    }
}
