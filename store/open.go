package store

import (
	"bytes"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"log/slog"
	"os"
	"path/filepath"
	"time"

	"walkline/store/plain"
)

// Store is an open file. It may be used from several goroutines at once, and the file by several stores.
type Store struct {
	path    string
	writer  *sql.DB
	reader  *sql.DB
	now     func() time.Time
	recent  recent
	shelves shelves
	said    []string // see [Store.Said]
	scratch string   // the folder of the copy that is read instead; empty: none
}

// Open returns the store in the file at path, which is created when there is none; its folder must exist. A file of an
// older format is copied beside itself and then brought up to date. A backup that [Store.Stage] made ready is put in place first.
// Errors: [ErrNotDatabase], [ErrForeign], [ErrNewer], [ErrDamaged], [ErrNotWritable], [ErrBusy], [ErrFull], [ErrDisk]; the file is then as
// it was.
func Open(ctx context.Context, path string) (*Store, error) {
	return open(ctx, path, schema(), time.Now)
}

// OpenAtOnce opens as [Open] does, but leaves it to [Store.LookAtPages] to look at each page of a file that needs no change: that takes
// as long as to read all of the file.
func OpenAtOnce(ctx context.Context, path string) (*Store, error) {
	return manner{schema(), time.Now, func(version int) bool { return version < len(schema()) }}.open(ctx, path)
}

func open(ctx context.Context, path string, steps []string, now func() time.Time) (*Store, error) {
	return manner{steps, now, lookable}.open(ctx, path)
}

// manner is how a file is opened: the steps to its present format, the clock, and whether a file of a format is looked at first.
type manner struct {
	steps []string
	now   func() time.Time
	looks func(version int) bool
}

// lookable reports whether every page of a file of a format may be looked at. Whoever knows a newer format may look at that.
func lookable(version int) bool { return version <= len(schema()) }

func (m manner) open(ctx context.Context, path string) (*Store, error) {
	doing := "opening " + path
	absolute, err := filepath.Abs(path)
	if err != nil {
		return nil, wrapped(doing, err)
	}
	if err := putStaged(ctx, absolute, m.now); err != nil {
		return nil, wrapped("putting a backup in the place of "+path, err)
	}
	said, err := pair(ctx, absolute)
	if err == nil {
		err = errors.Join(journalled(absolute), takenBack(ctx, absolute))
	}
	if err != nil {
		return nil, wrapped(doing, err)
	}
	version, err := inspect(ctx, absolute, m.looks)
	if err != nil {
		return nil, wrapped(doing, err)
	}
	if version > len(m.steps) {
		return nil, wrapped(doing, newer(version, len(m.steps)))
	}
	s := &Store{path: absolute, now: m.now, said: said}
	if err := s.connect(ctx, version, m.steps); err != nil {
		s.Close()
		return nil, wrapped(doing, err)
	}
	return s, nil
}

func newer(version, known int) error {
	return fmt.Errorf("%w: it has format %d, this version reads formats up to %d", ErrNewer, version, known)
}

// connect opens both pools and brings the file from its version to the last of steps.
func (s *Store) connect(ctx context.Context, version int, steps []string) (err error) {
	if s.writer, err = writing.open(ctx, s.path); err != nil {
		return err
	}
	if version > 0 { // a journal of turning the file into one with a log must not come back beside it
		if err := plain.SyncFolder(filepath.Dir(s.path)); err != nil {
			return err
		}
	}
	if 0 < version && version < len(steps) {
		copied, failed := s.copyBefore(ctx, version)
		if failed != nil {
			return fmt.Errorf("copying the file before its format is brought up to date: %w", failed)
		}
		defer func() {
			if now, known := formatOf(ctx, s.path, lookable); err != nil && known == nil && now == version {
				err = errors.Join(err, plain.Remove(copied)) // start after start would add one
			}
		}()
	}
	if err := migrate(ctx, s.writer, steps); err != nil {
		return err
	}
	if version < len(steps) || len(s.said) > 0 {
		// The mark that pairs the file with its log is in the file itself from now on, and what a crash left half written is not found again.
		if _, err := s.writer.ExecContext(ctx, `PRAGMA wal_checkpoint(TRUNCATE)`); err != nil {
			return err
		}
	}
	if version < len(steps) {
		if err := plain.SyncFolder(filepath.Dir(s.path)); err != nil { // SQLite waits for the names of logs alone
			return err
		}
		slog.Info("format brought up to date", "file", s.path, "from", version, "to", len(steps))
	}
	s.reader, err = reading.open(ctx, s.path)
	return err
}

