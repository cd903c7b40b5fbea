package org.printassay.measurement;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Files that keep codes in one table and readings in another, tied together by patch names. */
final class TableJoin {
    private TableJoin() {}

    /**
     * The tables, where one holds codes alone and others hold readings of the same patch names
     * without codes: the readings with their codes. A table of readings that lacks a name, or has
     * one twice, stays as it is.
     */
    static List<TextTables.Table> withCodes(List<TextTables.Table> tables) {
        List<TextTables.Table> codes =
                tables.stream().filter(table -> isCodes(Columns.of(table.fields()))).toList();
        List<TextTables.Table> all = new ArrayList<>();
        for (TextTables.Table table : tables) {
            Columns columns = Columns.of(table.fields());
            boolean readings =
                    columns.rgb().isEmpty()
                            && !columns.ids().isEmpty()
                            && !Columns.byCondition(table.fields()).isEmpty();
            Optional<TextTables.Table> joined = Optional.empty();
            for (int i = 0; readings && i < codes.size() && joined.isEmpty(); i++) {
                int id = Columns.of(codes.get(i).fields()).ids().get(0);
                joined = join(codes.get(i), id, table, columns.ids().get(0));
            }
            all.add(joined.orElse(table));
        }
        return all;
    }

    private static boolean isCodes(Columns columns) {
        return !columns.rgb().isEmpty() && !columns.ids().isEmpty() && !columns.hasColour();
    }

    private static Optional<TextTables.Table> join(
            TextTables.Table codes, int codesId, TextTables.Table colours, int coloursId) {
        Map<String, TextTables.Row> byName = new HashMap<>();
        for (TextTables.Row row : colours.rows()) {
            if (byName.put(row.cells().get(coloursId), row) != null) {
                return Optional.empty();
            }
        }
        List<TextTables.Row> rows = new ArrayList<>();
        for (TextTables.Row row : codes.rows()) {
            TextTables.Row colour = byName.get(row.cells().get(codesId));
            if (colour == null) {
                return Optional.empty();
            }
            rows.add(new TextTables.Row(colour.line(), concat(row.cells(), colour.cells())));
        }
        return Optional.of(
                new TextTables.Table(
                        concat(codes.fields(), colours.fields()), rows, colours.keywords()));
    }

    private static List<String> concat(List<String> one, List<String> two) {
        List<String> all = new ArrayList<>(one);
        all.addAll(two);
        return all;
    }
}
