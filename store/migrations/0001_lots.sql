CREATE TABLE lots (
    id              INTEGER PRIMARY KEY AUTOINCREMENT,
    state           TEXT    NOT NULL CONSTRAINT state CHECK (state IN ('to look at', 'looked at', 'bid', 'won', 'lost', 'passed')),
    archived        INTEGER NOT NULL DEFAULT 0 CONSTRAINT archived CHECK (archived IN (0, 1)),
    removed_at      TEXT,
    saved_at        TEXT    NOT NULL,
    revision        INTEGER NOT NULL DEFAULT 0,
    format          TEXT    NOT NULL,
    currency        TEXT    NOT NULL,
    valued_on       TEXT    NOT NULL CONSTRAINT valued_on CHECK (valued_on = '' OR valued_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    number          TEXT    NOT NULL,
    sale            TEXT    NOT NULL,
    sale_date       TEXT    NOT NULL CONSTRAINT sale_date CHECK (sale_date = '' OR sale_date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    vin             TEXT    NOT NULL,
    model_year      INTEGER NOT NULL,
    make            TEXT    NOT NULL,
    model           TEXT    NOT NULL,
    trim            TEXT    NOT NULL,
    odometer        INTEGER,
    odometer_unit   TEXT    NOT NULL CONSTRAINT odometer_unit CHECK (odometer_unit IN ('', 'mi', 'km')),
    odometer_status TEXT    NOT NULL CONSTRAINT odometer_status CHECK (odometer_status IN ('', 'actual', 'not_actual', 'exceeds_limits', 'exempt', 'unknown')),
    title_issued_in TEXT    NOT NULL,
    title_document  TEXT    NOT NULL,
    title_brands    TEXT    NOT NULL CONSTRAINT title_brands CHECK (json_valid(title_brands)),
    register_in     TEXT    NOT NULL,
    loss            TEXT    NOT NULL CONSTRAINT loss CHECK (json_valid(loss)),
    condition       TEXT    NOT NULL CONSTRAINT condition CHECK (condition IN ('', 'drives', 'starts', 'turns_over', 'dead', 'unknown')),
    keys            INTEGER CONSTRAINT keys CHECK (keys IN (0, 1)),
    airbags         TEXT    NOT NULL CONSTRAINT airbags CHECK (json_valid(airbags))
) STRICT;

CREATE TABLE terms (
    lot  INTEGER NOT NULL REFERENCES lots (id),
    part TEXT    NOT NULL CONSTRAINT part CHECK (part IN ('damage', 'findings', 'repair', 'hidden', 'resale', 'buying', 'time', 'selling', 'labour', 'market', 'rules', 'run')),
    body TEXT    NOT NULL CONSTRAINT body CHECK (json_valid(body)),
    PRIMARY KEY (lot, part)
) STRICT, WITHOUT ROWID;

CREATE TABLE surveys (
    lot      INTEGER NOT NULL REFERENCES lots (id),
    position INTEGER NOT NULL,
    area     TEXT    NOT NULL CONSTRAINT area CHECK (area IN ('', '01', '02', '03', '04', '05', '06', '07', '08', '09', '10', '11', '12', 'top', 'undercarriage', 'interior', 'engine_bay', 'electrical', 'battery_pack', 'water')),
    extent   TEXT    NOT NULL CONSTRAINT extent CHECK (extent IN ('', 'minor', 'functional', 'disabling')),
    depth    TEXT    NOT NULL CONSTRAINT depth CHECK (depth IN ('', 'skin', 'bolted', 'structure')),
    note     TEXT    NOT NULL,
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE findings (
    lot      INTEGER NOT NULL REFERENCES lots (id),
    position INTEGER NOT NULL,
    finding  TEXT    NOT NULL,
    answer   TEXT    NOT NULL CONSTRAINT answer CHECK (answer IN ('yes', 'no')),
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE repair_lines (
    lot              INTEGER NOT NULL REFERENCES lots (id),
    position         INTEGER NOT NULL,
    line             TEXT    NOT NULL,
    job              TEXT    NOT NULL,
    area             TEXT    NOT NULL,
    operation        TEXT    NOT NULL,
    chance           REAL,
    hours            TEXT    NOT NULL CONSTRAINT hours CHECK (json_valid(hours)),
    materials_low    REAL    NOT NULL,
    materials_likely REAL    NOT NULL,
    materials_high   REAL    NOT NULL,
    outside_low      REAL    NOT NULL,
    outside_likely   REAL    NOT NULL,
    outside_high     REAL    NOT NULL,
    parts            TEXT    NOT NULL CONSTRAINT parts CHECK (json_valid(parts)),
    loading          REAL,
    why              TEXT    NOT NULL,
    caution          TEXT    NOT NULL,
    edited           INTEGER NOT NULL CONSTRAINT edited CHECK (edited IN (0, 1)),
    removed          INTEGER NOT NULL CONSTRAINT removed CHECK (removed IN (0, 1)),
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE risks (
    lot         INTEGER NOT NULL REFERENCES lots (id),
    position    INTEGER NOT NULL,
    risk        TEXT    NOT NULL,
    name        TEXT    NOT NULL,
    present     REAL    NOT NULL,
    absent      REAL    NOT NULL,
    cost_low    REAL    NOT NULL,
    cost_likely REAL    NOT NULL,
    cost_high   REAL    NOT NULL,
    hours       TEXT    NOT NULL CONSTRAINT hours CHECK (json_valid(hours)),
    days_low    REAL    NOT NULL,
    days_likely REAL    NOT NULL,
    days_high   REAL    NOT NULL,
    loading     REAL,
    evidence    TEXT    NOT NULL CONSTRAINT evidence CHECK (json_valid(evidence)),
    why         TEXT    NOT NULL,
    caution     TEXT    NOT NULL,
    removed     INTEGER NOT NULL CONSTRAINT removed CHECK (removed IN (0, 1)),
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE comparables (
    lot          INTEGER NOT NULL REFERENCES lots (id),
    position     INTEGER NOT NULL,
    comparable   TEXT    NOT NULL,
    price        INTEGER NOT NULL,
    kind         TEXT    NOT NULL CONSTRAINT kind CHECK (kind IN ('', 'asked', 'sold')),
    date         TEXT    NOT NULL CONSTRAINT date CHECK (date = '' OR date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    model_year   INTEGER NOT NULL,
    make         TEXT    NOT NULL,
    model        TEXT    NOT NULL,
    trim         TEXT    NOT NULL,
    mileage      REAL,
    mileage_unit TEXT    NOT NULL CONSTRAINT mileage_unit CHECK (mileage_unit IN ('', 'mi', 'km')),
    title        TEXT    NOT NULL,
    distance_mi  REAL,
    condition    REAL,
    note         TEXT    NOT NULL,
    source       TEXT    NOT NULL,
    more         TEXT    NOT NULL CONSTRAINT more CHECK (json_valid(more)),
    excluded     INTEGER NOT NULL CONSTRAINT excluded CHECK (excluded IN (0, 1)),
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE steps (
    lot     INTEGER NOT NULL REFERENCES lots (id),
    number  INTEGER NOT NULL,
    label   TEXT    NOT NULL,
    change  TEXT    NOT NULL CONSTRAINT change CHECK (json_valid(change)),
    undone  INTEGER NOT NULL DEFAULT 0 CONSTRAINT undone CHECK (undone IN (0, 1)),
    made_at TEXT    NOT NULL,
    PRIMARY KEY (lot, number)
) STRICT;

CREATE TABLE answers (
    lot         INTEGER PRIMARY KEY REFERENCES lots (id),
    revision    INTEGER NOT NULL,
    decision    TEXT    NOT NULL CONSTRAINT decision CHECK (decision IN ('bid', 'do_not_bid')),
    walk_away   INTEGER,
    binding     TEXT    NOT NULL,
    loss_chance REAL    NOT NULL,
    mean_profit REAL    NOT NULL,
    per_hour    REAL,
    noted_at    TEXT    NOT NULL
) STRICT;

CREATE TABLE predictions (
    id         INTEGER PRIMARY KEY AUTOINCREMENT,
    lot        INTEGER NOT NULL REFERENCES lots (id),
    frozen_at  TEXT    NOT NULL,
    case_file  TEXT    NOT NULL CONSTRAINT case_file CHECK (json_valid(case_file)),
    answer     TEXT    NOT NULL CONSTRAINT answer CHECK (json_valid(answer)),
    factors    TEXT    NOT NULL CONSTRAINT factors CHECK (json_valid(factors)),
    seed       INTEGER NOT NULL,
    engine     TEXT    NOT NULL
) STRICT;

CREATE INDEX predictions_of_lot ON predictions (lot, id);

CREATE TRIGGER predictions_never_change BEFORE UPDATE ON predictions
BEGIN
    SELECT RAISE(ABORT, 'a frozen prediction never changes');
END;

CREATE TRIGGER predictions_never_go BEFORE DELETE ON predictions
BEGIN
    SELECT RAISE(ABORT, 'a frozen prediction is never deleted');
END;

CREATE TABLE settings (
    name     TEXT PRIMARY KEY,
    value    TEXT NOT NULL CONSTRAINT value CHECK (json_valid(value)),
    saved_at TEXT NOT NULL
) STRICT, WITHOUT ROWID;
