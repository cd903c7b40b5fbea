package org.printassay.logbook;

import java.time.Instant;
import org.jdbi.v3.core.Handle;

/** The table of entries that are part of a baseline. */
final class BaselineRows {
    private final Handle handle;
    private final EntryRows entries;

    BaselineRows(Handle handle, EntryRows entries) {
        this.handle = handle;
        this.entries = entries;
    }

    void mark(long id) {
        handle.createUpdate(
                        "INSERT INTO baseline (entry_id, set_at) VALUES (:id, :at) ON CONFLICT"
                                + " (entry_id) DO NOTHING")
                .bind("id", id)
                .bind("at", Instant.now().toEpochMilli())
                .execute();
    }

    void unmark(long id) {
        handle.createUpdate("DELETE FROM baseline WHERE entry_id = :id").bind("id", id).execute();
    }

    /** So that two who set baselines at once do not end with both. */
    void lock(Series series) {
        handle.createUpdate("UPDATE series SET route = route WHERE id = :series")
                .bind("series", entries.findSeries(series).orElse(-1L))
                .execute();
    }
}
