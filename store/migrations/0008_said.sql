-- What else the list shows of an answer, as JSON: plan, chance to win, expected gain, what a bid still needs.
ALTER TABLE answers ADD COLUMN said TEXT NOT NULL DEFAULT '{}' CONSTRAINT said CHECK (json_valid(said));
