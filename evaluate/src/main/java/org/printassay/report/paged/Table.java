package org.printassay.report.paged;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Rows of cells under heads; the first cell of a row names it.
 *
 * @param columns from left to right
 * @param rows each as many cells as there are columns
 */
public record Table(List<Column> columns, List<List<Cell>> rows) {
    public Table {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
        for (List<Cell> row : rows) {
            if (row.size() != columns.size()) {
                throw new IllegalArgumentException(
                        "a row of " + row.size() + " cells under " + columns.size() + " columns");
            }
        }
    }

    /**
     * A column.
     *
     * @param head what stands below; when all heads are empty no row of heads is shown
     * @param share of the width, against the shares of the others
     * @param right whether its text ends at the right, as numbers do
     * @param type of its text
     */
    public record Column(String head, double share, boolean right, Type type) {
        /** A column of text. */
        public static Column text(String head, double share) {
            return new Column(head, share, false, Type.CELL);
        }

        /** A column of numbers. */
        public static Column number(String head, double share) {
            return new Column(head, share, true, Type.CELL);
        }
    }

    /**
     * A cell.
     *
     * @param text may be empty
     * @param colour {@code #rrggbb} of a sample shown before the text, or null
     */
    public record Cell(String text, @Nullable String colour) {
        /** Text alone. */
        public static Cell of(String text) {
            return new Cell(text, null);
        }
    }

    boolean headed() {
        return columns.stream().anyMatch(column -> !column.head().isEmpty());
    }
}
