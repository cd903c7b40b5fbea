package org.printassay.prints;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.printassay.problem.InputPath;
import org.printassay.problem.Problem;
import org.printassay.scan.ScanFiles;

/** A list of files as CSV. */
final class ListTable {
    private static final long LARGEST_BYTES = 4 << 20;
    private static final List<String> COLUMNS =
            List.of("file", "print", "paper", "printer", "route", "driedHours");

    private final Path list;
    private final String name;

    ListTable(Path list) {
        this.list = list;
        this.name = ScanFiles.displayName(list);
    }

    List<ListFile.Line> lines() throws Problem {
        String text = text();
        ObjectReader reader =
                new CsvMapper()
                        .readerFor(String[].class)
                        .with(CsvParser.Feature.WRAP_AS_ARRAY)
                        .with(CsvParser.Feature.SKIP_EMPTY_LINES)
                        .with(
                                CsvSchema.emptySchema()
                                        .withColumnSeparator(separator(text))
                                        .withoutEscapeChar());
        List<ListFile.Line> lines = new ArrayList<>();
        try (MappingIterator<String[]> rows = reader.readValues(text)) {
            Map<String, Integer> columns = null;
            while (rows.hasNextValue()) {
                int at = rows.getCurrentLocation().getLineNr();
                String[] cells = rows.nextValue();
                if (columns == null) {
                    columns = columns(cells);
                } else if (!isEmpty(cells)) {
                    lines.add(line(name + ", line " + at, columns, cells));
                }
            }
        } catch (JacksonException e) {
            int at = e.getLocation() == null ? 1 : e.getLocation().getLineNr();
            throw Problem.input(
                    name + ", line " + at, "is not CSV: " + e.getOriginalMessage() + ".", e);
        } catch (IOException e) {
            throw Problem.input(name, "cannot be read.", e);
        }
        return lines;
    }

    private ListFile.Line line(String where, Map<String, Integer> columns, String[] cells)
            throws Problem {
        if (cells.length > columns.getOrDefault("", cells.length)) {
            throw Problem.input(
                    where,
                    "has more cells than the first line names columns. Put text that holds the"
                            + " separator into quotes.");
        }
        String hours = cell(columns, cells, "driedHours");
        String file = cell(columns, cells, "file");
        return ListFile.line(
                list,
                where,
                file == null ? "" : file,
                column -> cell(columns, cells, column),
                hours == null ? null : number(where, hours));
    }

    private static double number(String where, String text) throws Problem {
        try {
            return Double.parseDouble(text.replace(',', '.'));
        } catch (NumberFormatException e) {
            throw Problem.input(where, "driedHours is no number: \"" + text + "\".");
        }
    }

    private static @Nullable String cell(
            Map<String, Integer> columns, String[] cells, String column) {
        Integer at = columns.get(column);
        String text = at == null || at >= cells.length ? "" : cells[at].strip();
        return text.isEmpty() ? null : text;
    }

    private static boolean isEmpty(String[] cells) {
        for (String cell : cells) {
            if (!cell.isBlank()) {
                return false;
            }
        }
        return true;
    }

    /** Where each column is; under no name, how many there are. */
    private Map<String, Integer> columns(String[] heading) throws Problem {
        Map<String, Integer> columns = new HashMap<>();
        for (int i = 0; i < heading.length; i++) {
            if (heading[i].isBlank()) {
                continue;
            }
            String known = known(heading[i]);
            if (known == null) {
                throw Problem.input(
                        name + ", line 1",
                        "names a column \""
                                + heading[i].strip()
                                + "\" that is not known. The columns are "
                                + String.join(", ", COLUMNS)
                                + ".");
            }
            if (columns.put(known, i) != null) {
                throw Problem.input(name + ", line 1", "names the column " + known + " twice.");
            }
        }
        if (!columns.containsKey("file")) {
            throw Problem.input(
                    name + ", line 1",
                    "must name the columns, one of them \"file\"; the others are print, paper,"
                            + " printer, route and driedHours.");
        }
        columns.put("", heading.length);
        return columns;
    }

    private static @Nullable String known(String heading) {
        String letters = heading.replaceAll("[^A-Za-z]", "");
        for (String column : COLUMNS) {
            if (column.equalsIgnoreCase(letters)) {
                return column;
            }
        }
        return null;
    }

    /** Whichever the first line has most of. */
    private static char separator(String text) {
        String first = text.lines().findFirst().orElse("").toLowerCase(Locale.ROOT);
        char best = ',';
        for (char c : new char[] {';', '\t'}) {
            best = count(first, c) > count(first, best) ? c : best;
        }
        return best;
    }

    private static long count(String text, char c) {
        return text.chars().filter(other -> other == c).count();
    }

    private String text() throws Problem {
        InputPath.refuseSpecial(list, name);
        try {
            if (Files.size(list) > LARGEST_BYTES) {
                throw Problem.input(name, "is too large to be a list of files.");
            }
            byte[] bytes = Files.readAllBytes(list);
            String text;
            try {
                text =
                        StandardCharsets.UTF_8
                                .newDecoder()
                                .decode(ByteBuffer.wrap(bytes))
                                .toString();
            } catch (CharacterCodingException e) {
                text = new String(bytes, StandardCharsets.ISO_8859_1);
            }
            return text.startsWith("\uFEFF") ? text.substring(1) : text;
        } catch (NoSuchFileException e) {
            throw Problem.input(
                    name, "there is no such file (looked for " + list.toAbsolutePath() + ").", e);
        } catch (IOException e) {
            throw Problem.input(
                    name,
                    Files.isDirectory(list)
                            ? "is a folder. --list names a file; name the folder itself to read it."
                            : "cannot be read. Check its permissions.",
                    e);
        }
    }
}
