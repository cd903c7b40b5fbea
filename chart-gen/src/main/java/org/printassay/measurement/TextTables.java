package org.printassay.measurement;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.printassay.problem.Problem;

/** The bare structure of a file: header lines and tables of words, no meaning yet. */
final class TextTables {
    private static final int MAX_ROWS = 200_000;
    private static final int MAX_FIELDS = 2000;
    private static final int MAX_KEYWORDS = 1000;

    /** One data row and the line it stands on. */
    record Row(int line, List<String> cells) {}

    /** One table and the header lines in force for it. */
    record Table(List<String> fields, List<Row> rows, Map<String, String> keywords) {}

    private final String name;

    /** Keywords of which a file has several lines that say different things. */
    private static final String REPEATED_KEYWORD = "WEIGHTING_FUNCTION";

    private final Map<String, String> keywords = new LinkedHashMap<>();
    private final Map<String, String> inForce = new LinkedHashMap<>();
    private final List<Table> tables = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private boolean commaSeparates;
    private int declaredRows = -1;
    private int rowCount;

    private TextTables(String name) {
        this.name = name;
    }

    /** Takes a text apart. */
    static TextTables parse(String name, String text) throws Problem {
        TextTables parsed = new TextTables(name);
        List<String> lines = text.lines().toList();
        parsed.read(lines);
        if (parsed.tables.isEmpty()) {
            parsed.typedList(lines);
        }
        return parsed;
    }

    Map<String, String> keywords() {
        return keywords;
    }

    List<Table> tables() {
        return tables;
    }

    List<String> notes() {
        return notes;
    }

    private void read(List<String> lines) throws Problem {
        List<String> fields = List.of();
        int i = 0;
        while (i < lines.size()) {
            List<String> words = words(lines.get(i));
            String first = words.isEmpty() ? "" : words.get(0).toUpperCase(Locale.ROOT);
            if (first.equals("BEGIN_DATA_FORMAT")) {
                fields = new ArrayList<>();
                i = format(lines, i + 1, fields);
            } else if (first.equals("BEGIN_DATA")) {
                if (fields.isEmpty()) {
                    throw Problem.input(
                            place(i),
                            "data begin before their columns are named (BEGIN_DATA_FORMAT).");
                }
                i = data(lines, i + 1, fields, true);
            } else if (fields.isEmpty() && Columns.looksLikeHeading(split(lines.get(i)))) {
                fields = headingOnly(lines.get(i));
                i = data(lines, i + 1, fields, false);
            } else {
                keyword(words);
                i++;
            }
        }
    }

    /** A table with column names on top and nothing else of the standard's frame. */
    private List<String> headingOnly(String line) {
        commaSeparates = line.indexOf(',') >= 0 && line.indexOf('\t') < 0 && line.indexOf(';') < 0;
        return words(line);
    }

    private List<String> split(String line) {
        return Words.of(line, line.indexOf('\t') < 0 && line.indexOf(';') < 0);
    }

    private int format(List<String> lines, int start, List<String> fields) throws Problem {
        commaSeparates = false;
        for (int i = start; i < lines.size(); i++) {
            String line = lines.get(i);
            if (line.strip().toUpperCase(Locale.ROOT).startsWith("END_DATA_FORMAT")) {
                return i + 1;
            }
            commaSeparates |= !line.strip().startsWith("#") && line.indexOf(',') >= 0;
            fields.addAll(words(line));
            if (fields.size() > MAX_FIELDS) {
                throw Problem.input(place(i), "more than " + MAX_FIELDS + " columns.");
            }
        }
        throw Problem.input(name, "END_DATA_FORMAT is missing. The file seems to be cut off.");
    }

