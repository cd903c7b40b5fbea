-- Instants are milliseconds since 1970, UTC. Names that were not said are empty.
CREATE TABLE series (
    id INTEGER PRIMARY KEY,
    printer TEXT NOT NULL,
    paper TEXT NOT NULL,
    route TEXT NOT NULL,
    UNIQUE (printer, paper, route)
) STRICT;

-- content_id makes adding the same print twice impossible. Numbers are never used again.
CREATE TABLE entry (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    content_id TEXT NOT NULL UNIQUE CHECK (length(content_id) = 64),
    series_id INTEGER NOT NULL REFERENCES series (id),
    read_at INTEGER NOT NULL,
    added_at INTEGER NOT NULL,
    chart TEXT,
    print INTEGER,
    manner TEXT NOT NULL,
    calibration TEXT,
    note TEXT
) STRICT;

CREATE INDEX entry_in_series ON entry (series_id, read_at, id);

-- evaluation.json, gzip; apart from the entries, so that lists and trends need not step over it.
CREATE TABLE evaluation (
    entry_id INTEGER PRIMARY KEY REFERENCES entry (id) ON DELETE CASCADE,
    sha256 TEXT NOT NULL,
    packed BLOB NOT NULL
) STRICT;

CREATE TABLE figure (
    entry_id INTEGER NOT NULL REFERENCES entry (id) ON DELETE CASCADE,
    name TEXT NOT NULL,
    value REAL NOT NULL,
    random_part REAL,
    systematic_part REAL NOT NULL,
    PRIMARY KEY (entry_id, name)
) STRICT, WITHOUT ROWID;
