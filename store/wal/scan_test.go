package wal_test

import (
	"bytes"
	"database/sql"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	_ "modernc.org/sqlite"

	"walkline/store/wal"
)

// written returns the write-ahead file that SQLite itself writes over some commits, as it lies there while the database is open.
func written(t testing.TB, commits int) []byte {
	t.Helper()
	path := filepath.Join(t.TempDir(), "x.db")
	db, err := sql.Open("sqlite", "file:"+path+"?_pragma=journal_mode(WAL)")
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	db.SetMaxOpenConns(1)
	for n := range commits {
		statement := fmt.Sprintf("INSERT INTO t VALUES (%d)", n)
		if n == 0 {
			statement = "CREATE TABLE t (n)"
		}
		if _, err := db.Exec(statement); err != nil {
			t.Fatal(err)
		}
	}
	log, err := os.ReadFile(path + "-wal")
	if err != nil {
		t.Fatal(err)
	}
	return log
}

func scanned(t testing.TB, log []byte) wal.Log {
	t.Helper()
	l, err := wal.Scan(bytes.NewReader(log), nil)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// The library that writes these files is the reference: what it wrote is whole, each commit counted.
func TestWhatTheLibraryWroteIsWhole(t *testing.T) {
	log := written(t, 9)
	l := scanned(t, log)
	if !l.Headed || l.Commits != 9 || l.Cut != 0 || l.Damaged() || l.PageSize != 4096 || l.Frames*(4096+24)+32 != len(log) {
		t.Errorf("%+v of %d bytes", l, len(log))
	}
}

// Any bit before the last transaction: of the header, of the heads of frames, and some of the pages. Within the last one, a flip and a
// sector that a crash left unwritten look the same.
func TestABitThatFlippedBeforeTheLastTransactionShows(t *testing.T) {
	log := written(t, 9)
	const frame, head = 4096 + 24, 24
	for at := range len(log) - frame {
		if within := (at - 32) % frame; at >= 32 && within >= head && at%997 > 0 {
			continue
		}
		for bit := range 8 {
			spoiled := bytes.Clone(log)
			spoiled[at] ^= 1 << bit
			if l := scanned(t, spoiled); !l.Damaged() {
				t.Errorf("bit %d at %d: %+v", bit, at, l)
			}
		}
	}
}

func TestAHeaderWithNothingBehindItHoldsNothing(t *testing.T) {
	for _, log := range [][]byte{make([]byte, 32), written(t, 9)[:32]} {
		if l := scanned(t, log); l.Damaged() || !l.Bare {
			t.Errorf("%+v", l)
		}
	}
}

func TestWhatACrashCutsOffIsNoDamage(t *testing.T) {
	log := written(t, 9)
	for end := 32; end < len(log); end += 501 {
		if l := scanned(t, log[:end]); l.Damaged() || l.Commits >= 9 {
			t.Errorf("cut at %d: %+v", end, l)
		}
	}
	if l := scanned(t, nil); l.Headed || l.Commits > 0 {
		t.Errorf("an empty file: %+v", l)
	}
}

func FuzzScan(f *testing.F) {
	f.Add(written(f, 3))
	for _, part := range [][]byte{{}, make([]byte, 32), written(f, 1)[:32], written(f, 3)[:5000]} { // what a power cut leaves
		f.Add(part)
	}
	f.Fuzz(func(t *testing.T, log []byte) {
		pages := 0
		l, err := wal.Scan(bytes.NewReader(log), func(page uint32, data []byte) { pages++ })
		if err != nil || pages != l.Frames || l.Frames < l.Commits {
			t.Errorf("%+v, %d pages, %v", l, pages, err)
		}
	})
}
