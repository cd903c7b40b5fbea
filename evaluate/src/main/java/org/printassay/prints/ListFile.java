package org.printassay.prints;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.BiPredicate;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.PrintDetails;
import org.printassay.evaluation.ToldApart;
import org.printassay.json.CheckedJson;
import org.printassay.problem.Problem;
import org.printassay.scan.ScanFiles;

/**
 * A list of files and what they are scans or measurements of: JSON of the schema {@code
 * printassay/prints/1}, or CSV (RFC 4180; commas, semicolons or tabs) with the columns file, print,
 * paper, printer, route and driedHours, of which only the first must be there. Files are named
 * relative to the list. Lines that say the same print are of one print; a line that says none is a
 * print of its own.
 */
public final class ListFile {
    private static final long LARGEST_BYTES = 4 << 20;
    private static final int MOST_LINES = 20_000;
    private static final double MOST_HOURS = 1e6;

    private ListFile() {}

    /**
     * One file.
     *
     * @param where in the list, for messages
     * @param print what the list calls its print; null when it does not
     */
    record Line(String where, Path file, @Nullable String print, PrintDetails said) {}

    /**
     * Reads a list.
     *
     * @throws Problem input, when it cannot be read, is not valid or contradicts itself
     */
    public static List<OnePrint> read(Path list) throws Problem {
        boolean json = ScanFiles.displayName(list).toLowerCase(Locale.ROOT).endsWith(".json");
        List<Line> lines = json ? json(list) : new ListTable(list).lines();
        String name = ScanFiles.displayName(list);
        if (lines.isEmpty()) {
            throw Problem.input(name, "names no file.");
        }
        if (lines.size() > MOST_LINES) {
            throw Problem.input(name, "names more than " + MOST_LINES + " files.");
        }
        return prints(lines);
    }

    private static List<Line> json(Path list) throws Problem {
        String name = ScanFiles.displayName(list);
        JsonNode root = CheckedJson.read(list, "prints", 1, LARGEST_BYTES);
        List<Line> lines = new ArrayList<>();
        for (JsonNode file : root.path("files")) {
            String where = name + CheckedJson.line(list, "/files/" + lines.size());
            Function<String, @Nullable String> text =
                    key -> file.path(key).isMissingNode() ? null : file.path(key).asText();
            JsonNode hours = file.path("driedHours");
            lines.add(
                    line(
                            list,
                            where,
                            file.path("file").asText(),
                            text,
                            hours.isNumber() ? hours.asDouble() : null));
        }
        return lines;
    }

    /** A line of the list, of texts by the names of its columns. */
    static Line line(
            Path list,
            String where,
            String file,
            Function<String, @Nullable String> text,
            @Nullable Double hours)
            throws Problem {
        if (file.isBlank()) {
            throw Problem.input(where, "names no file.");
        }
        if (hours != null && !(hours >= 0 && hours < MOST_HOURS)) {
            throw Problem.input(where, "driedHours must be 0 or more.");
        }
        try {
            return new Line(
                    where,
                    list.toAbsolutePath().resolveSibling(file).normalize(),
                    text.apply("print"),
                    new PrintDetails(
                            text.apply("paper"),
                            text.apply("printer"),
                            text.apply("route"),
                            hours));
        } catch (InvalidPathException e) {
            throw Problem.input(where, "names a file that cannot be: " + e.getReason() + ".");
        }
    }

    private static List<OnePrint> prints(List<Line> lines) throws Problem {
        ToldApart told = ToldApart.of(lines.stream().map(Line::file).toList());
        Map<String, List<Integer>> together = new LinkedHashMap<>();
        Map<Path, Line> seen = new LinkedHashMap<>();
        for (int i = 0; i < lines.size(); i++) {
            Line line = lines.get(i);
            if (seen.put(line.file(), line) != null) {
                throw Problem.input(line.where(), "names " + told.name(i) + " a second time.");
            }
            String key = line.print() == null ? "line " + i : "print " + line.print();
            together.computeIfAbsent(key, k -> new ArrayList<>()).add(i);
        }
        PrintNames names = new PrintNames();
        List<OnePrint> prints = new ArrayList<>();
        for (List<Integer> group : together.values()) {
            List<Line> own = group.stream().map(lines::get).toList();
            String print = own.get(0).print();
            String label = told.name(group.get(0));
            int dot = label.lastIndexOf('.');
            boolean ending = dot > label.lastIndexOf('/') + 1;
            prints.add(
                    new OnePrint(
                            names.give(
                                    print != null
                                            ? print
                                            : ending ? label.substring(0, dot) : label),
                            own.stream().map(Line::file).toList(),
                            said(own)));
        }
        return prints;
    }

    /** What lines of one print say together; none may contradict another. */
    private static PrintDetails said(List<Line> lines) throws Problem {
        return new PrintDetails(
                agreed(lines, "paper", line -> line.said().paper(), PrintDetails::same),
                agreed(lines, "printer", line -> line.said().printer(), PrintDetails::same),
                agreed(lines, "route", line -> line.said().route(), PrintDetails::same),
                agreed(lines, "driedHours", line -> line.said().driedHours(), Objects::equals));
    }

    private static <T> @Nullable T agreed(
            List<Line> lines, String what, Function<Line, @Nullable T> part, BiPredicate<T, T> same)
            throws Problem {
        T agreed = null;
        for (Line line : lines) {
            T said = part.apply(line);
            if (agreed != null && said != null && !same.test(agreed, said)) {
                throw Problem.input(
                        line.where(),
                        "says "
                                + what
                                + " \""
                                + said
                                + "\" of print \""
                                + line.print()
                                + "\", another line of it \""
                                + agreed
                                + "\".");
            }
            agreed = agreed == null ? said : agreed;
        }
        return agreed;
    }
}
