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

// create opens a new file of a stem and the time; a second one in the same second gets a number. None is ever overwritten.
func (c crashes) create(stem string) (*os.File, error) {
	name := filepath.Join(c.folder, stem+c.now().UTC().Format("20060102T150405Z"))
	for i := 1; ; i++ {
		path := name + ".txt"
		if i > 1 {
			path = fmt.Sprintf("%s-%d.txt", name, i)
		}
		f, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600)
		if !errors.Is(err, fs.ErrExist) {
			return f, err
		}
	}
}

// caught writes a panic that was caught to a file of its own, and the program goes on. Every edit is saved as it is made, so
// nothing is lost.
func (c crashes) caught(crash task.Crash) {
	f, err := c.create("crash-")
	if err == nil {
		_, err = fmt.Fprintf(f, "%s%v\n\n%s", head(), crash.Value, crash.Stack)
		err = errors.Join(err, f.Close())
	}
	if err != nil {
		fmt.Fprintln(c.errs, "walkline: writing the crash file:", err)
		return
	}
	fmt.Fprintln(c.errs, "walkline: a fault in the program, written to", f.Name())
	slog.Error("a fault in the program was caught", "file", f.Name())
}

// watch has the runtime write to a file what it says when the program ends in a fault that nobody catches, here or in the graphics
// driver. The file goes when the program ends by itself.
func (c crashes) watch() (end func()) {
	f, err := c.create(fmt.Sprintf("%s%d-", runningStem, os.Getpid()))
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
		f, err := c.create("crash-")
		if err != nil {
			continue
		}
		_, err = f.Write(text)
		if err = errors.Join(err, f.Close()); err != nil {
			continue
		}
		_ = os.Remove(path)
		slog.Error("a program ended in a fault", "file", f.Name())
		said = append(said, f.Name())
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
