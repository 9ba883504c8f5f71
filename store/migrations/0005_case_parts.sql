CREATE TABLE terms_wider (
    lot  INTEGER NOT NULL REFERENCES lots (id),
    part TEXT    NOT NULL CONSTRAINT part CHECK (part IN ('damage', 'findings', 'repair', 'hidden', 'resale', 'buying', 'time', 'selling', 'labour', 'market', 'rules', 'run', 'factors', 'survey', 'ways_out')),
    body TEXT    NOT NULL CONSTRAINT body CHECK (json_valid(body)),
    PRIMARY KEY (lot, part)
) STRICT, WITHOUT ROWID;

INSERT INTO terms_wider (lot, part, body) SELECT lot, part, body FROM terms;

DROP TABLE terms;

ALTER TABLE terms_wider RENAME TO terms;

ALTER TABLE risks ADD COLUMN brings TEXT NOT NULL DEFAULT 'null' CONSTRAINT brings CHECK (json_valid(brings));
