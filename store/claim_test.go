package store

import (
	"errors"
	"os"
	"path/filepath"
	"runtime"
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

// The file of a claim that ends beside no book is gone before the claim is: what lies there afterwards is the next one's.
func TestAClaimIsRemovedBeforeItEnds(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("an open file can't be removed here")
	}
	path := filepath.Join(t.TempDir(), "letter.txt")
	for _, name := range []string{path, path + claimEnding} {
		if err := os.WriteFile(name, []byte("Dear sir"), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	unclaim(path, func() {
		if err := os.WriteFile(path+claimEnding, nil, 0o600); err != nil { // the next one claims at once
			t.Error(err)
		}
	})
	if _, err := os.Stat(path + claimEnding); err != nil {
		t.Errorf("the next one's claim is gone: %v", err)
	}
}

// A file that is no book has nothing left beside it; what lay there before stays.
func TestNothingStaysBesideWhatIsNoBook(t *testing.T) {
	for _, before := range []bool{false, true} {
		path := filepath.Join(t.TempDir(), "letter.txt")
		for name, text := range map[string]string{path: "Dear sir", path + claimEnding: ""} {
			if name == path || before {
				if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
					t.Fatal(err)
				}
			}
		}
		release, err := Claim(t.Context(), path)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := Open(t.Context(), path); !errors.Is(err, ErrNotDatabase) {
			t.Errorf("%v, want %v", err, ErrNotDatabase)
		}
		release()
		names, err := filepath.Glob(filepath.Join(filepath.Dir(path), "*"))
		if err != nil || len(names) != 1 && !before || len(names) != 2 && before {
			t.Errorf("left are %q, %v", names, err)
		}
	}
}
