//go:build unix

package store

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"walkline/store/book"
)

// sector is what a disk writes whole or not at all, in bytes (the least that disks have; SQLite, "Atomic Commit in SQLite", section 2).
const sector = 512

// inode is a file on a disk, or a folder: what of it was waited for, and the calls that were not.
type inode struct {
	isFolder bool
	safe     []byte
	pending  []call
	size     int64 // of what is written from start to end
}

// disk is what calls have made of a folder.
type disk struct {
	now, safe map[string]*inode // the names as the program sees them, and those that were waited for
	said      int               // what was acknowledged last
}

// take plays one call.
func (d *disk) take(c call) {
	switch file := d.now[c.file]; c.what {
	case "acknowledged":
		d.said = int(c.at)
	case "create", "folder":
		if file == nil {
			d.now[c.file] = &inode{isFolder: c.what == "folder"}
		}
	case "rename":
		d.now[c.to] = file
		delete(d.now, c.file)
	case "names":
		d.wait(c.file)
	case "delete":
		maps.DeleteFunc(d.now, func(name string, _ *inode) bool { return name == c.file || strings.HasPrefix(name, c.file+"/") })
		if c.at > 0 {
			d.wait(folderOf(c.file))
		}
	case "sync":
		for _, p := range file.pending {
			file.safe = done(file.safe, p, nil)
		}
		file.pending = nil
		if c.isLog {
			d.wait(folderOf(c.file))
		}
	default:
		if c.at < 0 { // behind what was written before
			c.at = file.size
		}
		file.size = c.at + int64(len(c.data))
		file.pending = append(file.pending, c)
	}
}

// folderOf returns the folder of a path; none for the one that is recorded.
func folderOf(file string) string { return strings.TrimPrefix(filepath.Dir("/"+file), "/") }

// wait makes the names in a folder those that stay.
func (d *disk) wait(folder string) {
	in := func(name string, _ *inode) bool { return folderOf(name) == folder }
	maps.DeleteFunc(d.safe, in)
	for name, file := range d.now {
		if in(name, file) {
			d.safe[name] = file
		}
	}
}

// done returns bytes after a call. With a source of chance, each sector of it is there or not.
func done(to []byte, c call, r *rand.Rand) []byte {
	if c.what == "truncate" {
		if r != nil && r.IntN(2) == 0 {
			return to
		}
		return append([]byte(nil), to[:min(int(c.at), len(to))]...)
	}
	out := append([]byte(nil), to...)
	if end := int(c.at) + len(c.data); len(out) < end {
		out = append(out, make([]byte, end-len(out))...) // what was never written reads as zeros
	}
	for from := 0; from < len(c.data); {
		to := min(len(c.data), from+sector-(int(c.at)+from)%sector)
		if r == nil || r.IntN(2) == 0 {
			copy(out[int(c.at)+from:], c.data[from:to])
		}
		from = to
	}
	return out
}

// cut writes to a folder what the disk holds when the power is cut now: what was waited for, and, with a source of chance, some of the
// rest. Each name is then the one that was waited for or the one that the program saw.
func (d *disk) cut(t *testing.T, to string, r *rand.Rand) {
	t.Helper()
	names := d.safe
	if r != nil && r.IntN(2) == 0 {
		names = d.now
	}
	for _, name := range slices.Sorted(maps.Keys(names)) { // a folder before what lies in it
		file, in := names[name], folderOf(name)
		switch {
		case strings.HasSuffix(name, "-shm") || in != "" && names[in] == nil:
			continue
		case file.isFolder:
			os.Mkdir(filepath.Join(to, name), 0o700)
			continue
		}
		data := file.safe
		for _, p := range file.pending {
			if r != nil {
				data = done(data, p, r)
			}
		}
		if err := os.WriteFile(filepath.Join(to, name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
}

// points returns at how many calls the power is cut: TORTURE above 1 cuts at ten times as many, 600 over all of them.
func points() int {
	if rounds, _ := strconv.Atoi(os.Getenv("TORTURE")); rounds > 1 {
		return 150
	}
	return 15
}

// replayed cuts the power behind calls, and again with some of what was not waited for on the disk, and counts where sound finds all that
// was acknowledged.
func replayed(t *testing.T, calls []call, sound func(folder string, said int) error) {
	t.Helper()
	r := rand.New(rand.NewPCG(7, 7))
	d := disk{now: map[string]*inode{}, safe: map[string]*inode{}, said: -1}
	every := max(1, len(calls)/points())
	tried, survived := 0, 0
	for n, c := range calls {
		d.take(c)
		if d.said < 0 || n%every > 0 {
			continue
		}
		for _, chance := range []*rand.Rand{nil, r} {
			tried++
			folder, err := os.MkdirTemp(t.TempDir(), "")
			if err != nil {
				t.Fatal(err)
			}
			d.cut(t, folder, chance)
			if err := sound(folder, d.said); err != nil {
				t.Errorf("behind call %d of %d (%s %s), with some of the rest %v: %v", n, len(calls), c.what, c.file, chance != nil, err)
			} else {
				survived++
			}
			os.RemoveAll(folder)
		}
	}
	fmt.Printf("%-22s survived %d of %d, over %d calls\n", strings.TrimPrefix(t.Name(), "Test"), survived, tried, len(calls))
}

// TestPowerLoss keeps every call that SQLite makes to the files of a store over edits, checkpoints, closing and opening, and cuts the power
// behind each: what was not waited for is gone, or some sectors of it are there. Every acknowledged edit must be there, the next whole or
// not at all, and the two files must go together.
func TestPowerLoss(t *testing.T) {
	path := filepath.Join(t.TempDir(), "lots.walk")
	calls := recorded(t, filepath.Dir(path), func(r *recorder) {
		s, err := Open(t.Context(), path)
		if err != nil {
			t.Fatal(err)
		}
		defer func() { s.Close() }()
		added(t, s, numbered(0))
		r.acknowledge(0)
		for n := 1; n <= 24; n++ {
			edit(t, s, book.Worksheet(1), strconv.Itoa(n), 1, func(l *book.Lot) { l.Case = numbered(n) })
			r.acknowledge(n)
			switch {
			case n%9 == 0:
				s.Close()
				if s, err = Open(t.Context(), path); err != nil {
					t.Fatal(err)
				}
			case n%4 == 0:
				mode := []string{"PASSIVE", "TRUNCATE", "RESTART"}[n/4%3]
				if _, err := s.writer.Exec("PRAGMA wal_checkpoint(" + mode + ")"); err != nil {
					t.Fatal(err)
				}
			}
		}
	})
	replayed(t, calls, func(folder string, said int) error { return holds(filepath.Join(folder, "lots.walk"), said) })
}
