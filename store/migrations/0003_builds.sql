CREATE TABLE terms_wider (
    lot  INTEGER NOT NULL REFERENCES lots (id),
    part TEXT    NOT NULL CONSTRAINT part CHECK (part IN ('damage', 'findings', 'repair', 'hidden', 'resale', 'buying', 'time', 'selling', 'labour', 'market', 'rules', 'run', 'factors')),
    body TEXT    NOT NULL CONSTRAINT body CHECK (json_valid(body)),
    PRIMARY KEY (lot, part)
) STRICT, WITHOUT ROWID;

INSERT INTO terms_wider (lot, part, body) SELECT lot, part, body FROM terms;

DROP TABLE terms;

ALTER TABLE terms_wider RENAME TO terms;

CREATE TABLE builds (
    lot            INTEGER PRIMARY KEY REFERENCES lots (id),
    outcome        TEXT    NOT NULL CONSTRAINT outcome CHECK (outcome IN ('', 'open', 'sold', 'parted out', 'resold as is', 'cancelled')),
    hammer         INTEGER CONSTRAINT hammer CHECK (hammer >= 0),
    bought         TEXT    NOT NULL CONSTRAINT bought CHECK (bought = '' OR bought GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    home           TEXT    NOT NULL CONSTRAINT home CHECK (home = '' OR home GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    started        TEXT    NOT NULL CONSTRAINT started CHECK (started = '' OR started GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    finished       TEXT    NOT NULL CONSTRAINT finished CHECK (finished = '' OR finished GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    inspected      TEXT    NOT NULL CONSTRAINT inspected CHECK (inspected = '' OR inspected GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    listed         TEXT    NOT NULL CONSTRAINT listed CHECK (listed = '' OR listed GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    sold           TEXT    NOT NULL CONSTRAINT sold CHECK (sold = '' OR sold GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    sale_price     INTEGER CONSTRAINT sale_price CHECK (sale_price >= 0),
    first_asked    INTEGER CONSTRAINT first_asked CHECK (first_asked >= 0),
    days_on_market INTEGER CONSTRAINT days_on_market CHECK (days_on_market >= 0),
    brand          TEXT    NOT NULL,
    otherwise      TEXT    NOT NULL CONSTRAINT otherwise CHECK (json_valid(otherwise)),
    note           TEXT    NOT NULL,
    imported_as    TEXT    NOT NULL,
    imported_row   TEXT    NOT NULL
) STRICT;

CREATE UNIQUE INDEX imported_once ON builds (imported_as) WHERE imported_as <> '';

CREATE TABLE charges (
    lot      INTEGER NOT NULL REFERENCES lots (id),
    position INTEGER NOT NULL,
    name     TEXT    NOT NULL,
    amount   INTEGER NOT NULL,
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE receipts (
    lot       INTEGER NOT NULL REFERENCES lots (id),
    position  INTEGER NOT NULL,
    date      TEXT    NOT NULL CONSTRAINT date CHECK (date = '' OR date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    what      TEXT    NOT NULL,
    amount    INTEGER NOT NULL,
    kind      TEXT    NOT NULL CONSTRAINT kind CHECK (kind IN ('part', 'materials', 'outside', 'freight', 'storage', 'holding', 'selling', 'other')),
    line      TEXT    NOT NULL,
    source    TEXT    NOT NULL,
    trade     TEXT    NOT NULL CONSTRAINT trade CHECK (trade IN ('', 'body', 'structure', 'mechanical', 'paint', 'electrical', 'trim')),
    donor     TEXT    NOT NULL,
    file      TEXT    NOT NULL,
    file_hash TEXT    NOT NULL CONSTRAINT file_hash CHECK (file_hash = '' OR length(file_hash) = 64 AND NOT file_hash GLOB '*[^0-9a-f]*'),
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE hours_worked (
    lot      INTEGER NOT NULL REFERENCES lots (id),
    position INTEGER NOT NULL,
    date     TEXT    NOT NULL CONSTRAINT date CHECK (date = '' OR date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    trade    TEXT    NOT NULL CONSTRAINT trade CHECK (trade IN ('body', 'structure', 'mechanical', 'paint', 'electrical', 'trim')),
    line     TEXT    NOT NULL,
    hours    REAL    NOT NULL CONSTRAINT hours CHECK (hours >= 0),
    what     TEXT    NOT NULL,
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE risks_seen (
    lot      INTEGER NOT NULL REFERENCES lots (id),
    position INTEGER NOT NULL,
    risk     TEXT    NOT NULL,
    state    TEXT    NOT NULL CONSTRAINT state CHECK (state IN ('found', 'not there')),
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE lines_done (
    lot      INTEGER NOT NULL REFERENCES lots (id),
    position INTEGER NOT NULL,
    line     TEXT    NOT NULL,
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE forecasts (
    prediction INTEGER PRIMARY KEY REFERENCES predictions (id),
    body       TEXT NOT NULL CONSTRAINT body CHECK (json_valid(body))
) STRICT;

CREATE TRIGGER forecasts_never_change BEFORE UPDATE ON forecasts
BEGIN
    SELECT RAISE(ABORT, 'a frozen forecast never changes');
END;

CREATE TRIGGER forecasts_never_go BEFORE DELETE ON forecasts
BEGIN
    SELECT RAISE(ABORT, 'a frozen forecast is never deleted');
END;

CREATE TABLE factors (
    id         INTEGER PRIMARY KEY AUTOINCREMENT,
    decided_at TEXT    NOT NULL,
    decision   TEXT    NOT NULL CONSTRAINT decision CHECK (decision IN ('accepted', 'refused', 'restored')),
    factor     TEXT    NOT NULL,
    words      TEXT    NOT NULL,
    before     TEXT    NOT NULL CONSTRAINT before CHECK (json_valid(before)),
    after      TEXT    NOT NULL CONSTRAINT after CHECK (json_valid(after))
) STRICT;

CREATE TRIGGER factors_never_change BEFORE UPDATE ON factors
BEGIN
    SELECT RAISE(ABORT, 'the history of the factors never changes');
END;

CREATE TRIGGER factors_never_go BEFORE DELETE ON factors
BEGIN
    SELECT RAISE(ABORT, 'the history of the factors is never deleted');
END;
