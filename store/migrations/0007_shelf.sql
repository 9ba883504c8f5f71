CREATE TABLE shelf (
    id   INTEGER PRIMARY KEY AUTOINCREMENT,
    body TEXT NOT NULL CONSTRAINT body CHECK (json_valid(body))
) STRICT;

-- here the program moves the comparables of all lots to the shelf, and tells each lot and each step where its rows lie there
