package main

import (
	"fmt"
	"log"
	"log/slog"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestAFullLogBeginsAnew(t *testing.T) {
	path := filepath.Join(t.TempDir(), logName)
	l, err := openLog(path, 100)
	if err != nil {
		t.Fatal(err)
	}
	for i := range 11 {
		if _, err := fmt.Fprintf(l, "line %02d of twenty-four .\n", i); err != nil { // 25 bytes
			t.Fatal(err)
		}
	}
	l.Close()
	now, _ := os.ReadFile(path)
	old, _ := os.ReadFile(path + oldEnding)
	if !strings.HasPrefix(string(old), "line 04") || len(old) != 100 || !strings.HasPrefix(string(now), "line 08") || len(now) != 75 {
		t.Errorf("old %q, now %q", old, now)
	}
	if l, err = openLog(path, 100); err != nil || l.size != 75 {
		t.Errorf("opened again it has %d bytes, %v", l.size, err)
	}
	l.Close()
}

// TestALogGoesOnAfterItsLastWholeLine opens logs whose end a loss of power tore.
func TestALogGoesOnAfterItsLastWholeLine(t *testing.T) {
	for _, c := range []struct{ was, want string }{
		{"one\ntw", "one\nnext\n"}, {"one\n\x00\x00\x00", "one\nnext\n"}, {"one\n", "one\nnext\n"}, {"", "next\n"}, {"torn", "next\n"},
	} {
		path := filepath.Join(t.TempDir(), logName)
		if err := os.WriteFile(path, []byte(c.was), 0o600); err != nil {
			t.Fatal(err)
		}
		l, err := openLog(path, logSize)
		if err != nil {
			t.Fatal(err)
		}
		_, err = fmt.Fprintln(l, "next")
		l.Close()
		if got, _ := os.ReadFile(path); err != nil || string(got) != c.want {
			t.Errorf("after %q it holds %q, %v", c.was, got, err)
		}
	}
}

func TestWhatTheToolkitReportsGoesToTheLog(t *testing.T) {
	kept, writer, flags := slog.Default(), log.Writer(), log.Flags()
	defer func() { slog.SetDefault(kept); log.SetOutput(writer); log.SetFlags(flags) }()
	folder := t.TempDir()
	var errs strings.Builder
	end := keepLog(folder, &errs)
	log.Println("Fyne error:  something")
	end()
	got, err := os.ReadFile(filepath.Join(folder, logName))
	if err != nil || !strings.Contains(string(got), "msg=started version=unstamped engine=walkline-engine/") ||
		!strings.Contains(string(got), "Fyne error:  something") {
		t.Errorf("%v: %s", err, got)
	}
	keepLog(filepath.Join(folder, "nowhere"), &errs)()
	if !strings.Contains(errs.String(), "no log is kept") {
		t.Errorf("said %q", errs.String())
	}
}
