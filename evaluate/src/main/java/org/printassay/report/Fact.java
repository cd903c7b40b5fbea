package org.printassay.report;

import org.jspecify.annotations.Nullable;

/**
 * One result in one line.
 *
 * @param label what
 * @param swatch its measured colour; null when it has none
 * @param value the figure with its uncertainty
 * @param sureness how sure, or what goes with it
 */
public record Fact(String label, @Nullable Swatch swatch, String value, String sureness) {
    static Fact of(String label, String value, String sureness) {
        return new Fact(label, null, value, sureness);
    }
}
