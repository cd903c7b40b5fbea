package org.printassay.measurement;

import java.util.ArrayList;
import java.util.List;

/** Splits a line into words: white space and semicolons separate, quotes hold together. */
final class Words {
    private static final int MAX_LENGTH = 1000;

    /** No table has as many columns: what stands behind them is not looked at. */
    private static final int MAX_WORDS = 20_000;

    private Words() {}

    /**
     * Words of a line, without quotes and control characters, a tab in quotes as a space; nothing
     * after a {@code #} that starts a word.
     *
     * @param commaSeparates whether a comma ends a word (else it may be a decimal sign)
     */
    static List<String> of(String line, boolean commaSeparates) {
        List<String> words = new ArrayList<>();
        StringBuilder word = new StringBuilder();
        boolean open = false;
        char quote = 0;
        for (int i = 0; i < line.length() && words.size() < MAX_WORDS; i++) {
            char c = line.charAt(i);
            if (quote != 0) {
                if (c == quote) {
                    quote = 0;
                } else {
                    add(word, c);
                }
            } else if (c == '"') {
                quote = c;
                open = true;
            } else if (Character.isWhitespace(c)
                    || c == '\u00A0'
                    || c == ';'
                    || (c == ',' && commaSeparates)) {
                open = close(words, word, open);
            } else if (c == '#' && !open) {
                break;
            } else if (!Character.isISOControl(c)) {
                word.append(c);
                open = true;
            }
        }
        close(words, word, open);
        return words;
    }

    /** Cells of a line between separators, empty ones too, without quotes. */
    static List<String> cells(String line, char separator) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length() && cells.size() < MAX_WORDS; i++) {
            char c = line.charAt(i);
            if (c == '"') {
                quoted = !quoted;
            } else if (c == separator && !quoted) {
                cells.add(cut(cell));
                cell.setLength(0);
            } else {
                add(cell, c);
            }
        }
        cells.add(cut(cell));
        return cells;
    }

    /**
     * Column names without empty ones at the end. An empty first one, over the names of rows as
     * some programs write them, is called ID where no other column names the patches.
     */
    static List<String> named(List<String> cells) {
        List<String> names = fitted(cells, 0);
        if (!names.isEmpty() && names.get(0).isEmpty() && Columns.of(names).ids().isEmpty()) {
            names.set(0, "ID");
        }
        return names;
    }

    /** Cells without empty ones at the end, so far as they are more than wanted. */
    static List<String> fitted(List<String> cells, int wanted) {
        List<String> fitted = new ArrayList<>(cells);
        while (fitted.size() > wanted && fitted.get(fitted.size() - 1).isEmpty()) {
            fitted.remove(fitted.size() - 1);
        }
        int last = fitted.size() - 1;
        if (last >= 0) { // a remark behind the last number
            fitted.set(last, fitted.get(last).replaceFirst("^([-+.,\\deE]+)\\s+#.*$", "$1"));
        }
        return fitted;
    }

    /** Whether commas separate the numbers of a typed list, by its first line: P1,50.1,0.2,-1.3. */
    static boolean commasBetweenNumbers(List<String> lines) {
        for (String line : lines) {
            List<String> words = of(line, false);
            if (!words.isEmpty()) {
                return words.size() < 3 || words.stream().anyMatch(word -> word.endsWith(","));
            }
        }
        return false;
    }

    /** A character of a text: a tab parts what it stands between, other controls are dropped. */
    private static void add(StringBuilder text, char c) {
        if (c == '\t') {
            text.append(' ');
        } else if (!Character.isISOControl(c)) {
            text.append(c);
        }
    }

    private static String cut(StringBuilder cell) {
        return cell.substring(0, Math.min(cell.length(), MAX_LENGTH)).strip();
    }

    private static boolean close(List<String> words, StringBuilder word, boolean open) {
        if (open) {
            words.add(word.substring(0, Math.min(word.length(), MAX_LENGTH)));
            word.setLength(0);
        }
        return false;
    }
}
