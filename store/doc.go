// Package store answers one question: how is a buyer's work kept so that nothing is lost?
//
// It keeps one SQLite file, and the values of package store/book in it. What lists show, sort or filter by is a column of a lot;
// all else of a lot is JSON documents, one a part, long lists in pages. [Store.Do] keeps a step of the user in one transaction: it
// works out what differs between before and after, field by field and item by item, writes that where what is stored is still as
// before, and is refused whole where it is not. What was written is one step of one history, which [Store.Undo] and [Store.Redo]
// walk subject by subject by the same rule; so undo survives a restart and never takes back what another page wrote since.
// Frozen predictions and the history of the learned factors are rows that triggers keep from changing.
//
// Shapes and units: money is whole minor units of the lot's currency, judgements are in major units, as the case holds them. Times
// are RFC 3339 in UTC, days YYYY-MM-DD, both as text. A lot's id is never used again. An answer is kept with the revision of the
// case that it answers, and the revision rises with the case alone.
//
// Choices: a three-point judgement is one field, and so is a list that is not one of the long ones; a long list changes by one run
// of items that gives way to another, wherever those stand now. Undo drops from a step what it left alone, so that redo does what
// undo took back and no more. What is typed in one field without a pause is one step. History holds the last 200 steps of a
// subject. A removed lot is only marked. Synchronous is FULL, not NORMAL: in WAL mode NORMAL can lose the last commits when the
// power fails, FULL costs about 0.1 ms more a step. There is one writing connection, whose transactions take the write lock at
// once, so that a reader is never turned into a writer half way. Each row has a sum beside it, for SQLite has none: one that is
// not what was written is named and never read as another figure.
//
// Assumptions: the file lies on a local disk, as SQLite's WAL mode needs. Text is valid UTF-8; JSON turns other bytes
// into U+FFFD.
//
// Sources: [1] SQLite, "Write-Ahead Logging", sections 2 and 9. [2] SQLite, "PRAGMA Statements": synchronous,
// application_id, user_version. [3] SQLite, "Database File Format", section 1.2 (the header string).
//
// It does not value, check or complete a case: a half-typed case is kept as it is, and no word is refused. The files of photographs
// lie in a folder beside it (package album); a backup copies them beside its own file. A backup is put back at the next start, when
// no one has the store open; what was there is set aside whole.
package store
