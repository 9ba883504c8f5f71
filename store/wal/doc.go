// Package wal answers one question: what does the write-ahead file of a SQLite database hold, and is it whole?
//
// [Scan] reads one frame after another, checks the running checksum and tells which frames SQLite would apply: those up to the last
// commit before the first frame that is not whole. It also tells what stands behind that frame and is whole beside its neighbor: one
// commit there is a transaction that a crash cut off, before anyone was told that it was kept; more than one is damage, and SQLite
// would drop them without a word.
//
// Shapes and units: pages are numbered from 1, sizes are bytes.
//
// Sources: [1] SQLite, "Database File Format", section 4 (the write-ahead log). [2] SQLite, "WAL-mode File Format", section 2.
//
// It applies nothing and changes no file.
package wal
