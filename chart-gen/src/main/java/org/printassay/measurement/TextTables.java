package org.printassay.measurement;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.printassay.problem.Problem;

/** The bare structure of a file: header lines and tables of words, no meaning yet. */
final class TextTables {
    private static final int MAX_ROWS = 200_000;
    private static final int MAX_FIELDS = 2000;
    private static final int MAX_KEYWORDS = 1000;

    /** A name, or codes, and three values. */
    private static final int FEWEST_NAMED = 4;

    /** One data row and the line it stands on. */
    record Row(int line, List<String> cells) {}

    /** One table and the header lines in force for it. */
    record Table(List<String> fields, List<Row> rows, Map<String, String> keywords) {}

    private static final char[] SEPARATORS = {'\t', ';', ','};

    private final String name;

    /** Keywords of which a file has several lines that say different things. */
    private static final String REPEATED_KEYWORD = "WEIGHTING_FUNCTION";

    /** How a file begins, in ISO 28178 and the standards before it. */
    private static final Pattern FILE_IDENTIFIER =
            Pattern.compile("(CGATS|IT8|ISO[-_]?28178)[.:/\\d-]*");

    private final Map<String, String> keywords = new LinkedHashMap<>();
    private final Map<String, String> inForce = new LinkedHashMap<>();

    /** Header lines since the last table: those of the next one. */
    private final Map<String, String> sinceTable = new LinkedHashMap<>();

    private final List<Table> tables = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private boolean commaSeparates;

    /** What stands between the cells of a table with column names on top; 0 for white space. */
    private char separator;

    private int declaredRows = -1;
    private int declaredColumns = -1;
    private int rowCount;
    private Optional<String> unknownColumns = Optional.empty();

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

    /** What is wrong with a line that seems to name columns, but none for colour. */
    Optional<String> unknownColumns() {
        return unknownColumns;
    }

    private void read(List<String> lines) throws Problem {
        List<String> fields = List.of();
        int i = 0;
        while (i < lines.size()) {
            List<String> words = words(lines.get(i));
            String first = words.isEmpty() ? "" : words.get(0).toUpperCase(Locale.ROOT);
            if (first.equals("BEGIN_DATA_FORMAT")) {
                fields = new ArrayList<>();
                i = format(lines, i, fields);
            } else if (first.equals("BEGIN_DATA")) {
                if (words.size() > 1) {
                    throw Problem.input(
                            place(i),
                            "values stand behind BEGIN_DATA. Begin them on a line of their own.");
                }
                if (fields.isEmpty()) {
                    throw Problem.input(
                            place(i),
                            "data begin before their columns are named (BEGIN_DATA_FORMAT).");
                }
                i = data(lines, i + 1, fields, true);
            } else {
                List<String> heading = fields.isEmpty() ? heading(lines.get(i)) : List.of();
                if (heading.isEmpty()) {
                    if (fields.isEmpty() && unknownColumns.isEmpty()) {
                        unknownColumns = unknownHeading(lines, i);
                    }
                    keyword(words);
                    i++;
                } else {
                    if (heading.size() > MAX_FIELDS) {
                        throw Problem.input(place(i), "more than " + MAX_FIELDS + " columns.");
                    }
                    fields = heading;
                    i = data(lines, i + 1, fields, false);
                }
            }
        }
    }

    /**
     * Column names of a table without the standard's frame, which may hold spaces between tabs,
     * semicolons or commas; none when the line is no heading.
     */
    private List<String> heading(String line) {
        for (char between : SEPARATORS) {
            if (line.indexOf(between) >= 0) {
                List<String> names = Words.named(Words.cells(line, between));
                // Several tabs in a row only align columns.
                boolean aligned = between == '\t' && names.lastIndexOf("") > 0;
                if (!aligned && Columns.looksLikeHeading(names)) {
                    separator = between;
                    commaSeparates = between == ',';
                    return names;
                }
            }
        }
        boolean commas = line.indexOf('\t') < 0 && line.indexOf(';') < 0;
        List<String> names = Words.of(line, commas);
        if (!Columns.looksLikeHeading(names)) {
            return List.of();
        }
        separator = 0;
        commaSeparates = commas && line.indexOf(',') >= 0;
        return names;
    }

    /** What to say of a line that names patches or codes over a row of as many cells. */
    private Optional<String> unknownHeading(List<String> lines, int i) {
        for (char between : SEPARATORS) {
            List<String> names = Words.cells(lines.get(i), between);
            if (names.size() < FEWEST_NAMED
                    || i + 1 == lines.size()
                    || Words.cells(lines.get(i + 1), between).size() != names.size()) {
                continue;
            }
            Columns columns = Columns.of(names);
            if (!columns.ids().isEmpty() || !columns.rgb().isEmpty()) {
                return Optional.of(
                        "no measurement table found: line "
                                + (i + 1)
                                + " names columns, but none for colour. Name them LAB_L, LAB_A,"
                                + " LAB_B or XYZ_X, XYZ_Y, XYZ_Z, or SPECTRAL_NM380 and on."
                                + columns.notUsed(names));
            }
        }
        return Optional.empty();
    }

