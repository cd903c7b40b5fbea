package org.printassay.report.paged;

import org.jspecify.annotations.Nullable;

/**
 * A figure with its name.
 *
 * @param label what
 * @param colour {@code #rrggbb} of a sample shown beside it, or null
 * @param value the figure
 * @param detail what goes with it; may be empty
 */
public record NamedFigure(String label, @Nullable String colour, String value, String detail) {}
