-- Entries that the user named as the state to hold a printer to.
CREATE TABLE baseline (
    entry_id INTEGER PRIMARY KEY REFERENCES entry (id) ON DELETE CASCADE,
    set_at INTEGER NOT NULL
) STRICT;
