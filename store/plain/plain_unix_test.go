//go:build unix

package plain_test

import (
	"context"
	"errors"
	"io"
	"os"
	"os/signal"
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

// What is written over a file is there whole, or what was there stays; its permissions stay, and a link still leads to it.
func TestAFileIsPutWholeOverAnother(t *testing.T) {
	dir := t.TempDir()
	path, link, pipe := filepath.Join(dir, "sheet.pdf"), filepath.Join(dir, "link"), filepath.Join(dir, "pipe")
	if err := errors.Join(os.WriteFile(path, []byte("of yesterday"), 0o640), os.Symlink(path, link), syscall.Mkfifo(pipe, 0o600)); err != nil {
		t.Fatal(err)
	}
	if err := plain.Put(link, []byte("of today")); err != nil {
		t.Fatal(err)
	}
	info, err := os.Lstat(path)
	if data, _ := os.ReadFile(path); err != nil || string(data) != "of today" || info.Mode() != 0o640 {
		t.Errorf("%q, %v, %v", data, info.Mode(), err)
	}
	if to, err := os.Readlink(link); err != nil || to != path {
		t.Errorf("the link: %s, %v", to, err)
	}
	read := make(chan string)
	go func() { data, _ := os.ReadFile(pipe); read <- string(data) }()
	if err := plain.Put(pipe, []byte("through")); err != nil {
		t.Error(err)
	}
	if got := <-read; got != "through" {
		t.Errorf("through a pipe came %q", got)
	}
	var old syscall.Rlimit
	signal.Ignore(syscall.SIGXFSZ)
	defer signal.Reset(syscall.SIGXFSZ)
	if err := syscall.Getrlimit(syscall.RLIMIT_FSIZE, &old); err != nil {
		t.Fatal(err)
	}
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: 1 << 16, Max: old.Max}); err != nil {
		t.Fatal(err)
	}
	err = plain.Put(path, make([]byte, 1<<20))
	syscall.Setrlimit(syscall.RLIMIT_FSIZE, &old)
	data, _ := os.ReadFile(path)
	if left, _ := filepath.Glob(filepath.Join(dir, "*.tmp")); err == nil || string(data) != "of today" || len(left) > 0 {
		t.Errorf("%v, %q, left %q", err, data, left)
	}
}
