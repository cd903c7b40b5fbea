package org.printassay.trend;

import java.time.Instant;

/**
 * One print's value.
 *
 * @param entry number in the logbook
 * @param at when the print was read
 * @param value in the unit of the quantity
 * @param baseline whether the user named this print as part of the baseline
 */
public record Point(long entry, Instant at, double value, boolean baseline) {
    public Point {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("entry " + entry + " has no finite value");
        }
    }
}
