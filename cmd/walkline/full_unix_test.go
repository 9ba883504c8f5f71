//go:build unix

package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"walkline/ui/task"
)

// TestAFullDiskLeavesWholeLinesAndWholeFiles has another process, which may write no file beyond 100 bytes, log lines of 30 and catch a
// fault: the log ends with a whole line, and there is no crash file, nor a part of one.
func TestAFullDiskLeavesWholeLinesAndWholeFiles(t *testing.T) {
	if folder := os.Getenv("WALKLINE_FULL_IN"); folder != "" {
		l, err := openLog(filepath.Join(folder, logName), logSize)
		if err == nil {
			err = syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: 100, Max: 100})
		}
		if err != nil {
			t.Fatal(err)
		}
		for range 5 {
			_, err = fmt.Fprintf(l, "%29s\n", "a line")
		}
		c, _ := kept(t)
		c.folder, c.errs = folder, os.Stdout
		c.caught(task.Crash{Value: "a fault", Stack: []byte(strings.Repeat("the stack\n", 20))})
		fmt.Println("the last line:", err)
		return
	}
	folder := t.TempDir()
	cmd := exec.Command(os.Args[0], "-test.run=^TestAFullDiskLeavesWholeLinesAndWholeFiles$")
	cmd.Env = append(os.Environ(), "WALKLINE_FULL_IN="+folder)
	out, err := cmd.CombinedOutput()
	if err != nil || !strings.Contains(string(out), "the last line: write") || !strings.Contains(string(out), "writing the crash file:") {
		t.Fatalf("%v: %s", err, out)
	}
	text, err := os.ReadFile(filepath.Join(folder, logName))
	if err != nil || string(text) != strings.Repeat(fmt.Sprintf("%29s\n", "a line"), 3) {
		t.Errorf("the log holds %q, %v", text, err)
	}
	if left, _ := filepath.Glob(filepath.Join(folder, "*")); len(left) != 1 {
		t.Errorf("left %q", left)
	}
}
