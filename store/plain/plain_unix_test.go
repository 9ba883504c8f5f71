//go:build unix

package plain_test

import (
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"testing/iotest"

	"walkline/store/plain"
)

func TestWhatIsNoPlainFileIsRefused(t *testing.T) {
	dir := t.TempDir()
	pipe, file := filepath.Join(dir, "pipe"), filepath.Join(dir, "file")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Fatal(err)
	}
	os.WriteFile(file, []byte("12345"), 0o600)
	for path, want := range map[string]error{pipe: plain.ErrNoFile, dir: plain.ErrNoFile, "/dev/zero": plain.ErrNoFile,
		file: plain.ErrTooLarge} {
		if _, err := plain.Read(t.Context(), path, 4); !errors.Is(err, want) {
			t.Errorf("%s: %v", path, err)
		}
		if err := plain.Copy(t.Context(), path, file+"2", 4); !errors.Is(err, want) {
			t.Errorf("copying %s: %v", path, err)
		}
	}
	if data, err := plain.Read(t.Context(), file, 5); err != nil || string(data) != "12345" {
		t.Errorf("%q, %v", data, err)
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := plain.Read(ctx, file, 5); !errors.Is(err, context.Canceled) {
		t.Errorf("%v", err)
	}
}

func TestAFileThatIsNotWrittenWholeIsNotThere(t *testing.T) {
	dir := t.TempDir()
	broken := io.MultiReader(strings.NewReader("half"), iotest.ErrReader(errors.New("the disk is full")))
	if err := plain.Place(filepath.Join(dir, "x"), broken); err == nil {
		t.Error("half a file was placed")
	}
	if left, _ := os.ReadDir(dir); len(left) != 0 {
		t.Errorf("%v", left)
	}
	if err := plain.Place(filepath.Join(dir, "x"), strings.NewReader("whole")); err != nil {
		t.Fatal(err)
	}
	if data, _ := os.ReadFile(filepath.Join(dir, "x")); string(data) != "whole" {
		t.Errorf("%q", data)
	}
}
