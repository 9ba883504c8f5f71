package store

import (
	"database/sql"
	"errors"
	"fmt"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"
)

// What can go wrong outside the program, in words for the person at the screen. Test with errors.Is.
var (
	ErrNotFound    = errors.New("there is no such lot")
	ErrNotDatabase = errors.New("the file is not a database")
	ErrForeign     = errors.New("the file is the database of another program")
	ErrNewer       = errors.New("the file was written by a newer version of this program")
	ErrDamaged     = errors.New("the file is damaged: restore a backup")
	ErrAltered     = errors.New("what is kept is not what was written") // of one row, beside ErrDamaged
	ErrFull        = errors.New("the disk is full: nothing was saved, make room and try again")
	ErrNotWritable = errors.New("the file or its folder can't be written: check its permissions")
	ErrBusy        = errors.New("another window or program holds the file: close it and try again")
	ErrDisk        = errors.New("the disk reported an error: nothing was saved")
	ErrLog         = errors.New("its write-ahead file does not go with it")
	ErrRefused     = errors.New("the value is not one that can be kept")
)

// primary is the mask that takes an extended result code of SQLite to its primary code ("Result and Error Codes").
const primary = 0xff

// sentinels holds the words for a primary result code.
var sentinels = map[int]error{
	sqlite3.SQLITE_BUSY:       ErrBusy,
	sqlite3.SQLITE_LOCKED:     ErrBusy,
	sqlite3.SQLITE_FULL:       ErrFull,
	sqlite3.SQLITE_READONLY:   ErrNotWritable,
	sqlite3.SQLITE_PERM:       ErrNotWritable,
	sqlite3.SQLITE_CANTOPEN:   ErrNotWritable,
	sqlite3.SQLITE_CORRUPT:    ErrDamaged,
	sqlite3.SQLITE_NOTADB:     ErrNotDatabase,
	sqlite3.SQLITE_IOERR:      ErrDisk,
	sqlite3.SQLITE_CONSTRAINT: ErrRefused,
	sqlite3.SQLITE_MISMATCH:   ErrRefused,
	sqlite3.SQLITE_TOOBIG:     ErrRefused,
}

// worded is a fault in words for the person at the screen; what SQLite itself says of it is for the log, see [Detail].
type worded struct{ words, raw error }

func (s worded) Error() string   { return s.words.Error() }
func (s worded) Unwrap() []error { return []error{s.words, s.raw} }

// Detail returns what SQLite says of an error whose text says it in words; empty where it says nothing more. It belongs into a log.
func Detail(err error) string {
	var s worded
	if !errors.As(err, &s) {
		return ""
	}
	return s.raw.Error()
}

// wrapped returns err with what was being done and, where the driver's code has one, its sentinel; nil for nil.
func wrapped(doing string, err error) error {
	if err == nil {
		return nil
	}
	if errors.Is(err, sql.ErrNoRows) {
		return fmt.Errorf("%s: %w", doing, ErrNotFound)
	}
	var driver *sqlite.Error
	if errors.As(err, &driver) {
		if words, ok := alteredIn(driver); ok {
			return fmt.Errorf("%s: %w: %w%s", doing, ErrDamaged, ErrAltered, words)
		}
		if known, ok := sentinels[driver.Code()&primary]; ok {
			return fmt.Errorf("%s: %w", doing, worded{known, err})
		}
	}
	return fmt.Errorf("%s: %w", doing, err)
}
