package org.printassay.check;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.surface.FoundLine;

/**
 * Tolerances under a name. Numbers of ours are common practice without a source; none of them
 * claims that a print conforms to a standard.
 *
 * @param name for readers
 * @param about what it is for
 * @param falseAlarms chance, 0 to 1, that any of all quantities of an unchanged print seems changed
 * @param quantities what is allowed of each; a quantity that is not there is not looked at
 * @param lineContrast a new line of at least this contrast (dR/R, {@link FoundLine#seenContrast})
 *     fails; null when lines are not looked at
 * @param bandOverThreshold a new band of at least this modulation, 1 being just visible, fails;
 *     null when bands are not looked at
 */
public record ToleranceSet(
        String name,
        String about,
        double falseAlarms,
        Map<Quantity, Tolerance> quantities,
        @Nullable Double lineContrast,
        @Nullable Double bandOverThreshold) {
    public ToleranceSet {
        if (!(falseAlarms > 0 && falseAlarms <= 0.5)) {
            throw new IllegalArgumentException("false alarms of " + falseAlarms);
        }
        Map<Quantity, Tolerance> ordered = new EnumMap<>(Quantity.class);
        ordered.putAll(quantities);
        quantities = Collections.unmodifiableMap(ordered);
    }

    /** What is allowed of a quantity; empty when it is not looked at. */
    public Optional<Tolerance> of(Quantity quantity) {
        return Optional.ofNullable(quantities.get(quantity));
    }
}
