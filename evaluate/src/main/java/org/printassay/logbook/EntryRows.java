package org.printassay.logbook;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiPredicate;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import org.jspecify.annotations.Nullable;

/** The tables of entries, series and packed evaluations. */
final class EntryRows {
    private static final String ENTRIES =
            "SELECT e.id, s.printer, s.paper, s.route, e.read_at, e.added_at, e.chart, e.print,"
                    + " e.manner, e.calibration, e.note, b.entry_id AS baseline"
                    + " FROM entry e JOIN series s ON s.id = e.series_id"
                    + " LEFT JOIN baseline b ON b.entry_id = e.id";

    private final Handle handle;

    EntryRows(Handle handle) {
        this.handle = handle;
    }

    /** A row that is to be. */
    record Draft(
            String contentId,
            Series series,
            Instant readAt,
            Instant addedAt,
            @Nullable String chart,
            @Nullable Integer print,
            String manner,
            @Nullable String calibration,
            @Nullable String note,
            PackedText text) {}

    /** The new number; empty when the same print is there. */
    Optional<Long> insert(Draft draft) {
        Optional<Long> id =
                handle.createQuery(
                                "INSERT INTO entry (content_id, series_id, read_at, added_at,"
                                        + " chart, print, manner, calibration, note) VALUES"
                                        + " (:content, :series, :read, :added, :chart, :print,"
                                        + " :manner, :calibration, :note)"
                                        + " ON CONFLICT (content_id) DO NOTHING RETURNING id")
                        .bind("content", draft.contentId())
                        .bind("series", seriesId(draft.series()))
                        .bind("read", draft.readAt().toEpochMilli())
                        .bind("added", draft.addedAt().toEpochMilli())
                        .bind("chart", draft.chart())
                        .bind("print", draft.print())
                        .bind("manner", draft.manner())
                        .bind("calibration", draft.calibration())
                        .bind("note", draft.note())
                        .mapTo(Long.class)
                        .findOne();
        id.ifPresent(
                made ->
                        handle.createUpdate(
                                        "INSERT INTO evaluation (entry_id, sha256, packed) VALUES"
                                                + " (:id, :sha256, :packed)")
                                .bind("id", made)
                                .bind("sha256", draft.text().sha256())
                                .bind("packed", draft.text().bytes())
                                .execute());
        return id;
    }

    private long seriesId(Series series) {
        Optional<Long> there = findSeries(series);
        if (there.isPresent()) {
            return there.get();
        }
        handle.createUpdate(
                        "INSERT INTO series (printer, paper, route) VALUES (:printer, :paper,"
                                + " :route) ON CONFLICT (printer, paper, route) DO NOTHING")
                .bind("printer", series.printer())
                .bind("paper", series.paper())
                .bind("route", series.route())
                .execute();
        return findSeries(series).orElseThrow();
    }

    /** The row of a series, however its names are written. */
    Optional<Long> findSeries(Series series) {
        Series wanted = series.key();
        return series((id, there) -> there.key().equals(wanted)).stream().findFirst();
    }

    private List<Long> series(BiPredicate<Long, Series> wanted) {
        List<Long> found = new ArrayList<>();
        handle.createQuery("SELECT id, printer, paper, route FROM series ORDER BY id")
                .map((row, context) -> Map.entry(row.getLong("id"), series(row)))
                .forEach(
                        row -> {
                            if (wanted.test(row.getKey(), row.getValue())) {
                                found.add(row.getKey());
                            }
                        });
        return found;
    }

    /** The entry of a print. */
    Optional<Entry> ofContent(String contentId) {
        return handle.createQuery(ENTRIES + " WHERE e.content_id = :content")
                .bind("content", contentId)
                .map((row, context) -> entry(row))
                .findOne();
    }

    Optional<Entry> find(long id) {
        return handle.createQuery(ENTRIES + " WHERE e.id = :id")
                .bind("id", id)
                .map((row, context) -> entry(row))
                .findOne();
    }

    /** What was packed for an entry. */
    Optional<PackedText> text(long id) {
        return handle.createQuery("SELECT sha256, packed FROM evaluation WHERE entry_id = :id")
                .bind("id", id)
                .map((row, context) -> new PackedText(row.getString(1), row.getBytes(2)))
                .findOne();
    }

    void remove(long id) {
        handle.createUpdate("DELETE FROM entry WHERE id = :id").bind("id", id).execute();
    }

    /** Selected entries in the order of time. */
    List<Entry> select(Selection selection) {
        StringBuilder sql = new StringBuilder(ENTRIES).append(" WHERE 1 = 1");
        List<Long> series = series((id, names) -> selection.fits(names));
        if (series.isEmpty()) {
            return List.of();
        }
        sql.append(" AND e.series_id IN (<series>)");
        condition(sql, selection.since(), " AND e.read_at >= :since");
        condition(sql, selection.manner(), " AND substr(e.manner, 1, :mannerLength) = :manner");
        sql.append(" ORDER BY e.read_at DESC, e.id DESC");
        if (selection.newest() > 0) {
            sql.append(" LIMIT :newest");
        }
        Query query = handle.createQuery(sql.toString());
        query.bindList("series", series);
        bind(query, "manner", selection.manner());
        if (selection.manner() != null) {
            query.bind("mannerLength", selection.manner().length());
        }
        if (selection.since() != null) {
            query.bind("since", selection.since().toEpochMilli());
        }
        if (selection.newest() > 0) {
            query.bind("newest", selection.newest());
        }
        List<Entry> newestFirst = new ArrayList<>(query.map((row, context) -> entry(row)).list());
        Collections.reverse(newestFirst);
        return newestFirst;
    }

    private static void condition(StringBuilder sql, @Nullable Object value, String text) {
        if (value != null) {
            sql.append(text);
        }
    }

    private static void bind(Query query, String name, @Nullable String value) {
        if (value != null) {
            query.bind(name, value);
        }
    }

    private static Series series(ResultSet row) throws SQLException {
        return new Series(row.getString("printer"), row.getString("paper"), row.getString("route"));
    }

    private static Entry entry(ResultSet row) throws SQLException {
        int print = row.getInt("print");
        Integer printOrNull = row.wasNull() ? null : Integer.valueOf(print);
        long ignored = row.getLong("baseline");
        boolean baseline = !row.wasNull() && ignored > 0;
        return new Entry(
                row.getLong("id"),
                series(row),
                Instant.ofEpochMilli(row.getLong("read_at")),
                Instant.ofEpochMilli(row.getLong("added_at")),
                row.getString("chart"),
                printOrNull,
                row.getString("manner"),
                row.getString("calibration"),
                row.getString("note"),
                baseline);
    }
}
