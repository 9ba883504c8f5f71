package wire_test

import (
	"path/filepath"
	"strings"
	"testing"

	"walkline/store"
	"walkline/ui/desk"
)

func TestABackupIsMadeAndMadeReadyThroughTheDesk(t *testing.T) {
	d, book := open(t)
	s := d.Do(t.Context(), d.Load(t.Context()), desk.LoadDemo())
	if s.Keeping.Path != book.Path() || s.Keeping.Staged {
		t.Fatalf("%+v", s.Keeping)
	}
	backup := filepath.Join(t.TempDir(), "backup.db")
	if err := d.Backup(t.Context(), backup); err != nil {
		t.Fatal(err)
	}
	s = d.Staged(s, backup, d.StageRestore(t.Context(), backup))
	if !s.Keeping.Staged || !strings.Contains(s.Notice, "starts next") {
		t.Errorf("%q %q", s.Notice, s.Trouble)
	}
	if s = d.Do(t.Context(), s, desk.Unstage()); s.Keeping.Staged || s.Trouble != "" {
		t.Errorf("%+v %q", s.Keeping, s.Trouble)
	}
	s = d.Staged(s, book.Path(), d.StageRestore(t.Context(), book.Path()))
	if s.Keeping.Staged || !strings.Contains(s.Trouble, store.ErrSame.Error()) {
		t.Errorf("restored from itself: %q", s.Trouble)
	}
}
