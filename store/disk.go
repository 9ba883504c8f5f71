package store

import (
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"time"
)

// stampOf is a time as it stands in the name of a copy.
func stampOf(t time.Time) string { return t.UTC().Format("20060102T150405Z") }

// syncFolder waits until the names in the folder of path are on the disk, where the system can be asked to.
func syncFolder(path string) error {
	if runtime.GOOS == "windows" { // which has no such call for a folder
		return nil
	}
	f, err := os.Open(filepath.Dir(path))
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}

// renamed gives a file its name, for good.
func renamed(from, to string) error {
	if err := os.Rename(from, to); err != nil {
		return err
	}
	return syncFolder(to)
}
