//go:build unix

package store

import (
	"bufio"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"walkline/store/book"
)

// harmed does harm to what a crash left. That is survived where all that was acknowledged is there; where the last step alone is missing
// and that is said; and where the harm is named, and the salvage brings each lot as it was or names what it lacks. Where the pages are
// harmed that say where all others are, naming it is all that can be done.
func harmed(t *testing.T, harm func(main, log []byte)) error {
	path := crashed(t)
	want := lotsOf(t, path)
	main, _ := os.ReadFile(path)
	log, _ := os.ReadFile(logOf(path))
	harm(main, log)
	os.WriteFile(path, main, 0o600)
	os.WriteFile(logOf(path), log, 0o600)
	s, err := Open(t.Context(), path)
	if err == nil {
		defer s.Close()
		said := s.Said()
		if err = s.Check(t.Context()); err == nil {
			return missing(t, s, want, len(said) > 0)
		}
		s.Close()
	}
	if named := func(e error) bool { return errors.Is(err, e) }; !slices.ContainsFunc(
		[]error{ErrDamaged, ErrLog, ErrNotDatabase, ErrForeign, ErrNewer}, named) {
		return err
	}
	to := path + ".salvaged"
	found, err := Salvage(t.Context(), path, to)
	if err != nil && hasSchema(path) {
		return fmt.Errorf("nothing is salvaged: %w", err)
	}
	if err != nil {
		return nil
	}
	saved := reopened(t, to)
	defer saved.Close()
	return missing(t, saved, want, len(found.Lost) > 0)
}

// hasSchema reports whether SQLite can read what tables a file has.
func hasSchema(path string) bool {
	db, err := salvaging.open(context.Background(), path)
	if err != nil {
		return false
	}
	defer db.Close()
	var application int
	if err := db.QueryRow(`SELECT application_id FROM pragma_application_id`).Scan(&application); err != nil || application != applicationID {
		return false
	}
	_, err = column(context.Background(), db, `SELECT count(name || sql) FROM sqlite_schema`)
	return err == nil
}

// onFullDisk saves case after case on a small disk until that is full, and then backs up to it: what was acknowledged is there as soon as
// there is room again, and of the backup nothing is left. Where no disk can be mounted, the limit on file sizes above stands for it.
func onFullDisk(t *testing.T, r *rand.Rand) error {
	dir := t.TempDir()
	if err := exec.Command("mount", "-t", "tmpfs", "-o", "size=4m", "tmpfs", dir).Run(); err != nil {
		t.Skip("no disk can be mounted here")
	}
	defer exec.Command("umount", "-l", dir).Run()
	path, filler := filepath.Join(dir, "lots.walk"), filepath.Join(dir, "filler")
	os.WriteFile(filler, make([]byte, 1<<20+r.IntN(2<<20)), 0o600)
	cmd, out := started(t, "write", path, "")
	lines, last := bufio.NewScanner(out), -1
	for lines.Scan() {
		last, _ = strconv.Atoi(lines.Text())
	}
	cmd.Wait()
	if s, err := Open(t.Context(), path); err == nil {
		if err := s.Backup(t.Context(), path+".copy"); err == nil {
			t.Log("there was room for a backup")
		} else if left, _ := filepath.Glob(path + ".copy*"); !errors.Is(err, ErrFull) || len(left) > 0 {
			return fmt.Errorf("left %q of a backup: %w", left, err)
		}
		s.Close()
	} else if !errors.Is(err, ErrFull) && !errors.Is(err, ErrDisk) && !errors.Is(err, ErrNotWritable) {
		return err
	}
	os.Remove(filler)
	return holds(path, last)
}

// lotsOf returns the lots of a copy of a store.
func lotsOf(t *testing.T, path string) (all []book.Lot) {
	t.Helper()
	s := reopened(t, pulled(t, path))
	defer s.Close()
	for _, e := range entries(t, s) {
		all = append(all, read(t, s, e.ID))
	}
	return all
}

// missing says what a store lacks of lots. Where something was said of it, a lot may be missing, or stand as it was before its last edit.
func missing(t *testing.T, s *Store, want []book.Lot, said bool) error {
	t.Helper()
	for _, w := range want {
		l, err := s.Lot(t.Context(), w.ID)
		if said && (errors.Is(err, ErrNotFound) || err == nil && l.Case.Lot.VIN == "") {
			l, err = w, nil
		}
		if got, wanted := fmt.Sprintf("%+v", l), fmt.Sprintf("%+v", w); err != nil || got != wanted {
			return fmt.Errorf("lot %d: %w, said %v:\n%s\nnot\n%s", w.ID, err, said, got, wanted)
		}
	}
	return nil
}

// besideAJournal puts the journal of another way of keeping a database beside a store: SQLite would roll its pages back into it.
func besideAJournal(t *testing.T, r *rand.Rand) error {
	path := crashed(t)
	want := lotsOf(t, path)
	other := filepath.Join(t.TempDir(), "other")
	db, err := sql.Open("sqlite", "file:"+other+"?_pragma=journal_mode(DELETE)")
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	db.SetMaxOpenConns(1)
	for _, words := range []string{"CREATE TABLE t (n)", "INSERT INTO t VALUES (zeroblob(99999))", "PRAGMA cache_size = 1", "BEGIN",
		"UPDATE t SET n = zeroblob(88888)"} {
		if _, err := db.Exec(words); err != nil {
			t.Fatal(err)
		}
	}
	move(t, other+"-journal", path+"-journal")
	if !exists(path + "-journal") {
		t.Fatal("no journal")
	}
	if r.IntN(2) == 0 { // beside a store that was closed well
		s := reopened(t, pulled(t, path))
		s.Close()
		move(t, path+"-journal", s.path+"-journal")
		path = s.path
	}
	if s, err := Open(t.Context(), path); !errors.Is(err, ErrLog) {
		s.Close()
		return fmt.Errorf("opened with a stray journal: %w", err)
	}
	kept, err := KeepLogAside(path, time.Now())
	if err != nil || !strings.Contains(kept, "-journal.aside-") {
		return fmt.Errorf("kept aside as %q: %w", kept, err)
	}
	s, err := Open(t.Context(), path)
	if err != nil {
		return err
	}
	defer s.Close()
	return errors.Join(missing(t, s, want, false), s.Check(t.Context()))
}

// strayed puts the log of one store beside another: it is refused, and both are whole where they belong.
func strayed(t *testing.T, r *rand.Rand) error {
	one, other := crashed(t), crashed(t)
	log, _ := os.ReadFile(logOf(one))
	move(t, logOf(other), logOf(one))
	if s, err := Open(t.Context(), one); !errors.Is(err, ErrLog) {
		s.Close()
		return fmt.Errorf("opened with a stray log: %w", err)
	}
	os.WriteFile(logOf(one), log, 0o600)
	return errors.Join(hasLots(one, 2), hasLots(other, 2))
}
