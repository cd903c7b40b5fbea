-- Instants are milliseconds since 1970, UTC. Names that were not said are empty.
CREATE TABLE series (
    id BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    printer TEXT NOT NULL,
    paper TEXT NOT NULL,
    route TEXT NOT NULL,
    UNIQUE (printer, paper, route)
);

-- content_id makes adding the same print twice impossible. Numbers are never used again.
CREATE TABLE entry (
    id BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    content_id TEXT NOT NULL UNIQUE CHECK (length(content_id) = 64),
    series_id BIGINT NOT NULL REFERENCES series (id),
    read_at BIGINT NOT NULL,
    added_at BIGINT NOT NULL,
    chart TEXT,
    print INTEGER,
    manner TEXT NOT NULL,
    calibration TEXT,
    note TEXT
);

CREATE INDEX entry_in_series ON entry (series_id, read_at, id);

-- evaluation.json, gzip; not compressed again.
CREATE TABLE evaluation (
    entry_id BIGINT PRIMARY KEY REFERENCES entry (id) ON DELETE CASCADE,
    sha256 TEXT NOT NULL,
    packed BYTEA NOT NULL
);
ALTER TABLE evaluation ALTER COLUMN packed SET STORAGE EXTERNAL;

CREATE TABLE figure (
    entry_id BIGINT NOT NULL REFERENCES entry (id) ON DELETE CASCADE,
    name TEXT NOT NULL,
    value DOUBLE PRECISION NOT NULL,
    random_part DOUBLE PRECISION,
    systematic_part DOUBLE PRECISION NOT NULL,
    PRIMARY KEY (entry_id, name)
);
