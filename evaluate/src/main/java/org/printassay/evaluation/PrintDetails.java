package org.printassay.evaluation;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What the user says about a print.
 *
 * @param paper name of the paper; null when not said
 * @param printer name of the printer
 * @param route program, profile, rendering intent, driver settings
 * @param driedHours hours between printing and scanning
 * @param scanner name of the scanner
 * @param family paper family
 */
public record PrintDetails(
        @Nullable String paper,
        @Nullable String printer,
        @Nullable String route,
        @Nullable Double driedHours,
        @Nullable String scanner,
        @Nullable String family) {
    /** Nothing said. */
    public static final PrintDetails UNKNOWN = new PrintDetails(null, null, null, null);

    /** Neither scanner nor paper family said. */
    public PrintDetails(
            @Nullable String paper,
            @Nullable String printer,
            @Nullable String route,
            @Nullable Double driedHours) {
        this(paper, printer, route, driedHours, null, null);
    }

    /** A name as it is compared: spaces and capitals make no other one; empty when not said. */
    public static String plain(@Nullable String said) {
        return said == null ? "" : said.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }
}
