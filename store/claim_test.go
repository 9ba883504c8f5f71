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
	s := reopened(t, path)
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
	added(t, s, valuation.Case{Currency: "USD"}) // a claim does not keep its own window from writing
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
