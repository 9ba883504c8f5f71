package store

import (
	"context"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"time"
	"walkline/store/plain"
)

// keptDays is how many daily backups are kept. Ours: a week and the one that is being made.
const keptDays = 8

// dailies are the names of daily backups, which sort by their day. A file of any other name is left alone.
var dailies = regexp.MustCompile(`^walkline-daily-\d{4}-\d{2}-\d{2}\.db$`)

// Daily writes a backup to a folder unless it holds one of the day already, and then removes the oldest of its own daily backups, so that
// [keptDays] stay. Files of other names, and all photographs but those that go with what is removed, stay. It returns the file written,
// empty where there was one. Errors: as [Store.Backup]; an old one can't be removed.
func (s *Store) Daily(ctx context.Context, folder string, day time.Time) (string, error) {
	path := filepath.Join(folder, "walkline-daily-"+day.Format(time.DateOnly)+".db")
	if exists(path) {
		return "", nil
	}
	if err := s.Backup(ctx, path); err != nil {
		return "", err
	}
	return path, wrapped("removing old daily backups in "+folder, rotate(folder))
}

// rotate removes the oldest daily backups of a folder. The file goes before its photographs, so that no row is left without its file.
func rotate(folder string) error {
	files, err := os.ReadDir(folder)
	if err != nil {
		return err
	}
	var names []string
	for _, f := range files {
		if f.Type().IsRegular() && dailies.MatchString(f.Name()) {
			names = append(names, f.Name())
		}
	}
	slices.Sort(names)
	for _, name := range names[:max(0, len(names)-keptDays)] {
		at := filepath.Join(folder, name)
		if err := plain.Remove(at); err != nil {
			return err
		}
		if err := plain.RemoveAll(photosAt(at)); err != nil {
			return err
		}
	}
	return nil
}
