package org.printassay.logbook;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;
import org.printassay.compare.Figure;
import org.printassay.compare.FigureValue;

/** The table of figures. */
final class FigureRows {
    private final Handle handle;

    FigureRows(Handle handle) {
        this.handle = handle;
    }

    void insert(long entry, List<FigureValue> figures) {
        if (figures.isEmpty()) {
            return;
        }
        PreparedBatch batch =
                handle.prepareBatch(
                        "INSERT INTO figure (entry_id, name, value, random_part, systematic_part)"
                                + " VALUES (:entry, :name, :value, :random, :systematic)");
        for (FigureValue figure : figures) {
            batch.bind("entry", entry)
                    .bind("name", figure.figure().key())
                    .bind("value", figure.value())
                    .bind("random", figure.random())
                    .bind("systematic", figure.systematic())
                    .add();
        }
        batch.execute();
    }

    /** Values by entry, of one series. */
    Map<Figure, Map<Long, Double>> ofSeries(long series, List<Figure> figures) {
        Map<Figure, Map<Long, Double>> out = new EnumMap<>(Figure.class);
        List<String> names = new ArrayList<>();
        for (Figure figure : figures) {
            names.add(figure.key());
            out.put(figure, new HashMap<>());
        }
        if (figures.isEmpty()) {
            return out;
        }
        handle.createQuery(
                        "SELECT f.entry_id, f.name, f.value FROM entry e JOIN figure f ON"
                                + " f.entry_id = e.id WHERE e.series_id = :series AND f.name IN"
                                + " (<names>)")
                .bind("series", series)
                .bindList("names", names)
                .map((row, context) -> new Row(row.getLong(1), row.getString(2), row.getDouble(3)))
                .forEach(row -> put(out, row));
        return out;
    }

    private record Row(long entry, String name, double value) {}

    private static void put(Map<Figure, Map<Long, Double>> out, Row row) {
        Figure.ofKey(row.name())
                .map(out::get)
                .ifPresent(values -> values.put(row.entry(), row.value()));
    }
}
