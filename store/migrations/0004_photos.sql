CREATE TABLE photos (
    lot      INTEGER NOT NULL REFERENCES lots (id),
    position INTEGER NOT NULL,
    hash     TEXT    NOT NULL CONSTRAINT hash CHECK (length(hash) = 64 AND NOT hash GLOB '*[^0-9a-f]*'),
    kind     TEXT    NOT NULL CONSTRAINT kind CHECK (kind IN ('jpeg', 'png', 'webp')),
    name     TEXT    NOT NULL,
    width    INTEGER NOT NULL CONSTRAINT width CHECK (width > 0),
    height   INTEGER NOT NULL CONSTRAINT height CHECK (height > 0),
    taken    TEXT    NOT NULL CONSTRAINT taken CHECK (taken = '' OR taken GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    area     TEXT    NOT NULL CONSTRAINT area CHECK (area IN ('', '01', '02', '03', '04', '05', '06', '07', '08', '09', '10', '11', '12', 'top', 'undercarriage', 'interior', 'engine_bay', 'electrical', 'battery_pack', 'water')),
    stage    TEXT    NOT NULL CONSTRAINT stage CHECK (stage IN ('before', 'after')),
    caption  TEXT    NOT NULL,
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;
