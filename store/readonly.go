package store

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"
)

// ErrOlder says that a file would have to be brought up to date before it can be read.
var ErrOlder = errors.New("the file has an older format: open it in the window once, which brings it up to date and keeps a copy")

// OpenToRead returns the store in the file at path to be read alone: it is not brought up to date, a backup that waits is not put in
// place, nothing is written beside it and its log stays as it is. What it leaves undone is among [Store.Said]. A copy made by hand opens
// where nothing can be written, with the edits of its log; the files are then read from a copy that [Store.Close] removes.
// Errors: as [Open], and [ErrOlder].
func OpenToRead(ctx context.Context, path string) (*Store, error) {
	doing := "opening " + path
	absolute, err := filepath.Abs(path)
	if err != nil {
		return nil, wrapped(doing, err)
	}
	s := &Store{path: absolute, now: time.Now}
	if err := s.look(ctx); err != nil {
		return nil, errors.Join(wrapped(doing, err), s.Close())
	}
	return s, nil
}

// look opens the pool of a store that is only read.
func (s *Store) look(ctx context.Context) (err error) {
	if s.said, err = pair(ctx, s.path); err != nil { // of a file that is gone the log may still be there
		return err
	}
	if _, err := os.Stat(s.path); err != nil {
		return errors.New("there is no such file")
	}
	if s.Staged() {
		s.said = append(s.said, "A backup waits to take this file's place at the next start of the window; what is read is the file as it is.")
	}
	if err := startsAsDatabase(s.path); err != nil {
		return err
	}
	if s.scratch, err = os.MkdirTemp("", "walkline-read-*"); err != nil {
		return err
	}
	// A connection beside a log writes an index and may fold the log: only a copy of the files is safe from that.
	copied := filepath.Join(s.scratch, "copy")
	if err := copyWithLog(ctx, s.path, copied); err != nil {
		return err
	}
	version, err := inspect(ctx, copied, lookable)
	switch known := len(schema()); {
	case err != nil:
		return err
	case version > known:
		return newer(version, known)
	case version < known:
		return fmt.Errorf("%w (format %d; this version reads %d)", ErrOlder, version, known)
	}
	s.reader, err = reading.open(ctx, copied)
	return err
}
