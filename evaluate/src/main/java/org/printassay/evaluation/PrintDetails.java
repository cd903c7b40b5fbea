package org.printassay.evaluation;

import java.text.Normalizer;
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

    /**
     * What makes names the same: capitals, spaces, control characters and how letters are composed
     * (Unicode normalisation form C) do not matter. Empty for what was not said.
     */
    public static String key(@Nullable String name) {
        return plain(name).toLowerCase(Locale.ROOT);
    }

    /** Whether two names that people typed mean the same. */
    public static boolean same(@Nullable String one, @Nullable String other) {
        return key(one).equals(key(other));
    }

    /** A name as it is kept: as {@link #key}, with its capitals. */
    public static String plain(@Nullable String name) {
        if (name == null) {
            return "";
        }
        String spaced = name.replaceAll("[\\p{Cc}\\p{Cs}\\s]+", " ").strip();
        return Normalizer.normalize(spaced, Normalizer.Form.NFC);
    }

    /** Neither scanner nor paper family said. */
    public PrintDetails(
            @Nullable String paper,
            @Nullable String printer,
            @Nullable String route,
            @Nullable Double driedHours) {
        this(paper, printer, route, driedHours, null, null);
    }
}
