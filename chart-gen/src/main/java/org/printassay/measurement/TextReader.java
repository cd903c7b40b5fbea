package org.printassay.measurement;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.printassay.colour.Rgb8;
import org.printassay.measurement.MeasurementFile.Condition;
import org.printassay.problem.Problem;

/** Tables of a text to sets of patches: which tables belong together, which stay out. */
final class TextReader {
    private final String name;
    private final List<String> notes = new ArrayList<>();
    private final List<Part> parts = new ArrayList<>();
    private int left;

    /** Tables that carry one another on, under one set of conditions. */
    private record Part(
            Conditions conditions,
            Columns columns,
            int id,
            List<String> fields,
            List<TextTables.Row> rows,
            Map<String, String> keywords) {
        Set<String> names() {
            Set<String> names = new HashSet<>();
            rows.forEach(row -> names.add(row.cells().get(id)));
            return names;
        }

        /** Codes of a chart by the names that the table has for its patches. */
        Map<String, Rgb8> codes(Map<String, Rgb8> chart) {
            Map<String, Rgb8> codes = new HashMap<>(chart);
            if (id >= 0) {
                PatchNames.known(chart.keySet(), names())
                        .forEach((name, own) -> codes.put(name, chart.get(own)));
            }
            return codes;
        }

        boolean isCarriedOnBy(Part other) {
            if (id < 0 || id != other.id || !fields.equals(other.fields)) {
                return false;
            }
            Set<String> names = names();
            return other.rows.stream().noneMatch(row -> names.contains(row.cells().get(id)));
        }
    }

    private TextReader(String name) {
        this.name = name;
    }

    /**
     * Reads a text.
     *
     * @param chartIds ids of the chart's patches; empty when no chart is known, and then codes are
     *     asked for
     * @param chart codes of the chart's patches by id, where known
     */
    static RawFile read(String name, String content, Set<String> chartIds, Map<String, Rgb8> chart)
            throws Problem {
        TextTables text = TextTables.parse(name, content);
        TextReader reader = new TextReader(name);
        reader.notes.addAll(text.notes());
        List<TextTables.Table> all = new ArrayList<>();
        for (TextTables.Table table : text.tables()) {
            all.add(SpectralPairs.named(name, table));
        }
        List<TextTables.Table> tables = TableJoin.withCodes(all);
        if (!tables.equals(all)) {
            reader.notes.add("RGB codes and readings stand in two tables; joined by patch name.");
        }
        for (TextTables.Table table : tables) {
            reader.take(table, chartIds);
        }
        if (reader.parts.isEmpty()) {
            throw unusable(name, all, text.unknownColumns());
        }
        if (reader.left > 0) {
            reader.notes.add("Further tables in the file were not used: " + reader.left + ".");
        }
        List<RawSet> sets = reader.sets(chart);
        return new RawFile(name, sets, text.keywords(), reader.notes.stream().distinct().toList());
    }

    private List<RawSet> sets(Map<String, Rgb8> chart) throws Problem {
        List<PatchReader> readers = new ArrayList<>();
        for (Part part : parts) {
            TextTables.Table table = new TextTables.Table(part.fields, part.rows, part.keywords);
            readers.add(
                    new PatchReader(name, table, part.columns, part.id, notes)
                            .take(part.codes(chart)));
        }
        List<RawSet> sets = new ArrayList<>();
        for (int i = 0; i < readers.size(); i++) {
            boolean hundred = hundred(readers.get(i), readers);
            sets.add(new RawSet(parts.get(i).conditions, readers.get(i).read(hundred)));
        }
        return sets;
    }

    /** What a table does not tell by itself the other ones of its kind do, where they agree. */
    private boolean hundred(PatchReader reader, List<PatchReader> all) throws Problem {
        Boolean own = reader.hundred();
        if (own != null) {
            return own;
        }
        Set<Boolean> others = new HashSet<>();
        for (PatchReader other : all) {
            Boolean told = other.isSpectral() == reader.isSpectral() ? other.hundred() : null;
            if (told != null) {
                others.add(told);
            }
        }
        if (others.size() > 1) {
            throw Problem.input(
                    name,
                    "some of its tables are in percent and some in fractions, and of one it cannot"
                            + " be told which. Export all tables alike, or with SPECTRAL_NORM.");
        }
        return others.contains(true);
    }

