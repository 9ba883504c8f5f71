package main

import (
	"bytes"
	"fmt"
	"io"
	"log/slog"
	"os"
	"path/filepath"
	"runtime"
	"sync"

	"walkline/cmd/version"
	"walkline/valuation"
)

// logName is the log in the data folder; the one before it has oldEnding behind.
const (
	logName   = "walkline.log"
	oldEnding = ".1"
	logSize   = 512 << 10

	longestLine = 64 << 10 // that is looked for at the end of a log
)

// rotating is a file that begins anew when it is full; the full one is kept beside it, in place of the one before.
type rotating struct {
	path string
	most int64 // bytes

	mu   sync.Mutex
	file *os.File
	size int64
}

func openLog(path string, most int64) (*rotating, error) {
	r := &rotating{path: path, most: most}
	return r, r.open()
}

// open goes on after the last whole line: a loss of power may have torn the one after it. Nothing waits for the disk: what is lost then is
// the end of a log.
func (r *rotating) open() (err error) {
	if r.file, err = os.OpenFile(r.path, os.O_CREATE|os.O_APPEND|os.O_RDWR, 0o600); err != nil {
		return err
	}
	info, err := r.file.Stat()
	if err != nil {
		return err
	}
	r.size = info.Size()
	tail := make([]byte, min(r.size, longestLine))
	if _, err := r.file.ReadAt(tail, r.size-int64(len(tail))); err != nil {
		return err
	}
	if torn := int64(len(tail) - 1 - bytes.LastIndexByte(tail, '\n')); torn > 0 {
		r.cut(r.size - torn)
	}
	return nil
}

// cut shortens the file to whole lines, where the system lets it.
func (r *rotating) cut(size int64) {
	if r.file.Truncate(size) == nil {
		r.size = size
	}
}

// Write appends one line, or none of it.
func (r *rotating) Write(line []byte) (int, error) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.size > 0 && r.size+int64(len(line)) > r.most {
		r.file.Close()
		_ = os.Rename(r.path, r.path+oldEnding) // where that can't be, the log grows on
		if err := r.open(); err != nil {
			return 0, err
		}
	}
	before := r.size
	n, err := r.file.Write(line)
	if r.size += int64(n); err != nil {
		r.cut(before)
	}
	return n, err
}

// Close closes the file.
func (r *rotating) Close() error { return r.file.Close() }

// keepLog sends what the program and its toolkit report to the log in a folder. It holds which build ran, migrations, imports and
// refusals, and nothing of what a lot says. Where no log can be kept it is said once, and nothing is reported.
func keepLog(folder string, errs io.Writer) (end func()) {
	end = func() {}
	var to io.Writer = io.Discard
	kept, err := openLog(filepath.Join(folder, logName), logSize)
	if err != nil {
		fmt.Fprintln(errs, "walkline: no log is kept:", err)
	} else {
		to, end = kept, func() { _ = kept.Close() }
	}
	slog.SetDefault(slog.New(slog.NewTextHandler(to, nil)))
	slog.Info("started", "version", version.Number(), "engine", valuation.Engine, "go", runtime.Version(), "system",
		runtime.GOOS+"/"+runtime.GOARCH)
	return end
}
