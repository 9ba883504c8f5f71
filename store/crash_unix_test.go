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

	"walkline/valuation"
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
			_, err = s.Add(context.Background(), valuation.Defaults())
		}
		fmt.Println(errors.Is(err, ErrNotWritable), err)
	default:
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
	id, err := s.Add(ctx, numbered(0))
	if err != nil {
		panic(err)
	}
	for n := 1; ; n++ {
		if err := s.Save(ctx, id, strconv.Itoa(n), numbered(n)); err != nil {
			panic(err)
		}
		fmt.Println(n)
	}
}

// numbered returns a case whose every table says n.
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
	c, err := s.Case(t.Context(), 1)
	if err != nil {
		t.Fatal(err)
	}
	n := c.Lot.ModelYear
	if n != last && n != last+1 {
		t.Fatalf("the child said that it saved %d, the file holds %d", last, n)
	}
	same(t, c, numbered(n))
	u, err := s.Undo(t.Context(), 1)
	if err != nil || u.Label != strconv.Itoa(n) {
		t.Fatalf("undo after the crash: %q, %v", u.Label, err)
	}
	same(t, u.Case, numbered(n-1))
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
