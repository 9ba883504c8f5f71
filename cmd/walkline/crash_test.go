package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"walkline/ui/task"
)

// kept returns crashes in a folder of the test's own, at one moment that does not pass.
func kept(t *testing.T) (crashes, *strings.Builder) {
	t.Helper()
	errs := &strings.Builder{}
	return crashes{folder: t.TempDir(), errs: errs, now: func() time.Time { return time.Date(2026, 11, 28, 9, 30, 0, 0, time.UTC) }}, errs
}

func TestTwoCrashesInOneSecondAreTwoFiles(t *testing.T) {
	c, errs := kept(t)
	for _, what := range []string{"first", "second", "third"} {
		c.caught(task.Crash{Value: what, Stack: []byte("the stack")})
	}
	for name, what := range map[string]string{"crash-20261128T093000Z.txt": "first", "crash-20261128T093000Z-2.txt": "second",
		"crash-20261128T093000Z-3.txt": "third"} {
		text, err := os.ReadFile(filepath.Join(c.folder, name))
		if err != nil || !strings.HasPrefix(string(text), "walkline unstamped (walkline-engine/") ||
			!strings.Contains(string(text), what+"\n\nthe stack") {
			t.Errorf("%s: %v, %q", name, err, text)
		}
		if !strings.Contains(errs.String(), name) {
			t.Errorf("%s is not said: %s", name, errs.String())
		}
	}
}

// TestAnUnfinishedCrashIsSaidAtTheNextStart has another process end in a fault that nobody catches, and one that is killed.
func TestAnUnfinishedCrashIsSaidAtTheNextStart(t *testing.T) {
	if folder := os.Getenv("WALKLINE_CRASH_IN"); folder != "" {
		c := crashes{folder: folder, errs: os.Stderr, now: time.Now}
		_ = c.over(func() error { panic("nobody catches this") })
	}
	c, _ := kept(t)
	cmd := exec.Command(os.Args[0], "-test.run=^TestAnUnfinishedCrashIsSaidAtTheNextStart$")
	cmd.Env = append(os.Environ(), "WALKLINE_CRASH_IN="+c.folder)
	if err := cmd.Run(); err == nil {
		t.Fatal("the other process did not end in a fault")
	}
	killed := filepath.Join(c.folder, runningStem+"999999999-20261128T092900Z.txt")
	running := filepath.Join(c.folder, runningStem+"1-20261128T092900Z.txt")
	for _, path := range []string{killed, running} {
		if err := os.WriteFile(path, []byte(head()), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	said := c.unfinished()
	if len(said) != 1 || filepath.Base(said[0]) != "crash-20261128T093000Z.txt" {
		t.Fatalf("said %q", said)
	}
	if text, _ := os.ReadFile(said[0]); !strings.Contains(string(text), "nobody catches this") ||
		!strings.Contains(string(text), "goroutine ") {
		t.Errorf("it says %q", text)
	}
	if _, err := os.Stat(killed); err == nil {
		t.Error("the file of the killed program is still there")
	}
	if _, err := os.Stat(running); err != nil {
		t.Error("the file of a program that runs was taken:", err)
	}
	if again := c.unfinished(); len(again) != 0 {
		t.Errorf("said again: %q", again)
	}
}

func TestAnEndByItselfLeavesNoFile(t *testing.T) {
	c, _ := kept(t)
	if err := c.over(func() error { return nil }); err != nil {
		t.Error(err)
	}
	if left, _ := filepath.Glob(filepath.Join(c.folder, "*")); len(left) != 0 {
		t.Errorf("left %q", left)
	}
}
