package main

import (
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

func (r *rotating) open() (err error) {
	if r.file, err = os.OpenFile(r.path, os.O_CREATE|os.O_APPEND|os.O_WRONLY, 0o600); err != nil {
		return err
	}
	info, err := r.file.Stat()
	if err == nil {
		r.size = info.Size()
	}
	return err
}

// Write appends one line.
func (r *rotating) Write(line []byte) (int, error) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.size > 0 && r.size+int64(len(line)) > r.most {
		r.file.Close()
		if err := os.Rename(r.path, r.path+oldEnding); err != nil {
			return 0, err
		}
		if err := r.open(); err != nil {
			return 0, err
		}
	}
	n, err := r.file.Write(line)
	r.size += int64(n)
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
