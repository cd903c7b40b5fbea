package org.printassay.prints;

import java.util.List;
import java.util.stream.Collectors;

/** Rows of text under each other for a terminal; the first cell of a row is a name. */
final class TextTable {
    private static final int LONGEST_NAME = 40;

    private TextTable() {}

    /** A table of figures, which end at the right; nothing when there is a heading alone. */
    static String ofFigures(List<List<String>> rows) {
        return of(rows, /* words= */ false);
    }

    /** A table of words, which begin at the left; nothing when there is a heading alone. */
    static String ofWords(List<List<String>> rows) {
        return of(rows, /* words= */ true);
    }

    private static String of(List<List<String>> rows, boolean words) {
        int[] widths = new int[rows.get(0).size()];
        for (List<String> row : rows) {
            for (int i = 0; i < widths.length; i++) {
                widths[i] = Math.max(widths[i], length(row.get(i)));
            }
        }
        return rows.size() == 1
                ? ""
                : rows.stream()
                        .map(row -> line(row, widths, words) + "\n")
                        .collect(Collectors.joining());
    }

    private static String line(List<String> row, int[] widths, boolean words) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < widths.length; i++) {
            String pad = " ".repeat(widths[i] - length(row.get(i)));
            boolean left = words || i == 0;
            out.append(i == 0 ? "" : "  ").append(left ? row.get(i) + pad : pad + row.get(i));
        }
        return out.toString().stripTrailing();
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
