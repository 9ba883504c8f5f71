package store

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"walkline/store/album"
	"walkline/store/plain"
)

// Path returns the file that the store keeps everything in.
func (s *Store) Path() string { return s.path }

// photosOf returns where the photographs of the store at a path lie.
func photosOf(path string) album.Folder { return album.At(photosAt(path)) }

func photosAt(path string) string { return path + ".photos" }

// Backup writes a whole copy of the store to a new file at path, while it is in use, and the photographs to a folder beside
// it. The copy is a store of its own. It bears its name only when all of it is on the disk: of one that failed nothing is left.
// Errors: [fs.ErrExist] when there is a file already; [ErrFull], [ErrNotWritable], [ErrDisk]; the context's.
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
	return wrapped(doing, s.backUp(ctx, absolute))
}

// backUp writes the database first, so that no row in it lacks its photograph, and gives it its name last.
func (s *Store) backUp(ctx context.Context, path string) (err error) {
	coming, hadPhotos := path+plain.Ending, exists(photosAt(path))
	defer func() {
		if err != nil {
			err = errors.Join(err, plain.Remove(coming))
			if !hadPhotos {
				err = errors.Join(err, plain.RemoveAll(photosAt(path)))
			}
		}
	}()
	if err := plain.Remove(coming); err != nil { // of a program that was killed
		return err
	}
	if err := vacuum(ctx, s.writer, coming); err != nil {
		return err
	}
	if err := s.Album().CopyTo(ctx, photosOf(path)); err != nil {
		return err
	}
	return plain.Rename(coming, path)
}

// ErrSame is what restoring the store from itself comes to.
var ErrSame = errors.New("that is the file that is in use: choose a backup")

// stagedAt is where a backup waits for the next start.
func stagedAt(path string) string { return path + ".restore" }

// Stage makes the backup at path ready to take the store's place when it is opened next; until then the store goes on as
// it is. Its photographs are copied beside those there are. A backup that was made ready before is let go.
// Errors: as [StageFor].
func (s *Store) Stage(ctx context.Context, path string) error { return StageFor(ctx, s.path, path) }

// StageFor makes a backup ready to take the place of the store at path, which need not open any more, when that is opened next. The
// backup may lie where nothing can be written, and may be a copy made by hand with a write-ahead file beside it; it is only read.
// Errors: [ErrSame]; [ErrNotDatabase], [ErrForeign], [ErrNewer], [ErrDamaged], [ErrLog] say what the file is; nothing is made ready then.
func StageFor(ctx context.Context, path, backup string) error {
	doing := "restoring from " + backup
	from, err1 := filepath.Abs(backup)
	path, err2 := filepath.Abs(path)
	if err := errors.Join(err1, err2); err != nil {
		return wrapped(doing, err)
	}
	coming := stagedAt(path) + plain.Ending
	err := errors.Join(removeAll(coming), plain.Remove(stagedAt(path)))
	if err == nil {
		err = stage(ctx, path, from, coming)
	}
	if err != nil {
		return wrapped(doing, errors.Join(err, removeAll(coming)))
	}
	return wrapped(doing, plain.Rename(coming, stagedAt(path)))
}

// stage copies a backup that fits, with its photographs, to a file beside the store.
func stage(ctx context.Context, path, from, coming string) error {
	info, err := os.Stat(from)
	switch {
	case err != nil:
		return fmt.Errorf("%w: there is no such file", ErrNotDatabase)
	case !info.Mode().IsRegular():
		return fmt.Errorf("%w: it is no plain file", ErrNotDatabase)
	}
	if own, err := os.Stat(path); err == nil && os.SameFile(own, info) {
		return ErrSame
	}
	if err := startsAsDatabase(from); err != nil {
		return err
	}
	if _, err := pair(ctx, from); err != nil {
		return err
	}
	if err := copyWithLog(ctx, from, coming); err != nil {
		return err
	}
	if err := fit(ctx, coming); err != nil {
		return err
	}
	return photosOf(from).CopyTo(ctx, photosOf(path))
}

// fit says why a file, which is ours to write to, can't take a store's place, and folds its log into it.
func fit(ctx context.Context, path string) error {
	version, err := inspect(ctx, path, lookable)
	switch {
	case err != nil:
		return err
	case version == 0:
		return fmt.Errorf("%w: it is empty", ErrNotDatabase)
	case version > len(schema()):
		return newer(version, len(schema()))
	}
	db, err := folding.open(ctx, path)
	if err != nil {
		return err
	}
	err = quickCheck(ctx, db)
	return errors.Join(err, db.Close())
}

// mostBytes is the size of the largest file that is copied. Ours.
const mostBytes = 64 << 30

// copyWithLog copies a database with its write-ahead file, where it has one.
func copyWithLog(ctx context.Context, from, to string) error {
	if info, err := os.Lstat(logOf(from)); err == nil && info.Mode().IsRegular() && info.Size() > 0 {
		if err := plain.Copy(ctx, logOf(from), logOf(to), mostBytes); err != nil {
			return err
		}
	}
	return plain.Copy(ctx, from, to, mostBytes)
}

// Staged reports whether a backup waits for the next start.
func (s *Store) Staged() bool { return exists(stagedAt(s.path)) }

// Unstage lets a backup go that waits for the next start. The backup itself stays where it is.
func (s *Store) Unstage() error { return plain.Remove(stagedAt(s.path)) }
