//go:build unix

package store

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"walkline/store/book"
)

// trial does one harm to a store in a folder of its own and returns what was lost, nothing where all that was acknowledged is there.
type trial struct {
	name string
	once func(t *testing.T, r *rand.Rand) (lost error)
}

var trials = []trial{
	{"kill in edits", func(t *testing.T, r *rand.Rand) error { return killed(t, r, syscall.SIGKILL, "") }},
	{"signal in edits", func(t *testing.T, r *rand.Rand) error {
		return killed(t, r, []syscall.Signal{syscall.SIGHUP, syscall.SIGTERM, syscall.SIGINT}[r.IntN(3)], "")
	}},
	{"disk full in edits", func(t *testing.T, r *rand.Rand) error {
		return killed(t, r, 0, fmt.Sprintf("ulimit -f %d; ", 1000+r.IntN(6000)))
	}},
	{"full disk", onFullDisk},
	{"kill in migration", killedMigrating},
	{"kill in backup", killedBackingUp},
	{"kill in restore", killedRestoring},
	{"kill in salvage", killedSalvaging},
	{"kill in import", killedImporting},
	{"disk full in backup", backupWithoutRoom},
	{"damaged page", func(t *testing.T, r *rand.Rand) error {
		return harmed(t, func(main, log []byte) {
			copy(main[4096*r.IntN(len(main)/4096):], bytes.Repeat([]byte{byte(r.Uint32())}, 4096))
		})
	}},
	{"bit flip in the log", func(t *testing.T, r *rand.Rand) error {
		return harmed(t, func(main, log []byte) { log[r.IntN(len(log))] ^= 1 << r.IntN(8) })
	}},
	{"bit flip in the file", func(t *testing.T, r *rand.Rand) error {
		return harmed(t, func(main, log []byte) { main[r.IntN(len(main))] ^= 1 << r.IntN(8) })
	}},
	{"stray log", strayed},
	{"stray journal", besideAJournal},
	{"read-only place", readOnly},
}

// TestTorture does every harm some times and fails on any loss. TORTURE holds the rounds; without it there is one.
func TestTorture(t *testing.T) {
	rounds, err := strconv.Atoi(os.Getenv("TORTURE"))
	if err != nil {
		rounds = 1
	}
	r := rand.New(rand.NewPCG(12, uint64(rounds)))
	for _, x := range trials {
		tried, survived := 0, 0
		t.Run(x.name, func(t *testing.T) {
			for range rounds {
				tried++
				if lost := x.once(t, r); lost != nil {
					t.Error(lost)
				} else {
					survived++
				}
			}
		})
		if tried > 0 {
			fmt.Printf("%-22s survived %d of %d\n", x.name, survived, tried)
		}
	}
}

// started runs a child of a role on a file, behind words of the shell.
func started(t *testing.T, role, path, shell string) (*exec.Cmd, io.Reader) {
	t.Helper()
	cmd := child(t, os.Args[0], role, path)
	if shell != "" {
		cmd.Path, cmd.Args = "/bin/sh", []string{"sh", "-c", shell + `exec "$0"`, os.Args[0]}
	}
	out, err := cmd.StdoutPipe()
	if err == nil {
		err = cmd.Start()
	}
	if err != nil {
		t.Fatal(err)
	}
	return cmd, out
}

// killed ends a child that saves case after case at some moment; with a full disk it ends by itself.
func killed(t *testing.T, r *rand.Rand, signal syscall.Signal, shell string) error {
	path := filepath.Join(t.TempDir(), "lots.walk")
	cmd, out := started(t, "write", path, shell)
	lines, last, stop := bufio.NewScanner(out), -1, 5+r.IntN(60)
	for lines.Scan() {
		last, _ = strconv.Atoi(lines.Text())
		if last == stop && signal != 0 {
			cmd.Process.Signal(signal)
		}
	}
	cmd.Wait()
	return holds(path, last)
}

// holds says what a store lacks of a case that was acknowledged as saved.
func holds(path string, last int) error {
	s, err := Open(context.Background(), path)
	if err != nil {
		return err
	}
	defer s.Close()
	l, err := s.Lot(context.Background(), 1)
	if errors.Is(err, ErrNotFound) && last < 0 {
		return nil
	}
	if n := l.Case.Lot.ModelYear; err != nil || n != last && n != last+1 || n != l.Case.Run.Scenarios {
		return fmt.Errorf("%d was acknowledged, %d is there: %w", last, n, err)
	}
	return s.Check(context.Background())
}

// ended lets a child of a role work for a moment, at most, and kills it.
func ended(t *testing.T, r *rand.Rand, role, path string) {
	t.Helper()
	cmd, out := started(t, role, path, "")
	bufio.NewReader(out).ReadString('\n') // it says when it begins
	time.Sleep(time.Duration(r.IntN(60_000)) * time.Microsecond)
	cmd.Process.Kill()
	cmd.Wait()
}

func killedMigrating(t *testing.T, r *rand.Rand) error {
	path := landedFile(t, 4)
	ended(t, r, "migrate", path)
	s, err := Open(t.Context(), path)
	if err != nil {
		return err
	}
	defer s.Close()
	checkLanded(t, s, 4)
	return s.Check(t.Context())
}

// filledStore returns the path of a closed store with some lots.
func filledStore(t *testing.T, lots int) string {
	t.Helper()
	s := opened(t)
	for range lots {
		added(t, s, big(40))
	}
	photo(t, s, "a photo")
	s.Close()
	return s.path
}