    private void take(TextTables.Table table, Set<String> chartIds) throws Problem {
        Map<Optional<Condition>, Columns> all = Columns.byCondition(table.fields());
        boolean used = false;
        for (Map.Entry<Optional<Condition>, Columns> entry : all.entrySet()) {
            Columns columns = entry.getValue();
            if ((columns.rgb().isEmpty() && chartIds.isEmpty()) || table.rows().isEmpty()) {
                continue;
            }
            Conditions stated = Conditions.of(table.keywords());
            Conditions conditions = entry.getKey().map(stated::with).orElse(stated);
            int id = id(columns, table, chartIds);
            refuseDuplicates(table, id);
            used |=
                    add(
                            new Part(
                                    conditions,
                                    columns,
                                    id,
                                    table.fields(),
                                    new ArrayList<>(table.rows()),
                                    table.keywords()));
        }
        left += used || isCodesAlone(table) ? 0 : 1;
    }

    /** Codes that were joined with readings are used, though not here. */
    private static boolean isCodesAlone(TextTables.Table table) {
        return Columns.byCondition(table.fields()).isEmpty()
                && !Columns.of(table.fields()).rgb().isEmpty();
    }

    /** Whether the part is used: it carries on another, repeats it, or is of other conditions. */
    private boolean add(Part part) {
        boolean same = false;
        for (Part before : parts) {
            if (before.conditions.equals(part.conditions)) {
                if (before.columns.equals(part.columns) && before.isCarriedOnBy(part)) {
                    before.rows.addAll(part.rows);
                    return true;
                }
                same = true;
            }
        }
        if (same && part.conditions.mode().isEmpty()) {
            return false; // two that do not say how they differ are not taken for repeats
        }
        parts.add(part);
        return true;
    }

    /** The column of patch names: the one that knows most of the chart's, else the likeliest. */
    private static int id(Columns columns, TextTables.Table table, Set<String> chartIds) {
        int best = columns.ids().isEmpty() ? -1 : columns.ids().get(0);
        long most = 0;
        for (int column : columns.ids()) {
            List<String> names = table.rows().stream().map(row -> row.cells().get(column)).toList();
            long known = PatchNames.known(chartIds, names).size();
            if (known > most) {
                most = known;
                best = column;
            }
        }
        return best;
    }

    private void refuseDuplicates(TextTables.Table table, int id) throws Problem {
        if (id < 0) {
            return;
        }
        Map<String, Integer> lines = new HashMap<>();
        for (TextTables.Row row : table.rows()) {
            Integer before = lines.put(row.cells().get(id), row.line());
            if (before != null) {
                throw Problem.input(
                        name + ", line " + row.line(),
                        "patch '"
                                + row.cells().get(id)
                                + "' stands on line "
                                + before
                                + " already. Give every patch its own "
                                + table.fields().get(id)
                                + "; put repeated measurements into files of their own.");
            }
        }
    }

    private static Problem unusable(
            String name, List<TextTables.Table> tables, Optional<String> unknownColumns) {
        if (tables.isEmpty() && unknownColumns.isPresent()) {
            return Problem.input(name, unknownColumns.get());
        }
        if (tables.isEmpty()) {
            return Problem.input(
                    name,
                    "no measurement table found. It needs ISO 28178 text (BEGIN_DATA_FORMAT,"
                            + " BEGIN_DATA), CxF3, or a table with column names on top.");
        }
        Columns columns = Columns.of(tables.get(0).fields());
        if (columns.rgb().isEmpty() && columns.cmyk()) {
            return Problem.input(
                    name,
                    "only CMYK columns. printassay needs the RGB codes that were printed (columns"
                            + " RGB_R, RGB_G, RGB_B).");
        }
        if (columns.rgb().isEmpty()) {
            return Problem.input(
                    name,
                    "the columns RGB_R, RGB_G and RGB_B are missing. Export them with it, or name"
                            + " the chart with --chart chart.json.");
        }
        if (Columns.byCondition(tables.get(0).fields()).isEmpty()) {
            return Problem.input(
                    name,
                    "no colour columns: LAB_L, LAB_A, LAB_B or XYZ_X, XYZ_Y, XYZ_Z or spectral"
                            + " ones (SPECTRAL_NM380 and on) are needed."
                            + columns.notUsed(tables.get(0).fields()));
        }
        return Problem.input(name, "the measurement table has no rows.");
    }
}
