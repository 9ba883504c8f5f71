//go:build unix

package store

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"walkline/store/book"
)

// disk is what the two files of a store hold on the disk.
type disk struct{ main, log []byte }

func diskOf(t *testing.T, path string) (d disk) {
	t.Helper()
	var err error
	if d.main, err = os.ReadFile(path); err == nil {
		d.log, err = os.ReadFile(logOf(path))
	}
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// sector is what a disk writes whole or not at all, in bytes (the least that disks have; SQLite, "Atomic Commit in SQLite", section 2).
const sector = 512

// torn returns a file between two states: of the sectors that differ, each is written or not. Its length is that of one of the states or
// between them.
func torn(r *rand.Rand, before, after []byte) []byte {
	size := len(before)
	if grown := len(after) - size; grown > 0 && r.IntN(4) > 0 {
		size += r.IntN(grown + 1)
	}
	out := make([]byte, size) // what was never written reads as zeros
	copy(out, before)
	share := r.Float64()
	for at := 0; at < size; at += sector {
		if end := min(at+sector, size, len(after)); at < end && r.Float64() < share {
			copy(out[at:end], after[at:end])
		}
	}
	return out
}

// tornLog is [torn] for the log, whose header is waited for before any frame of it is written (SQLite's wal.c, sqlite3WalFrames).
func tornLog(r *rand.Rand, before, after []byte) []byte {
	const head = 32
	if len(before) < head || string(before[:head]) == string(after[:head]) {
		return torn(r, before, after)
	}
	begun := append(bytes.Clone(after[:head]), before[head:]...)
	switch r.IntN(4) {
	case 0:
		return before
	case 1:
		return begun
	}
	return torn(r, begun, after)
}

// TestPowerLoss cuts the power between one acknowledged edit and the next: any of the sectors written since the first was
// acknowledged may be on the disk or not, in any order within what was waited for. Each edit must be there once it was acknowledged,
// and the next whole or not at all. Where a checkpoint came between, the log was waited for before the file was written to. TORTURE
// above 1 cuts at 500 points.
func TestPowerLoss(t *testing.T) {
	points := 25
	if rounds, _ := strconv.Atoi(os.Getenv("TORTURE")); rounds > 1 {
		points = 500
	}
	r, survived, checkpoints := rand.New(rand.NewPCG(7, 7)), 0, 0
	s := opened(t)
	added(t, s, numbered(0))
	before := diskOf(t, s.path)
	for n := 1; n <= points; n++ {
		edit(t, s, book.Worksheet(1), strconv.Itoa(n), 1, func(l *book.Lot) { l.Case = numbered(n) })
		after := diskOf(t, s.path)
		cut := disk{before.main, tornLog(r, before.log, after.log)}
		if string(before.main) != string(after.main) {
			checkpoints++
			if r.IntN(2) == 0 { // within the checkpoint: the log is on the disk whole
				cut = disk{torn(r, before.main, after.main), after.log}
			}
		}
		if err := survives(t, cut, n-1); err != nil {
			t.Errorf("at %d: %v", n, err)
		} else {
			survived++
		}
		before = after
	}
	fmt.Printf("%-22s survived %d of %d, %d with a checkpoint\n", "power loss", survived, points, checkpoints)
}

// survives opens what is left on a disk.
func survives(t *testing.T, left disk, acknowledged int) error {
	t.Helper()
	dir, err := os.MkdirTemp(t.TempDir(), "")
	if err != nil {
		t.Fatal(err)
	}
	defer os.RemoveAll(dir)
	path := filepath.Join(dir, "lots.walk")
	os.WriteFile(path, left.main, 0o600)
	os.WriteFile(logOf(path), left.log, 0o600)
	return holds(path, acknowledged)
}