    /** Column names between BEGIN_DATA_FORMAT and END_DATA_FORMAT, on any number of lines. */
    private int format(List<String> lines, int start, List<String> fields) throws Problem {
        commaSeparates = false;
        separator = 0;
        for (int i = start; i < lines.size(); i++) {
            String line = lines.get(i);
            commaSeparates |= !line.strip().startsWith("#") && line.indexOf(',') >= 0;
            List<String> words = words(line);
            for (String word : words.subList(i == start ? 1 : 0, words.size())) {
                if (word.equalsIgnoreCase("END_DATA_FORMAT")) {
                    return i + 1;
                }
                fields.add(word);
            }
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
        boolean wrapped = false;
        for (; i < lines.size() && !ended; i++) {
            List<String> words = words(lines.get(i));
            if (words.isEmpty()) {
                continue;
            }
            if (words.get(0).equalsIgnoreCase("END_DATA")) {
                ended = true;
                continue;
            }
            if (wrapped) {
                continue;
            }
            words = row(lines.get(i), words, fields.size());
            if (words.stream().allMatch(String::isEmpty)) {
                continue;
            }
            if (words.size() != fields.size()) {
                List<Row> whole = framed ? wrapped(lines, start, fields.size()) : List.of();
                if (!whole.isEmpty()) {
                    rows = whole;
                    wrapped = true;
                    continue;
                }
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
        declaredColumns = -1;
        sinceTable.clear();
        tables.add(new Table(List.copyOf(fields), List.copyOf(rows), Map.copyOf(inForce)));
        return i;
    }

    /**
     * Rows that go on over several lines: only where the file says how many columns and rows it
     * has, and just these come out, each row ending with a line. Else none.
     */
    private List<Row> wrapped(List<String> lines, int start, int columns) {
        if (declaredColumns != columns || declaredRows > MAX_ROWS) {
            return List.of();
        }
        List<Row> rows = new ArrayList<>();
        List<String> row = new ArrayList<>();
        for (int i = start; i < lines.size(); i++) {
            List<String> words = words(lines.get(i));
            if (!words.isEmpty() && words.get(0).equalsIgnoreCase("END_DATA")) {
                return row.isEmpty() && rows.size() == declaredRows ? rows : List.of();
            }
            row.addAll(words);
            if (row.size() > columns || rows.size() > declaredRows) {
                return List.of();
            }
            if (row.size() == columns) {
                rows.add(new Row(i + 1, List.copyOf(row)));
                row.clear();
            }
        }
        return List.of();
    }

    /**
     * The cells between separators, empty ones too, where the heading or the number of words asks
     * for them and they are as many as wanted; else the words.
     */
    private List<String> row(String line, List<String> words, int wanted) {
        if (separator == 0 && words.size() == wanted) {
            return words;
        }
        for (char between : SEPARATORS) {
            if (line.indexOf(between) >= 0 && (separator == 0 || between == separator)) {
                List<String> cells = Words.fitted(Words.cells(line, between), wanted);
                return cells.size() == wanted ? cells : words;
            }
        }
        return words;
    }

    /** Lines of three numbers and nothing else: CIELAB typed in reading order, names in front. */
    private void typedList(List<String> lines) throws Problem {
        commaSeparates = Words.commasBetweenNumbers(lines);
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
        String key = words.isEmpty() ? "" : words.get(0).toUpperCase(Locale.ROOT);
        if (FILE_IDENTIFIER.matcher(key).matches()) {
            inForce.clear(); // a file of its own: what the one before said is not said of it
            inForce.putAll(sinceTable);
        }
        if (words.isEmpty() || keywords.size() >= MAX_KEYWORDS) {
            return;
        }
        String value = String.join(" ", words.subList(1, words.size()));
        if (key.equals("NUMBER_OF_SETS") && value.matches("\\d{1,9}")) {
            declaredRows = Integer.parseInt(value);
        }
        if (key.equals("NUMBER_OF_FIELDS") && value.matches("\\d{1,9}")) {
            declaredColumns = Integer.parseInt(value);
        }
        keywords.putIfAbsent(key, value);
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

    private List<String> words(String line) {
        return Words.of(line, commaSeparates);
    }

    private String place(int index) {
        return name + ", line " + (index + 1);
    }
}
