CREATE TABLE shelf (
    id   INTEGER PRIMARY KEY AUTOINCREMENT,
    body TEXT NOT NULL CONSTRAINT body CHECK (json_valid(body))
) STRICT;

-- What else the list shows of an answer, as JSON: plan, chance to win, expected gain, what a bid still needs.
ALTER TABLE answers ADD COLUMN said TEXT NOT NULL DEFAULT '{}' CONSTRAINT said CHECK (json_valid(said));

-- The CRC-32 of a document; NULL: it was written before there were sums.
ALTER TABLE documents ADD COLUMN sum INTEGER;

-- here the program moves the comparables of all lots to the shelf, and tells each lot and each step where its rows lie there
