package org.printassay.measurement;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * The header lines of a file, a keyword and its value each. What stands before a table holds for
 * the tables behind it too, until it is said anew or another file begins; how many rows and columns
 * are announced holds for the next table alone.
 */
final class HeaderLines {
    private static final int MAX_KEYWORDS = 1000;

    /** Keywords of which a file has several lines that say different things. */
    private static final String REPEATED_KEYWORD = "WEIGHTING_FUNCTION";

    /** How a file begins, in ISO 28178 and the standards before it. */
    private static final Pattern FILE_IDENTIFIER =
            Pattern.compile("(CGATS|IT8|ISO[-_]?28178)[.:/\\d-]*");

    private final Map<String, String> all = new LinkedHashMap<>();
    private final Map<String, String> inForce = new LinkedHashMap<>();

    /** Header lines since the last table: those of the next one. */
    private final Map<String, String> sinceTable = new LinkedHashMap<>();

    private int announcedRows = -1;
    private int announcedColumns = -1;

    /** Takes the words of one line; none of an empty one. */
    void add(List<String> words) {
        String key = words.isEmpty() ? "" : words.get(0).toUpperCase(Locale.ROOT);
        if (FILE_IDENTIFIER.matcher(key).matches()) {
            inForce.clear(); // a file of its own: what the one before said is not said of it
            inForce.putAll(sinceTable);
        }
        if (words.isEmpty() || all.size() >= MAX_KEYWORDS) {
            return;
        }
        String value = String.join(" ", words.subList(1, words.size()));
        if (key.equals("NUMBER_OF_SETS") && value.matches("\\d{1,9}")) {
            announcedRows = Integer.parseInt(value);
        }
        if (key.equals("NUMBER_OF_FIELDS") && value.matches("\\d{1,9}")) {
            announcedColumns = Integer.parseInt(value);
        }
        all.putIfAbsent(key, value);
        say(inForce, key, value);
        say(sinceTable, key, value);
    }

    private static void say(Map<String, String> said, String key, String value) {
        if (key.equals(REPEATED_KEYWORD)) {
            said.merge(key, value, (one, two) -> one + "; " + two);
        } else {
            said.put(key, value);
        }
    }

    /** What was announced is used up by the table that ends here. */
    void tableEnds() {
        announcedRows = -1;
        announcedColumns = -1;
        sinceTable.clear();
    }

    /** Drops from {@link #all} what was taken for header lines and was none. */
    void forget() {
        all.clear();
    }

    /** All of the file, of each keyword the first; not copied. */
    Map<String, String> all() {
        return all;
    }

    /** Those that hold for a table that ends here. */
    Map<String, String> inForce() {
        return Map.copyOf(inForce);
    }

    /** Rows that the next table is to have; -1 where it is not said. */
    int announcedRows() {
        return announcedRows;
    }

    /** Columns that the next table is to have; -1 where it is not said. */
    int announcedColumns() {
        return announcedColumns;
    }
}
