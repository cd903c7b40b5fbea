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
     * The first table with RGB, each row continued by the row of the same name in the first table
     * with colour; empty when there are no such two, or a name is missing or stands twice.
     */
    static Optional<TextTables.Table> codesWithColours(List<TextTables.Table> tables) {
        for (TextTables.Table codes : tables) {
            Columns left = Columns.of(codes.fields());
            if (left.rgb().isEmpty() || left.id() < 0) {
                continue;
            }
            for (TextTables.Table colours : tables) {
                Columns right = Columns.of(colours.fields());
                if (right.hasColour() && right.id() >= 0) {
                    return join(codes, left.id(), colours, right.id());
                }
            }
        }
        return Optional.empty();
    }

    private static Optional<TextTables.Table> join(
            TextTables.Table codes, int codesId, TextTables.Table colours, int coloursId) {
        Map<String, List<String>> byName = new HashMap<>();
        for (TextTables.Row row : colours.rows()) {
            if (byName.put(row.cells().get(coloursId), row.cells()) != null) {
                return Optional.empty();
            }
        }
        List<TextTables.Row> rows = new ArrayList<>();
        for (TextTables.Row row : codes.rows()) {
            List<String> colour = byName.get(row.cells().get(codesId));
            if (colour == null) {
                return Optional.empty();
            }
            rows.add(new TextTables.Row(row.line(), concat(row.cells(), colour)));
        }
        return Optional.of(new TextTables.Table(concat(codes.fields(), colours.fields()), rows));
    }

    private static List<String> concat(List<String> one, List<String> two) {
        List<String> all = new ArrayList<>(one);
        all.addAll(two);
        return all;
    }
}
