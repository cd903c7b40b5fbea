package org.printassay.recipe;

import java.util.List;

/**
 * What the sheets of an edited recipe hold.
 *
 * @param title printed on the sheet, 1 to 40 letters, digits and plain signs
 * @param parts in order; at least one
 */
public record Design(String title, List<Part> parts) {
    /** More patches than this in a design are refused. */
    public static final int MOST_PATCHES = 20_000;

    public Design {
        parts = List.copyOf(parts);
    }
}
