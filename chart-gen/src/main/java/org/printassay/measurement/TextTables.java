package org.printassay.measurement;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.printassay.problem.Problem;

/** The bare structure of a file: header lines and tables of words, no meaning yet. */
final class TextTables {
    static final int MAX_ROWS = 200_000;
    private static final int MAX_FIELDS = 2000;

    /** A name, or codes, and three values. */
    private static final int FEWEST_NAMED = 4;

    /** One data row and the line it stands on. */
    record Row(int line, List<String> cells) {}

    /** One table and the header lines in force for it. */
    record Table(List<String> fields, List<Row> rows, Map<String, String> keywords) {}

    private static final char[] SEPARATORS = {'\t', ';', ','};

    private final String name;

    private final HeaderLines header = new HeaderLines();
    private final List<Table> tables = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private boolean commaSeparates;

    /** What stands between the cells of a table with column names on top; 0 for white space. */
    private char separator;

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
            TypedList.read(name, lines).ifPresent(parsed::take);
        }
        return parsed;
    }

    private void take(Table typed) {
        header.forget(); // its lines are data
        notes.add("A plain list: three numbers a line were taken as L* a* b*.");
        tables.add(typed);
    }

    /** Header lines of the whole file, of each keyword the first. */
    Map<String, String> keywords() {
        return header.all();
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
                    header.add(words);
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
        int announced = header.announcedRows();
        if (framed && !ended && announced > rows.size()) {
            throw Problem.input(
                    name,
                    "END_DATA is missing and "
                            + announced
                            + " rows are announced but only "
                            + rows.size()
                            + " are there. The file seems to be cut off; export it again.");
        }
        if (announced >= 0 && announced != rows.size()) {
            notes.add(
                    "The file announces "
                            + announced
                            + " rows (NUMBER_OF_SETS) and has "
                            + rows.size()
                            + ".");
        }
        tables.add(new Table(List.copyOf(fields), List.copyOf(rows), header.inForce()));
        header.tableEnds();
        return i;
    }

    /**
     * Rows that go on over several lines: only where the file says how many columns and rows it
     * has, and just these come out, each row ending with a line. Else none.
     */
    private List<Row> wrapped(List<String> lines, int start, int columns) {
        int announced = header.announcedRows();
        if (header.announcedColumns() != columns || announced > MAX_ROWS) {
            return List.of();
        }
        List<Row> rows = new ArrayList<>();
        List<String> row = new ArrayList<>();
        for (int i = start; i < lines.size(); i++) {
            List<String> words = words(lines.get(i));
            if (!words.isEmpty() && words.get(0).equalsIgnoreCase("END_DATA")) {
                return row.isEmpty() && rows.size() == announced ? rows : List.of();
            }
            row.addAll(words);
            if (row.size() > columns || rows.size() > announced) {
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

    private List<String> words(String line) {
        return Words.of(line, commaSeparates);
    }

    private String place(int index) {
        return name + ", line " + (index + 1);
    }
}