    private int data(List<String> lines, int start, List<String> fields, boolean framed)
            throws Problem {
        List<Row> rows = new ArrayList<>();
        int i = start;
        boolean ended = false;
        for (; i < lines.size() && !ended; i++) {
            List<String> words = words(lines.get(i));
            if (words.isEmpty()) {
                continue;
            }
            if (words.get(0).equalsIgnoreCase("END_DATA")) {
                ended = true;
                continue;
            }
            if (words.size() != fields.size()) {
                words = withEmptyCells(lines.get(i), words, fields.size());
                if (words.stream().allMatch(String::isEmpty)) {
                    continue;
                }
            }
            if (words.size() != fields.size()) {
                throw Problem.input(
                        place(i),
                        words.size()
                                + " values, but the file names "
                                + fields.size()
                                + " columns. Put names with spaces in quotes and leave no cell"
                                + " empty.");
            }
            rows.add(new Row(i + 1, words));
            if (++rowCount > MAX_ROWS) {
                throw Problem.input(place(i), "more than " + MAX_ROWS + " rows.");
            }
        }
        if (framed && !ended && declaredRows > rows.size()) {
            throw Problem.input(
                    name,
                    "END_DATA is missing and "
                            + declaredRows
                            + " rows are announced but only "
                            + rows.size()
                            + " are there. The file seems to be cut off; export it again.");
        }
        if (declaredRows >= 0 && declaredRows != rows.size()) {
            notes.add(
                    "The file announces "
                            + declaredRows
                            + " rows (NUMBER_OF_SETS) and has "
                            + rows.size()
                            + ".");
        }
        declaredRows = -1;
        tables.add(new Table(List.copyOf(fields), List.copyOf(rows), Map.copyOf(inForce)));
        return i;
    }

    /** The cells between separators, empty ones too, when that gives the wanted number. */
    private static List<String> withEmptyCells(String line, List<String> words, int wanted) {
        for (char separator : new char[] {'\t', ';', ','}) {
            if (line.indexOf(separator) >= 0) {
                List<String> cells = Words.cells(line, separator);
                return cells.size() == wanted ? cells : words;
            }
        }
        return words;
    }

    /** Lines of three numbers and nothing else: CIELAB typed in reading order, names in front. */
    private void typedList(List<String> lines) throws Problem {
        List<Row> rows = new ArrayList<>();
        int columns = 0;
        for (int i = 0; i < lines.size(); i++) {
            List<String> words = words(lines.get(i));
            if (words.isEmpty()) {
                continue;
            }
            long numbers =
                    words.stream()
                            .skip(words.size() - Math.min(3, words.size()))
                            .filter(word -> PatchReader.NUMBER.matcher(word).matches())
                            .count();
            columns = columns == 0 ? words.size() : columns;
            if (rows.isEmpty() && (numbers != 3 || columns > 4)) {
                return; // something else
            }
            if (words.size() != columns) {
                throw Problem.input(
                        place(i),
                        words.size()
                                + " values where the lines before have "
                                + columns
                                + ". Type L* a* b* of one patch a line.");
            }
            rows.add(new Row(i + 1, words));
            if (rows.size() > MAX_ROWS) {
                throw Problem.input(place(i), "more than " + MAX_ROWS + " rows.");
            }
        }
        if (rows.isEmpty()) {
            return;
        }
        keywords.clear(); // its lines are data
        List<String> fields = new ArrayList<>(List.of("LAB_L", "LAB_A", "LAB_B"));
        if (columns == 4) {
            fields.add(0, "ID");
        }
        notes.add("A plain list: three numbers a line were taken as L* a* b*.");
        tables.add(new Table(List.copyOf(fields), List.copyOf(rows), Map.of()));
    }

    private void keyword(List<String> words) {
        if (words.isEmpty() || keywords.size() >= MAX_KEYWORDS) {
            return;
        }
        String key = words.get(0).toUpperCase(Locale.ROOT);
        String value = String.join(" ", words.subList(1, words.size()));
        if (key.equals("NUMBER_OF_SETS") && value.matches("\\d{1,9}")) {
            declaredRows = Integer.parseInt(value);
        }
        keywords.putIfAbsent(key, value);
        if (key.equals(REPEATED_KEYWORD)) {
            inForce.merge(key, value, (one, two) -> one + "; " + two);
        } else {
            inForce.put(key, value);
        }
    }

    private List<String> words(String line) {
        return Words.of(line, commaSeparates);
    }

    private String place(int index) {
        return name + ", line " + (index + 1);
    }
}
