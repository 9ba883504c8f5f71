//go:build unix

package store

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/resale"
)

// childPath tells the test binary, when it is run again, to be a child that works on that file instead.
const childPath = "STORE_TEST_FILE"

func TestMain(m *testing.M) {
	path := os.Getenv(childPath)
	switch os.Getenv("STORE_TEST_ROLE") {
	case "write":
		writeForever(path)
	case "open":
		s, err := Open(context.Background(), path)
		if err == nil {
			_, err = s.Do(context.Background(), book.Step{New: []book.New{{Case: valuation.Defaults()}}})
		}
		fmt.Println(errors.Is(err, ErrNotWritable), err)
	default:
		if role := os.Getenv("STORE_TEST_ROLE"); roles[role] != nil {
			play(role, path)
			return
		}
		os.Exit(m.Run())
	}
}

// writeForever saves case after case and says each number once it is saved.
func writeForever(path string) {
	ctx := context.Background()
	s, err := Open(ctx, path)
	if err != nil {
		panic(err)
	}
	step := book.Step{Subject: book.Worksheet(1), New: []book.New{{Case: numbered(0)}}}
	for n := 1; ; n++ {
		if _, err := s.Do(ctx, step); err != nil {
			panic(err)
		}
		change := book.Change{Before: book.Lot{ID: 1, State: lot.ToLookAt, Case: numbered(n - 1)}}
		change.After = change.Before
		change.After.Case = numbered(n)
		step = book.Step{Subject: book.Worksheet(1), Label: strconv.Itoa(n), Lots: []book.Change{change}}
		fmt.Println(n - 1)
	}
}

// numbered returns a case of several documents that all say n.
func numbered(n int) valuation.Case {
	c := valuation.Defaults()
	c.Lot.ModelYear, c.Run.Scenarios = n, n
	for i := range 20 + n%7 {
		c.Resale.Rows = append(c.Resale.Rows, resale.Row{ID: strconv.Itoa(i), ModelYear: n})
	}
	return c
}

func child(t *testing.T, binary, role, path string) *exec.Cmd {
	t.Helper()
	cmd := exec.Command(binary)
	cmd.Env = append(os.Environ(), childPath+"="+path, "STORE_TEST_ROLE="+role)
	return cmd
}

func TestAKilledProgramLosesNothingThatWasSaved(t *testing.T) {
	for round := range 4 {
		path := filepath.Join(t.TempDir(), "lots.walk")
		cmd := child(t, os.Args[0], "write", path)
		out, err := cmd.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		lines := bufio.NewScanner(out)
		last := 0
		for last < 40+13*round && lines.Scan() {
			last, _ = strconv.Atoi(lines.Text())
		}
		cmd.Process.Kill()
		for lines.Scan() { // what it had saved and said before it died
			last, _ = strconv.Atoi(lines.Text())
		}
		cmd.Wait()
		checkAfterCrash(t, path, last)
	}
}

// checkAfterCrash opens what a killed child left: it holds the last save that was said, or the one after it, whole.
func checkAfterCrash(t *testing.T, path string, last int) {
	t.Helper()
	s := reopened(t, path)
	var verdict string
	if err := s.reader.QueryRow("PRAGMA integrity_check").Scan(&verdict); err != nil || verdict != "ok" {
		t.Fatalf("integrity: %s, %v", verdict, err)
	}
	c := read(t, s, 1).Case
	n := c.Lot.ModelYear
	if n != last && n != last+1 {
		t.Fatalf("the child said that it saved %d, the file holds %d", last, n)
	}
	equal(t, c, numbered(n))
	undone(t, s, book.Worksheet(1), strconv.Itoa(n))
	equal(t, read(t, s, 1).Case, numbered(n-1))
}

// TestAFolderWithoutPermissionIsNamed runs the check as an ordinary user: root may write everywhere.
func TestAFolderWithoutPermissionIsNamed(t *testing.T) {
	dir, err := os.MkdirTemp("", "store")
	if err != nil {
		t.Fatal(err)
	}
	defer os.RemoveAll(dir)
	binary := filepath.Join(dir, "child")
	copyFile(t, os.Args[0], binary)
	s := reopened(t, filepath.Join(dir, "old.walk"))
	s.Close()
	if err := os.Chmod(dir, 0o555); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"new.walk", "old.walk"} {
		cmd := child(t, binary, "open", filepath.Join(dir, name))
		if os.Geteuid() == 0 {
			cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: 65534, Gid: 65534}}
		}
		out, err := cmd.CombinedOutput()
		if err != nil || !strings.HasPrefix(string(out), "true opening "+dir) {
			t.Errorf("%s: %v: %s", name, err, out)
		}
	}
	os.Chmod(dir, 0o755)
}

func copyFile(t *testing.T, from, to string) {
	t.Helper()
	in, err := os.Open(from)
	if err != nil {
		t.Fatal(err)
	}
	defer in.Close()
	out, err := os.OpenFile(to, os.O_CREATE|os.O_WRONLY, 0o755)
	if err != nil {
		t.Fatal(err)
	}
	defer out.Close()
	if _, err := io.Copy(out, in); err != nil {
		t.Fatal(err)
	}
}
