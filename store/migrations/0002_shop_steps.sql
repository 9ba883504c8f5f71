CREATE TABLE shop_steps (
    number  INTEGER PRIMARY KEY AUTOINCREMENT,
    place   TEXT    NOT NULL CONSTRAINT place CHECK (place IN ('board', 'bench')),
    label   TEXT    NOT NULL,
    change  TEXT    NOT NULL CONSTRAINT change CHECK (json_valid(change)),
    undone  INTEGER NOT NULL DEFAULT 0 CONSTRAINT undone CHECK (undone IN (0, 1)),
    made_at TEXT    NOT NULL
) STRICT;

CREATE INDEX shop_steps_of_place ON shop_steps (place, number);
