//go:build unix

package store

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"
)

// What is no plain file is refused by every way of opening one, and nobody waits for it: a pipe that nobody writes to would hold the
// window.
func TestWhatIsNoPlainFileIsNoStore(t *testing.T) {
	dir := t.TempDir()
	pipe, link, folder := filepath.Join(dir, "pipe"), filepath.Join(dir, "link"), filepath.Join(dir, "folder")
	if err := errors.Join(syscall.Mkfifo(pipe, 0o600), os.Symlink(pipe, link), os.Mkdir(folder, 0o700)); err != nil {
		t.Fatal(err)
	}
	own := opened(t).path
	for _, at := range []string{pipe, link, folder, "/dev/zero"} {
		for name, open := range map[string]func() error{
			"open":    func() error { _, err := Open(t.Context(), at); return err },
			"read":    func() error { _, err := OpenToRead(t.Context(), at); return err },
			"restore": func() error { return StageFor(t.Context(), own, at) },
			"salvage": func() error { _, err := Salvage(t.Context(), at, filepath.Join(dir, "to")); return err },
		} {
			came := make(chan error, 1)
			go func() { came <- open() }()
			select {
			case err := <-came:
				if !errors.Is(err, ErrNotDatabase) {
					t.Errorf("%s %s: %v", name, at, err)
				}
			case <-time.After(10 * time.Second):
				t.Errorf("%s %s: it waits", name, at)
				let(pipe)
			}
		}
	}
}

// let ends who waits to read a pipe.
func let(pipe string) {
	if f, err := os.OpenFile(pipe, os.O_WRONLY|syscall.O_NONBLOCK, 0); err == nil {
		f.Close()
	}
}

// A claim on what is no plain file is refused too, and a broken link leads to a new file as any other name does.
func TestALinkToNothingIsANewStore(t *testing.T) {
	dir := t.TempDir()
	link := filepath.Join(dir, "link")
	if err := os.Symlink(filepath.Join(dir, "new"), link); err != nil {
		t.Fatal(err)
	}
	s, err := Open(context.Background(), link)
	if err != nil {
		t.Fatal(err)
	}
	added(t, s, sample(t))
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	if n := len(entries(t, reopened(t, link))); n != 1 {
		t.Errorf("%d lots", n)
	}
}
