package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"log/slog"
	"os"
	"path/filepath"
	"runtime/debug"
	"strconv"
	"strings"
	"syscall"
	"time"

	"walkline/cmd/version"
	"walkline/store/plain"
	"walkline/ui/task"
)

// crashes keeps what is known of faults in the program, as files in one folder.
type crashes struct {
	folder string
	errs   io.Writer
	now    func() time.Time
}

// runningStem begins the name of the file that each running program holds for what the runtime says when it ends in a fault; the
// number of its process follows.
const runningStem = "running-"

// head begins every crash file.
func head() string { return version.Line("walkline") + "\n\n" }

// free returns a name that nothing has yet: of a stem and the time; a second one in the same second gets a number. None is ever
// overwritten.
func (c crashes) free(stem string) string {
	name := filepath.Join(c.folder, stem+c.now().UTC().Format("20060102T150405Z"))
	path := name + ".txt"
	for i := 2; ; i++ {
		if _, err := os.Lstat(path); errors.Is(err, fs.ErrNotExist) {
			return path
		}
		path = fmt.Sprintf("%s-%d.txt", name, i)
	}
}

// caught writes a panic that was caught to a file of its own, whole or not at all, and the program goes on. Every edit is saved as it is
// made, so nothing is lost.
func (c crashes) caught(crash task.Crash) {
	path := c.free("crash-")
	if err := plain.Place(path, strings.NewReader(fmt.Sprintf("%s%v\n\n%s", head(), crash.Value, crash.Stack))); err != nil {
		fmt.Fprintln(c.errs, "walkline: writing the crash file:", err)
		return
	}
	fmt.Fprintln(c.errs, "walkline: a fault in the program, written to", path)
	slog.Error("a fault in the program was caught", "file", path)
}

// watch has the runtime write to a file what it says when the program ends in a fault that nobody catches, here or in the graphics
// driver. The file goes when the program ends by itself.
func (c crashes) watch() (end func()) {
	f, err := os.OpenFile(c.free(fmt.Sprintf("%s%d-", runningStem, os.Getpid())), os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600)
	if err != nil {
		slog.Warn("no file for the last words of a fault", "error", err)
		return func() {}
	}
	_, err = f.WriteString(head())
	if err = errors.Join(err, debug.SetCrashOutput(f, debug.CrashOptions{})); err != nil {
		slog.Warn("the last words of a fault are not kept", "error", err)
	}
	return func() {
		_ = debug.SetCrashOutput(nil, debug.CrashOptions{})
		_ = f.Close()
		_ = os.Remove(f.Name())
	}
}

// over does something while the runtime's last words are kept. A fault on the way leaves them: the file goes only after an end by itself,
// so nothing here is deferred.
func (c crashes) over(do func() error) error {
	end := c.watch()
	err := do()
	end()
	return err
}

// unfinished takes over the files of programs that did not end by themselves, and returns those that say why, newest last. The file of a
// program that was only killed says nothing and is removed; that of one that still runs stays.
func (c crashes) unfinished() (said []string) {
	left, _ := filepath.Glob(filepath.Join(globbed(c.folder), runningStem+"*.txt"))
	for _, path := range left {
		text, err := os.ReadFile(path)
		if err != nil || runs(path) {
			continue
		}
		if _, words, _ := bytes.Cut(text, []byte("\n\n")); len(words) == 0 {
			slog.Warn("a program did not end by itself, and left no word of it", "file", path)
			_ = os.Remove(path)
			continue
		}
		to := c.free("crash-")
		if err := os.Rename(path, to); err != nil { // it is whole already, which a new file on a full disk would not be
			slog.Warn("the file of a fault keeps its name", "error", err)
			to = path
		}
		slog.Error("a program ended in a fault", "file", to)
		said = append(said, to)
	}
	return said
}

// runs reports whether the program that holds a file of the running still runs. Where the system does not tell (Windows), it keeps a
// file that is open from being removed.
func runs(path string) bool {
	number, _, _ := strings.Cut(strings.TrimPrefix(filepath.Base(path), runningStem), "-")
	pid, err := strconv.Atoi(number)
	if err != nil || pid == os.Getpid() {
		return false
	}
	p, err := os.FindProcess(pid)
	if err != nil {
		return false
	}
	err = p.Signal(syscall.Signal(0))
	return err == nil || errors.Is(err, os.ErrPermission)
}

// globbed quotes what a pattern would take for more than itself.
func globbed(path string) string {
	return strings.NewReplacer("[", `[[]`, "*", `[*]`, "?", `[?]`).Replace(path)
}
