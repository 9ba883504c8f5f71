-- The CRC-32 of a row, of every table that holds what the user entered or what was said of it. A document had one of its own kind.
ALTER TABLE lots ADD COLUMN sum INTEGER;
ALTER TABLE answers ADD COLUMN sum INTEGER;
ALTER TABLE predictions ADD COLUMN sum INTEGER;
ALTER TABLE forecasts ADD COLUMN sum INTEGER;
ALTER TABLE steps ADD COLUMN sum INTEGER;
ALTER TABLE shelf ADD COLUMN sum INTEGER;
ALTER TABLE factors ADD COLUMN sum INTEGER;
ALTER TABLE settings ADD COLUMN sum INTEGER;

-- What never changes may be given its sum.
DROP TRIGGER predictions_never_change;
DROP TRIGGER forecasts_never_change;
DROP TRIGGER factors_never_change;

CREATE TRIGGER predictions_never_change BEFORE UPDATE OF id, lot, frozen_at, case_file, answer, factors, seed, engine ON predictions
BEGIN
    SELECT RAISE(ABORT, 'a frozen prediction never changes');
END;

CREATE TRIGGER forecasts_never_change BEFORE UPDATE OF prediction, body ON forecasts
BEGIN
    SELECT RAISE(ABORT, 'a frozen forecast never changes');
END;

CREATE TRIGGER factors_never_change BEFORE UPDATE OF id, decided_at, decision, factor, words, before, after ON factors
BEGIN
    SELECT RAISE(ABORT, 'the history of the factors never changes');
END;

-- here the program moves the sums in
