package store

import (
	"encoding/binary"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"walkline/store/book"
	"walkline/valuation"
)

// crashed returns the path of a file as a crash leaves it: lots in the main file, then edits in the write-ahead file alone.
func crashed(t *testing.T) string {
	t.Helper()
	s := opened(t)
	added(t, s, valuation.Defaults())
	s.Close()
	s = reopened(t, s.path)
	added(t, s, valuation.Defaults())
	edit(t, s, book.Worksheet(1), "VIN", 1, func(l *book.Lot) { l.Case.Lot.VIN = "acknowledged" })
	return pulled(t, s.path)
}

// pulled copies the three files of an open store to another folder, as if the plug had been pulled now.
func pulled(t *testing.T, path string) string {
	t.Helper()
	to := filepath.Join(t.TempDir(), "lots.walk")
	for _, ending := range []string{"", "-wal", "-shm"} {
		move(t, path+ending, to+ending)
	}
	return to
}

// move copies a file's bytes, where there is one.
func move(t *testing.T, from, to string) {
	t.Helper()
	data, err := os.ReadFile(from)
	if errors.Is(err, os.ErrNotExist) {
		return
	}
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(to, data, 0o600); err != nil {
		t.Fatal(err)
	}
}

func TestAfterACrashTheTwoFilesGoTogether(t *testing.T) {
	s := reopened(t, crashed(t))
	if l := read(t, s, 1); l.Case.Lot.VIN != "acknowledged" || len(entries(t, s)) != 2 || len(s.Said()) > 0 {
		t.Errorf("%q, %v", l.Case.Lot.VIN, s.Said())
	}
}

// Each of these once lost edits that had been acknowledged, or opened a mix of two files.
func TestAWriteAheadFileThatDoesNotGoWithTheFileIsRefusedAndKept(t *testing.T) {
	other := opened(t)
	added(t, other, sample(t))
	other.Close()
	before := landedFile(t, 5) // a copy of a format that had no mark
	for name, do := range map[string]func(t *testing.T, path string){
		"the file was moved away":               func(t *testing.T, path string) { os.Remove(path) },
		"the file was emptied":                  func(t *testing.T, path string) { os.Truncate(path, 0) },
		"another file was copied over it":       func(t *testing.T, path string) { move(t, other.path, path) },
		"an older copy of it was put back":      func(t *testing.T, path string) { move(t, before, path) },
		"another's write-ahead file came to it": func(t *testing.T, path string) { move(t, crashed(t)+"-wal", path+"-wal") },
		"a bit of the write-ahead file flipped": func(t *testing.T, path string) {
			data, _ := os.ReadFile(path + "-wal")
			data[40] ^= 1
			os.WriteFile(path+"-wal", data, 0o600)
		},
	} {
		t.Run(name, func(t *testing.T) {
			path := crashed(t)
			do(t, path)
			log, _ := os.ReadFile(path + "-wal")
			refused(t, path, ErrLog, "write-ahead file")
			if after, _ := os.ReadFile(path + "-wal"); string(after) != string(log) {
				t.Fatal("the write-ahead file was changed")
			}
			kept, err := KeepLogAside(path, time.Now())
			if err != nil {
				t.Fatal(err)
			}
			reopened(t, path)
			if after, _ := os.ReadFile(kept); string(after) != string(log) || !strings.Contains(kept, "-wal.aside-") {
				t.Errorf("%s does not hold what the write-ahead file held", kept)
			}
		})
	}
}

func TestACommitThatACrashCutOffIsSaid(t *testing.T) {
	path := crashed(t)
	data, _ := os.ReadFile(path + "-wal")
	data[len(data)-1] ^= 1 // in the last page of the last commit
	os.WriteFile(path+"-wal", data, 0o600)
	s := reopened(t, path)
	if len(s.Said()) != 1 || len(entries(t, s)) != 2 {
		t.Errorf("%v", s.Said())
	}
	added(t, s, valuation.Defaults()) // written where the rest of that commit stood, and another crash
	again := reopened(t, pulled(t, path))
	if len(again.Said()) != 0 || len(entries(t, again)) != 3 {
		t.Errorf("said again: %v", again.Said())
	}
}

// journalOfTurning puts the journal beside a closed store that a loss of power leaves while a file is turned into one with a log: its first
// page as it was. The checksum is that of the file format, section 3.
func journalOfTurning(t *testing.T, path string) {
	t.Helper()
	db, err := folding.open(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	db.Close()
	main, _ := os.ReadFile(path)
	const sector, page = 512, 4096
	j := make([]byte, sector, sector+page+8)
	copy(j, journalHead)
	for at, n := range map[int]int{8: 1, 12: 7, 16: len(main) / page, 20: sector, 24: page} {
		binary.BigEndian.PutUint32(j[at:], uint32(n))
	}
	sum := uint32(7)
	for at := page - 200; at > 0; at -= 200 {
		sum += uint32(main[at])
	}
	j = binary.BigEndian.AppendUint32(append(binary.BigEndian.AppendUint32(j, 1), main[:page]...), sum)
	main[18], main[19] = 2, 2
	os.WriteFile(path, main, 0o600)
	os.WriteFile(journalOf(path), j, 0o600)
}

// A restored backup is turned into a file with a log at its first start. Where that is cut off its journal is its own, and no stray one.
func TestAJournalOfTurningTheFileIsItsOwn(t *testing.T) {
	for _, same := range []bool{true, false} {
		s := opened(t)
		added(t, s, sample(t))
		s.Close()
		journalOfTurning(t, s.path)
		if !same { // as many pages and the same marks, but another file
			data, _ := os.ReadFile(journalOf(s.path))
			data[512+4+50] ^= 1
			os.WriteFile(journalOf(s.path), data, 0o600)
		}
		again, err := Open(t.Context(), s.path)
		if same != (err == nil) || !same && !errors.Is(err, ErrLog) {
			t.Fatalf("of its own %v: %v", same, err)
		}
		if same {
			equal(t, read(t, again, 1).Case, sample(t))
			if err := again.Check(t.Context()); err != nil {
				t.Error(err)
			}
			again.Close()
		}
	}
}
