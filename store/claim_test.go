package store

import (
	"errors"
	"os"
	"path/filepath"
	"testing"

	"walkline/valuation"
)

func TestOnlyOneWindowHasTheLots(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "walkline.db")
	book, err := Open(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	release, err := Claim(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	other := filepath.Join(folder, "other name.db")
	if err := os.Symlink(path, other); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{path, other} {
		if _, err := Claim(t.Context(), name); !errors.Is(err, ErrClaimed) {
			t.Errorf("%s was claimed twice: %v", name, err)
		}
	}
	if _, err := book.Add(t.Context(), valuation.Case{Currency: "USD"}); err != nil {
		t.Errorf("a claim keeps its own window from writing: %v", err)
	}
	release()
	again, err := Claim(t.Context(), path)
	if err != nil {
		t.Errorf("what was released cannot be claimed: %v", err)
	}
	again()
}

func TestWhereNothingCanBeWrittenNothingIsClaimed(t *testing.T) {
	release, err := Claim(t.Context(), filepath.Join(t.TempDir(), "no such folder", "walkline.db"))
	if err != nil {
		t.Errorf("%v: opening the store says what is wrong", err)
	}
	release()
}
