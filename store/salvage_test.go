package store

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"walkline/store/book"
)

// TestEveryLotThatCanBeReadIsSalvaged spoils one page after another: each lot comes as it was, or is named as lost.
func TestEveryLotThatCanBeReadIsSalvaged(t *testing.T) {
	s := opened(t)
	const lots = 6
	var want []book.Lot
	for n := range lots {
		c := sample(t)
		c.Lot.Number = fmt.Sprint("S", n)
		want = append(want, read(t, s, added(t, s, c)))
	}
	photo(t, s, "a photo")
	s.Close()
	whole, _ := os.ReadFile(s.path)
	saved, pages := 0, 0
	for at := 4096; at < len(whole); at += 3 * 4096 {
		spoiled := bytes.Clone(whole)
		copy(spoiled[at:], bytes.Repeat([]byte{0xA5}, 4096))
		dir := t.TempDir()
		path, to := filepath.Join(dir, "spoiled"), filepath.Join(dir, "salvaged")
		os.WriteFile(path, spoiled, 0o600)
		found, err := Salvage(t.Context(), path, to)
		pages++
		if err != nil {
			if !errors.Is(err, ErrDamaged) && !errors.Is(err, ErrForeign) {
				t.Errorf("page %d: %v", at/4096, err)
			}
			continue
		}
		got := reopened(t, to)
		saved += found.Lots
		if n := len(entries(t, got)); n != found.Lots || found.Lots < lots && len(found.Lost) == 0 {
			t.Errorf("page %d: %d of %d lots, said %+v", at/4096, n, lots, found)
		}
		for _, e := range entries(t, got) {
			equal(t, read(t, got, e.ID), want[e.ID-1])
		}
		got.Close()
	}
	t.Logf("%d of %d lots saved over %d spoiled pages", saved, lots*pages, pages)
	if saved < lots*pages/3 {
		t.Errorf("only %d of %d lots saved", saved, lots*pages)
	}
}

// A file of an older format is brought up to date on the way, unless its damage lies where that is done; then it says so.
func TestAnOlderFormatIsSalvaged(t *testing.T) {
	for format := 1; format < len(schema()); format++ {
		path := landedFile(t, format)
		found, err := Salvage(t.Context(), path, path+".salvaged")
		if err != nil || found.Lots == 0 || len(found.Lost)+len(found.Notes) > 0 {
			t.Fatalf("format %d: %+v, %v", format, found, err)
		}
		checkLanded(t, reopened(t, path+".salvaged"), format)
	}
}

func TestASoundFileIsSalvagedWholeAndNothingIsOverwritten(t *testing.T) {
	path := crashed(t)
	to := path + ".salvaged"
	found, err := Salvage(t.Context(), path, to)
	if err != nil || found.Lots != 2 || len(found.Lost) > 0 {
		t.Fatalf("%+v, %v", found, err)
	}
	s := reopened(t, to)
	undone(t, s, book.Worksheet(1), "VIN")
	if _, err := Salvage(t.Context(), path, to); !errors.Is(err, fs.ErrExist) {
		t.Errorf("%v", err)
	}
	text := path + ".txt"
	os.WriteFile(text, []byte(strings.Repeat("no database ", 50)), 0o600)
	if _, err := Salvage(t.Context(), text, to+"2"); !errors.Is(err, ErrNotDatabase) || exists(to+"2") {
		t.Errorf("%v", err)
	}
	if left, _ := filepath.Glob(filepath.Join(filepath.Dir(path), "*.tmp")); len(left) > 0 {
		t.Errorf("left %q", left)
	}
}

// A store that is open is saved too, with what its log alone holds, and goes on.
func TestAnOpenStoreIsSalvaged(t *testing.T) {
	s := opened(t)
	first := added(t, s, sample(t))
	hash := photo(t, s, "a photo")
	second := added(t, s, sample(t))
	if _, err := s.writer.Exec(`UPDATE lots SET archived = 1 WHERE id = ?`, first); err != nil {
		t.Fatal(err)
	}
	to := s.path + ".salvaged"
	found, err := s.Salvage(t.Context(), to)
	if err != nil || found.Lots != 2 || len(found.Lost) != 1 {
		t.Fatalf("%+v, %v", found, err)
	}
	edit(t, s, book.Worksheet(second), "VIN", second, func(l *book.Lot) { l.Case.Lot.VIN = "later" })
	saved := reopened(t, to)
	equal(t, read(t, saved, second).Case, sample(t))
	if _, err := saved.Album().File(hash, "jpeg"); err != nil {
		t.Error(err)
	}
	if err := s.Stage(t.Context(), to); err != nil {
		t.Fatal(err)
	}
	s.Close()
	if err := reopened(t, s.path).Check(t.Context()); err != nil {
		t.Error(err)
	}
}
