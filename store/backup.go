package store

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"walkline/store/album"
)

// Path returns the file that the store keeps everything in.
func (s *Store) Path() string { return s.path }

// photosOf returns where the photographs of the store at a path lie.
func photosOf(path string) album.Folder { return album.At(path + ".photos") }

// Backup writes a whole copy of the store to a new file at path, while it is in use, and the photographs to a folder beside
// it. The copy is a store of its own.
// Errors: [fs.ErrExist] when there is a file already; [ErrFull], [ErrNotWritable], [ErrDisk].
func (s *Store) Backup(ctx context.Context, path string) error {
	doing := "backing up to " + path
	absolute, err := filepath.Abs(path)
	if err != nil {
		return wrapped(doing, err)
	}
	if exists(absolute) {
		return fmt.Errorf("%s: %w: choose another name", doing, fs.ErrExist)
	}
	if err := folder(filepath.Dir(absolute)); err != nil {
		return wrapped(doing, err)
	}
	if err := s.Album().CopyTo(photosOf(absolute)); err != nil {
		return wrapped(doing, err)
	}
	return wrapped(doing, copyTo(ctx, s.writer, absolute))
}

// stagedAt is where a backup waits for the next start.
func stagedAt(path string) string { return path + ".restore" }

// ErrSame is what restoring the store from itself comes to.
var ErrSame = errors.New("that is the file that is in use: choose a backup")

// Stage makes the backup at path ready to take the store's place when it is opened next; until then the store goes on as
// it is. Its photographs are copied beside those there are. A backup that was made ready before is let go.
// Errors: [ErrSame]; [ErrNotDatabase], [ErrForeign], [ErrNewer], [ErrDamaged] say what the file is; nothing is made ready then.
func (s *Store) Stage(ctx context.Context, path string) error {
	doing := "restoring from " + path
	absolute, err := filepath.Abs(path)
	if err != nil {
		return wrapped(doing, err)
	}
	if err := s.fitToStage(ctx, absolute); err != nil {
		return wrapped(doing, err)
	}
	coming := stagedAt(s.path) + ".tmp"
	if err := errors.Join(remove(coming), s.Unstage()); err != nil {
		return wrapped(doing, err)
	}
	if err := copyWhole(ctx, absolute, coming); err != nil {
		return wrapped(doing, errors.Join(err, remove(coming)))
	}
	if err := photosOf(absolute).CopyTo(s.Album()); err != nil {
		return wrapped(doing, errors.Join(err, remove(coming)))
	}
	return wrapped(doing, os.Rename(coming, stagedAt(s.path)))
}

// fitToStage says why a file can't take the store's place.
func (s *Store) fitToStage(ctx context.Context, path string) error {
	own, err := os.Stat(s.path)
	if err != nil {
		return err
	}
	other, err := os.Stat(path)
	if err != nil {
		return fmt.Errorf("%w: there is no such file", ErrNotDatabase)
	}
	if os.SameFile(own, other) {
		return ErrSame
	}
	version, err := inspect(ctx, path)
	switch {
	case err != nil:
		return err
	case version == 0:
		return fmt.Errorf("%w: it is empty", ErrNotDatabase)
	case version > len(schema()):
		return fmt.Errorf("%w: it has format %d, this version reads formats up to %d", ErrNewer, version, len(schema()))
	}
	return nil
}

// copyWhole copies a store that may not be ours to write to, after a check of all that it holds.
func copyWhole(ctx context.Context, from, to string) error {
	db, err := copying.open(ctx, from)
	if err != nil {
		return err
	}
	defer db.Close()
	var found string
	if err := db.QueryRowContext(ctx, `PRAGMA quick_check(1)`).Scan(&found); err != nil {
		return err
	}
	if found != "ok" {
		return fmt.Errorf("%w (%s)", ErrDamaged, found)
	}
	return copyTo(ctx, db, to)
}

// Staged reports whether a backup waits for the next start.
func (s *Store) Staged() bool { return exists(stagedAt(s.path)) }

// Unstage lets a backup go that waits for the next start. The backup itself stays where it is.
func (s *Store) Unstage() error { return remove(stagedAt(s.path)) }

// remove deletes a file, if there is one.
func remove(path string) error {
	if err := os.Remove(path); !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return nil
}

// putStaged puts a backup that waits in the place of the store at path. What is there now is kept whole as a copy beside it.
// Errors: [ErrBusy] when another window has it open. Nothing was changed then.
func putStaged(ctx context.Context, path string, now func() time.Time) error {
	if !exists(stagedAt(path)) {
		return nil
	}
	if exists(path) {
		if err := setAside(ctx, path, now); err != nil {
			return err
		}
	}
	return os.Rename(stagedAt(path), path)
}

// setAside folds the log of the store at path into it, so that the file alone can be replaced, and copies it beside itself.
func setAside(ctx context.Context, path string, now func() time.Time) error {
	db, err := writing.open(ctx, path)
	if err != nil {
		return err
	}
	defer db.Close()
	var mode string
	if err := db.QueryRowContext(ctx, `PRAGMA journal_mode(DELETE)`).Scan(&mode); err != nil { // only who is alone may
		return err
	}
	return copyTo(ctx, db, freeName(fmt.Sprintf("%s.before-restore-%s", path, now().UTC().Format("20060102T150405Z"))))
}

// freeName returns a name for a copy that no file has.
func freeName(stem string) string {
	name := stem + ".bak"
	for n := 2; exists(name); n++ {
		name = fmt.Sprintf("%s-%d.bak", stem, n)
	}
	return name
}
