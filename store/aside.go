package store

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"walkline/store/plain"
)

// endings are those of the three files of a database.
var endings = []string{"", "-wal", "-shm"}

// removeAll deletes the files of a database.
func removeAll(path string) (err error) {
	for _, ending := range endings {
		err = errors.Join(err, plain.Remove(path+ending))
	}
	return err
}

// putStaged puts a backup that waits in the place of the store at path. What is there now, sound or not, is kept beside it as it is.
// Errors: [ErrBusy] when another window has it open. Nothing was changed then.
func putStaged(ctx context.Context, path string, now func() time.Time) error {
	if !exists(stagedAt(path)) {
		return nil
	}
	aside := freeName(fmt.Sprintf("%s.before-restore-%s", path, stampOf(now())))
	if err := setAside(ctx, path, aside); err != nil {
		return errors.Join(err, removeAll(aside))
	}
	for _, ending := range endings[1:] { // the file itself is replaced at one stroke
		if err := plain.Remove(path + ending); err != nil {
			return err
		}
	}
	if exists(journalOf(path)) { // a stray one, which is no part of what comes
		if err := plain.Rename(journalOf(path), journalOf(aside)); err != nil {
			return err
		}
	}
	// None of them may come back beside the new file, which SQLite would write them into.
	if err := plain.SyncFolder(filepath.Dir(path)); err != nil {
		return err
	}
	return plain.Rename(stagedAt(path), path)
}

// setAside copies the files of the store at path, which nobody else may have open. A damaged one is copied like any other.
func setAside(ctx context.Context, path, aside string) error {
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return fmt.Errorf("%w: %s is a folder", ErrNotDatabase, path)
	}
	for _, ending := range endings {
		err := plain.Copy(ctx, path+ending, aside+ending, mostBytes)
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
	}
	if !exists(path) {
		return nil
	}
	if _, err := pair(ctx, path); err != nil { // a log that is not its own must not be folded into it
		return nil
	}
	db, err := folding.open(ctx, path) // which only who is alone may
	if err != nil {
		if err = wrapped("setting aside", err); errors.Is(err, ErrBusy) {
			return err
		}
		return nil // a damaged one, which has been copied as it is
	}
	return db.Close()
}

// freeName returns a name for a copy that no file has.
func freeName(stem string) string {
	name := stem + ".bak"
	for n := 2; exists(name) || exists(logOf(name)); n++ {
		name = fmt.Sprintf("%s-%d.bak", stem, n)
	}
	return name
}

// clean removes what programs that were killed left half written beside the store at path. Only who has claimed it may.
func clean(path string) {
	left, _ := os.ReadDir(filepath.Dir(path)) // a folder that can't be read is said by Open
	for _, file := range left {
		rest, ours := strings.CutPrefix(file.Name(), filepath.Base(path)+".")
		for _, ending := range endings {
			plainly := file.Type().IsRegular() || file.IsDir() // the folder of a salvage
			if ours && plainly && strings.HasSuffix(rest, strings.TrimPrefix(plain.Ending, ".")+ending) {
				_ = plain.RemoveAll(filepath.Join(filepath.Dir(path), file.Name()))
			}
		}
	}
	photosOf(path).Clean()
}
