CREATE TABLE pairing (
    only INTEGER PRIMARY KEY CONSTRAINT only CHECK (only = 1),
    mark TEXT    NOT NULL CONSTRAINT mark CHECK (length(mark) = 79)
) STRICT;

INSERT INTO pairing VALUES (1, 'walkline-pair 00000000000000000000000000000000 ' || lower(hex(randomblob(16))));
