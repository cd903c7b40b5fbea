package org.printassay.prints;

import java.util.List;
import java.util.stream.Collectors;

/** Rows of text under each other for a terminal; the first cell of a row is a name. */
final class TextTable {
    private static final int LONGEST_NAME = 40;

    private TextTable() {}

    /** The table; nothing when there is a heading alone. */
    static String of(List<List<String>> rows) {
        int[] widths = new int[rows.get(0).size()];
        for (List<String> row : rows) {
            for (int i = 0; i < widths.length; i++) {
                widths[i] = Math.max(widths[i], length(row.get(i)));
            }
        }
        return rows.size() == 1
                ? ""
                : rows.stream().map(row -> line(row, widths) + "\n").collect(Collectors.joining());
    }

    private static String line(List<String> row, int[] widths) {
        StringBuilder out = new StringBuilder(row.get(0));
        out.append(" ".repeat(widths[0] - length(row.get(0))));
        for (int i = 1; i < widths.length; i++) {
            out.append(" ".repeat(2 + widths[i] - length(row.get(i)))).append(row.get(i));
        }
        return out.toString();
    }

    /** A name that leaves room for the rest. */
    static String shortened(String name) {
        return length(name) <= LONGEST_NAME
                ? name
                : name.substring(0, name.offsetByCodePoints(0, LONGEST_NAME - 3)) + "...";
    }

    private static int length(String text) {
        return text.codePointCount(0, text.length());
    }
}
