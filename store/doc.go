// Package store answers one question: how is a buyer's work kept so that nothing is lost?
//
// It keeps one SQLite file. A lot's facts are columns, its survey, findings, repair lines, own risks and comparables are
// rows, and the remaining terms of its case are JSON documents with the keys of the case file. A save reads what is
// stored, works out what differs (documents swapped, runs of rows spliced) and writes only that, together with a step
// of history that undoes and redoes it; so undo survives a restart. Frozen predictions are kept as whole documents that
// triggers keep from changing. What came of a lot (bills, hours, days, hidden damage seen, the sale) is kept beside its case
// and shares its history, and so do its photographs; what was decided on learned factors is a history of its own. Each exported method is one transaction.
//
// Shapes and units: money in columns is INTEGER minor units of the lot's currency; inside documents and three-point
// judgements it is what the case holds (amounts in minor units, judgements in major units). Times are RFC 3339 in UTC,
// days YYYY-MM-DD, both as text. A lot's id is never used again.
//
// Choices: synchronous is FULL, not NORMAL: in WAL mode NORMAL can lose the last commits when the power fails, FULL
// costs about 0.1 ms more a save, and a save is made a few times a second at most. There is one writing connection,
// whose transactions take the write lock at once, so that a reader is never turned into a writer half way. History
// holds the last 200 steps of a lot. A removed lot is only marked and can be restored.
//
// Assumptions: the file lies on a local disk, as SQLite's WAL mode needs. Text is valid UTF-8; JSON turns other bytes
// into U+FFFD.
//
// Sources: [1] SQLite, "Write-Ahead Logging", sections 2 and 9. [2] SQLite, "PRAGMA Statements": synchronous,
// application_id, user_version. [3] SQLite, "Database File Format", section 1.2 (the header string).
//
// It does not value, check or complete a case: a half-typed case is kept as it is. The files of photographs lie in a folder
// beside it (package album); a backup copies them beside its own file. A backup is put back at the next start, when no one has
// the store open; what was there is set aside whole.
package store
