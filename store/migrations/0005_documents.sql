CREATE TABLE documents (
    lot  INTEGER NOT NULL REFERENCES lots (id),
    part TEXT    NOT NULL,
    page INTEGER NOT NULL,
    body TEXT    NOT NULL,
    PRIMARY KEY (lot, part, page)
) STRICT;

ALTER TABLE steps RENAME TO lot_steps;

CREATE TABLE steps (
    number  INTEGER PRIMARY KEY AUTOINCREMENT,
    subject TEXT    NOT NULL,
    label   TEXT    NOT NULL,
    typing  TEXT    NOT NULL,
    change  TEXT    NOT NULL CONSTRAINT change CHECK (json_valid(change)),
    undone  INTEGER NOT NULL DEFAULT 0 CONSTRAINT undone CHECK (undone IN (0, 1)),
    made_at TEXT    NOT NULL
) STRICT;

CREATE INDEX steps_of_subject ON steps (subject, number);

ALTER TABLE lots ADD COLUMN state_free TEXT NOT NULL DEFAULT '';
ALTER TABLE lots ADD COLUMN imported_as TEXT NOT NULL DEFAULT '';
ALTER TABLE lots ADD COLUMN imported_row TEXT NOT NULL DEFAULT '';
UPDATE lots SET state_free = state;
UPDATE lots SET imported_as = b.imported_as, imported_row = b.imported_row FROM builds b WHERE b.lot = lots.id;

-- here the program moves rows and columns to documents, and the old steps to the new ones

DROP TABLE terms;
DROP TABLE surveys;
DROP TABLE findings;
DROP TABLE repair_lines;
DROP TABLE risks;
DROP TABLE comparables;
DROP TABLE builds;
DROP TABLE charges;
DROP TABLE receipts;
DROP TABLE hours_worked;
DROP TABLE risks_seen;
DROP TABLE lines_done;
DROP TABLE photos;
DROP TABLE lot_steps;
DROP TABLE shop_steps;

ALTER TABLE lots DROP COLUMN state;
ALTER TABLE lots RENAME COLUMN state_free TO state;
ALTER TABLE lots DROP COLUMN format;
ALTER TABLE lots DROP COLUMN valued_on;
ALTER TABLE lots DROP COLUMN odometer;
ALTER TABLE lots DROP COLUMN odometer_unit;
ALTER TABLE lots DROP COLUMN odometer_status;
ALTER TABLE lots DROP COLUMN title_issued_in;
ALTER TABLE lots DROP COLUMN title_document;
ALTER TABLE lots DROP COLUMN title_brands;
ALTER TABLE lots DROP COLUMN register_in;
ALTER TABLE lots DROP COLUMN loss;
ALTER TABLE lots DROP COLUMN condition;
ALTER TABLE lots DROP COLUMN keys;
ALTER TABLE lots DROP COLUMN airbags;

CREATE UNIQUE INDEX imported_once ON lots (imported_as) WHERE imported_as <> '' AND removed_at IS NULL;