// lotsIn returns how many lots a store has, all of them whole.
func lotsIn(path string) (int, error) {
	s, err := Open(context.Background(), path)
	if err != nil {
		return 0, err
	}
	defer s.Close()
	all, err := s.Entries(context.Background())
	for _, e := range all {
		if _, unread := s.Lot(context.Background(), e.ID); unread != nil {
			return 0, unread
		}
	}
	return len(all), errors.Join(err, s.Check(context.Background()))
}

// hasLots says what a store lacks of some lots.
func hasLots(path string, want int) error {
	if n, err := lotsIn(path); err != nil || n != want {
		return fmt.Errorf("%s has %d of %d lots: %w", filepath.Base(path), n, want, err)
	}
	return nil
}

func killedBackingUp(t *testing.T, r *rand.Rand) error {
	path := filledStore(t, 8)
	ended(t, r, "backup", path)
	if exists(path + ".copy") {
		if err := hasLots(path+".copy", 8); err != nil {
			return err
		}
	}
	return hasLots(path, 8)
}

// killedRestoring: what was there is in place or set aside, and what is in place is the one or the other.
func killedRestoring(t *testing.T, r *rand.Rand) error {
	path, backup := filledStore(t, 3), filledStore(t, 5)
	if err := os.Rename(backup, path+".copy"); err != nil {
		t.Fatal(err)
	}
	ended(t, r, "restore", path)
	n, err := lotsIn(path)
	if err != nil || n != 3 && n != 5 {
		return fmt.Errorf("%d lots: %w", n, err)
	}
	aside, _ := filepath.Glob(path + ".before-restore-*.bak")
	for _, at := range aside {
		if m, err := lotsIn(at); err == nil && m == 3 {
			n = 3
		}
	}
	if n != 3 {
		return errors.New("what was there before the restore is nowhere")
	}
	return nil
}

// killedSalvaging: what was salvaged is there whole or not at all, and the next start cleans the rest.
func killedSalvaging(t *testing.T, r *rand.Rand) error {
	path := filledStore(t, 8)
	ended(t, r, "salvage", path)
	free, err := Claim(t.Context(), path)
	if err != nil {
		return err
	}
	free()
	if left, _ := filepath.Glob(path + "*.tmp*"); len(left) > 0 {
		return fmt.Errorf("left %q", left)
	}
	if exists(path + ".saved") {
		return hasLots(path+".saved", 8)
	}
	return hasLots(path, 8)
}

func killedImporting(t *testing.T, r *rand.Rand) error {
	path := filledStore(t, 1)
	ended(t, r, "import", path)
	s, err := Open(t.Context(), path)
	if err != nil {
		return err
	}
	defer s.Close()
	l, err := s.Lot(t.Context(), 1)
	if n := len(l.Case.Resale.Rows); err != nil || n != 40 && n != 4000 {
		return fmt.Errorf("%d rows of an import: %w", n, err)
	}
	return s.Check(t.Context())
}

func backupWithoutRoom(t *testing.T, r *rand.Rand) error {
	path := filledStore(t, 8)
	cmd, out := started(t, "backup", path, fmt.Sprintf("ulimit -f %d; ", 20+r.IntN(150)))
	words, _ := io.ReadAll(out)
	cmd.Wait()
	if exists(path+".copy") != strings.Contains(string(words), "backed up") {
		return fmt.Errorf("half a backup, said: %s", words)
	}
	return hasLots(path, 8)
}

// readOnly restores from, and reads, a copy made by hand where nothing can be written.
func readOnly(t *testing.T, r *rand.Rand) error {
	from := crashed(t)
	os.Remove(indexOf(from))
	os.Chmod(from, 0o444)
	os.Chmod(filepath.Dir(from), 0o555)
	defer os.Chmod(filepath.Dir(from), 0o755)
	s, err := OpenToRead(t.Context(), from)
	if err != nil {
		return err
	}
	all, err := s.Entries(t.Context())
	if err = errors.Join(err, s.Close()); err != nil || len(all) != 2 {
		return fmt.Errorf("%d lots read: %w", len(all), err)
	}
	to := filepath.Join(t.TempDir(), "lots.walk")
	if err := StageFor(t.Context(), to, from); err != nil {
		return err
	}
	return hasLots(to, 2)
}

// roles are what a child does to the file at a path once it has said that it begins.
var roles = map[string]func(ctx context.Context, path string) error{
	"migrate": func(ctx context.Context, path string) error { _, err := Open(ctx, path); return err },
	"backup": func(ctx context.Context, path string) error {
		s, err := Open(ctx, path)
		if err == nil {
			err = s.Backup(ctx, path+".copy")
		}
		return err
	},
	"salvage": func(ctx context.Context, path string) error { _, err := Salvage(ctx, path, path+".saved"); return err },
	"restore": func(ctx context.Context, path string) error {
		err := StageFor(ctx, path, path+".copy")
		if err == nil {
			_, err = Open(ctx, path)
		}
		return err
	},
	"import": func(ctx context.Context, path string) error {
		s, err := Open(ctx, path)
		if err != nil {
			return err
		}
		before, err := s.Lot(ctx, 1)
		if err != nil {
			return err
		}
		after := before.Clone()
		after.Case.Resale.Rows = big(4000).Resale.Rows
		_, err = s.Do(ctx, book.Step{Subject: book.Worksheet(1), Label: "import", Lots: []book.Change{{Before: before, After: after}}})
		return err
	},
}

// play is a child's work.
func play(role, path string) {
	fmt.Println("begins")
	if err := roles[role](context.Background(), path); err != nil {
		fmt.Println("failed:", err)
		return
	}
	fmt.Println("backed up")
}