// Close ends every connection. Errors: the last of the file could not be written.
func (s *Store) Close() error {
	var errs []error
	for _, db := range []*sql.DB{s.reader, s.writer} { // the writer last: it folds the log into the file
		if db != nil {
			errs = append(errs, db.Close())
		}
	}
	if s.scratch != "" {
		errs = append(errs, os.RemoveAll(s.scratch))
	}
	return wrapped("closing "+s.path, errors.Join(errs...))
}

// magic is how every SQLite file begins. Source: doc.go [3].
var magic = []byte("SQLite format 3\x00")

// inspect returns the format of the file at path, 0 when there is none or it is empty, without changing it. It looks at each page where
// that is asked for.
func inspect(ctx context.Context, path string, looks func(version int) bool) (int, error) {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return 0, folder(filepath.Dir(path))
	case err != nil:
		return 0, fmt.Errorf("%w (%w)", ErrNotWritable, err)
	case info.IsDir():
		return 0, fmt.Errorf("%w: it is a folder", ErrNotDatabase)
	case !info.Mode().IsRegular():
		return 0, fmt.Errorf("%w: %w", ErrNotDatabase, plain.ErrNoFile)
	case info.Size() == 0:
		return 0, nil
	}
	if err := startsAsDatabase(path); err != nil {
		return 0, err
	}
	return formatOf(ctx, path, looks)
}

func folder(path string) error {
	if info, err := os.Stat(path); err != nil || !info.IsDir() {
		return fmt.Errorf("%w: there is no folder %s", ErrNotWritable, path)
	}
	return nil
}

func startsAsDatabase(path string) error {
	head, err := plain.Head(path, len(magic))
	switch {
	case errors.Is(err, plain.ErrNoFile):
		return fmt.Errorf("%w: %w", ErrNotDatabase, plain.ErrNoFile)
	case err != nil:
		return fmt.Errorf("%w (%w)", ErrNotWritable, err)
	case !bytes.Equal(head, magic):
		return fmt.Errorf("%w: it does not start as one; nothing in it was changed", ErrNotDatabase)
	}
	return nil
}

// formatOf returns the format of a SQLite file. Errors: [ErrForeign] when it bears another program's mark.
func formatOf(ctx context.Context, path string, looks func(version int) bool) (int, error) {
	db, err := inspecting.open(ctx, path)
	if err != nil {
		return 0, err
	}
	defer db.Close()
	var application, version, tables int
	err = db.QueryRowContext(ctx, `SELECT
		(SELECT application_id FROM pragma_application_id),
		(SELECT user_version FROM pragma_user_version),
		(SELECT count(*) FROM sqlite_schema)`).Scan(&application, &version, &tables)
	if err != nil {
		return 0, err
	}
	blank := application == 0 && version == 0 && tables == 0 // a start that was cut off before the first format
	if application != applicationID && !blank {
		return 0, fmt.Errorf("%w; nothing in it was changed", ErrForeign)
	}
	if !looks(version) {
		return version, nil
	}
	return version, glance(ctx, db)
}

// write runs f in one transaction that holds the write lock from its start. Errors of f undo all of it.
func (s *Store) write(ctx context.Context, doing string, f func(tx *sql.Tx) error) error {
	if s.writer == nil {
		return fmt.Errorf("%s: %w: it was opened to be read alone", doing, ErrNotWritable)
	}
	tx, err := s.writer.BeginTx(ctx, nil)
	return finish(tx, err, doing, func(tx *sql.Tx) error { return paired(place{ctx, tx}, f) })
}

// read runs f in one transaction, so that all it reads belongs together.
func (s *Store) read(ctx context.Context, doing string, f func(tx *sql.Tx) error) error {
	tx, err := s.reader.BeginTx(ctx, &sql.TxOptions{ReadOnly: true})
	return finish(tx, err, doing, f)
}

// finish runs f in a transaction, if it began, and commits it.
func finish(tx *sql.Tx, began error, doing string, f func(tx *sql.Tx) error) error {
	if began != nil {
		return wrapped(doing, began)
	}
	defer tx.Rollback()
	if err := f(tx); err != nil {
		return wrapped(doing, err)
	}
	return wrapped(doing, tx.Commit())
}

// stamp returns the time now as it is kept.
func (s *Store) stamp() string { return s.now().UTC().Format(time.RFC3339Nano) }
