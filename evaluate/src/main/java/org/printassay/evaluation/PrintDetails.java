package org.printassay.evaluation;

import org.jspecify.annotations.Nullable;

/**
 * What the user says about a print.
 *
 * @param paper name of the paper; null when not said
 * @param printer name of the printer
 * @param route program, profile, rendering intent, driver settings
 * @param driedHours hours between printing and scanning
 */
public record PrintDetails(
        @Nullable String paper,
        @Nullable String printer,
        @Nullable String route,
        @Nullable Double driedHours) {
    /** Nothing said. */
    public static final PrintDetails UNKNOWN = new PrintDetails(null, null, null, null);
}
