package store

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// What SQLite says of a damaged file is for the log; the words for the person at the screen hold none of it.
func TestADamagedFileIsSaidInWords(t *testing.T) {
	path := filepath.Join(t.TempDir(), "lots.db")
	s, err := Open(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	s.Close()
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := f.WriteAt([]byte(strings.Repeat("\xff", 200)), 4096*2); err != nil {
		t.Fatal(err)
	}
	f.Close()
	s, err = Open(t.Context(), path)
	if err == nil {
		err = s.Check(t.Context())
		s.Close()
	}
	if !errors.Is(err, ErrDamaged) || Detail(err) == "" {
		t.Fatalf("%v, detail %q", err, Detail(err))
	}
	for _, raw := range []string{Detail(err), "SQLITE", "malformed", "btree", "page", "(11)"} {
		if strings.Contains(err.Error(), raw) {
			t.Errorf("%q in %q", raw, err)
		}
	}
	if Detail(ErrFull) != "" {
		t.Errorf("detail %q of an error that is all words", Detail(ErrFull))
	}
}
