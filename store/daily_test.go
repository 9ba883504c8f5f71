package store

import (
	"os"
	"path/filepath"
	"testing"
	"time"
)

func TestADailyBackupIsMadeOnceADayAndTheOldestGo(t *testing.T) {
	s := opened(t)
	added(t, s, sample(t))
	photo(t, s, "a photo")
	dir := t.TempDir()
	other := filepath.Join(dir, "walkline-2020-01-01.db")
	os.WriteFile(other, nil, 0o600)
	first := time.Date(2026, 11, 20, 12, 0, 0, 0, time.UTC)
	for n := range keptDays + 2 {
		for round := range 2 {
			made, err := s.Daily(t.Context(), dir, first.AddDate(0, 0, n))
			if err != nil || (made == "") != (round == 1) {
				t.Fatalf("day %d, round %d: %q, %v", n, round, made, err)
			}
		}
	}
	left, _ := filepath.Glob(filepath.Join(dir, "walkline-daily-*.db"))
	photos, _ := filepath.Glob(filepath.Join(dir, "*.photos"))
	if len(left) != keptDays || len(photos) != keptDays || filepath.Base(left[0]) != "walkline-daily-2026-11-22.db" || !exists(other) {
		t.Errorf("%q %q", left, photos)
	}
	if n := len(entries(t, reopened(t, left[0]))); n != 1 {
		t.Errorf("%d lots", n)
	}
}
