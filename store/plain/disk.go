package plain

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
)

// Change is one change of a disk: create, write, sync, rename, remove, folder (made) or names (of a folder, waited for).
type Change struct {
	What, Path, To string // To: the new name of what is renamed
	Data           []byte // of a write, which follows the one before it
}

// Watch hears of every change that this package has made, so that a test can play what a loss of power leaves of them. It is set while
// nothing is written.
var Watch func(Change)

// told passes on what was done.
func told(err error, c Change) error {
	if err == nil && Watch != nil {
		Watch(c)
	}
	return err
}

// writing is a file that is written from its start to its end.
type writing struct{ to *os.File }

func (w writing) Write(p []byte) (int, error) {
	n, err := w.to.Write(p)
	return n, told(err, Change{What: "write", Path: w.to.Name(), Data: p})
}

// Place writes what r holds beside a place, waits until it is on the disk and puts it in place. Errors: r's, and the disk's;
// nothing is left then.
func Place(path string, r io.Reader) error {
	t, err := os.CreateTemp(filepath.Dir(path), filepath.Base(path)+".*"+Ending)
	if err != nil {
		return err
	}
	return place(t, path, r)
}

// Put writes a file for somebody else to read, over what is there: whole, or what was there stays. A link is followed, and what is no plain
// file, such as a pipe, is written to as it is. Errors: the disk's.
func Put(path string, data []byte) error {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	mode := fs.FileMode(0o666) // less what the system takes off
	if info, err := os.Stat(path); err == nil {
		if mode = info.Mode(); !mode.IsRegular() {
			return os.WriteFile(path, data, 0)
		}
	}
	coming := fmt.Sprintf("%s.%d%s", path, os.Getpid(), Ending)
	if err := Remove(coming); err != nil {
		return err
	}
	t, err := os.OpenFile(coming, os.O_CREATE|os.O_EXCL|os.O_WRONLY, mode.Perm())
	if err != nil {
		return err
	}
	return place(t, path, bytes.NewReader(data))
}

// place fills a new file and gives it its name.
func place(t *os.File, path string, r io.Reader) (err error) {
	_ = told(nil, Change{What: "create", Path: t.Name()})
	defer func() {
		if err != nil {
			err = errors.Join(err, Remove(t.Name()))
		}
	}()
	_, err = io.Copy(writing{t}, r)
	if err == nil {
		err = told(t.Sync(), Change{What: "sync", Path: t.Name()})
	}
	if err = errors.Join(err, t.Close()); err != nil {
		return err
	}
	return Rename(t.Name(), path)
}

// Sync waits until a file is on the disk.
func Sync(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	return told(errors.Join(f.Sync(), f.Close()), Change{What: "sync", Path: path})
}

// Rename gives a file its name, for good: the folder is waited for.
func Rename(from, to string) error {
	if err := told(os.Rename(from, to), Change{What: "rename", Path: from, To: to}); err != nil {
		return err
	}
	return SyncFolder(filepath.Dir(to))
}

// Remove deletes a file, if there is one.
func Remove(path string) error {
	if err := os.Remove(path); !errors.Is(err, fs.ErrNotExist) {
		return told(err, Change{What: "remove", Path: path})
	}
	return nil
}

// RemoveAll deletes a file or a folder with all in it, if there is one.
func RemoveAll(path string) error {
	return told(os.RemoveAll(path), Change{What: "remove", Path: path})
}

// MakeFolder makes a folder where there is none, for good: its name is waited for.
func MakeFolder(path string) error {
	if info, err := os.Lstat(path); err == nil && info.IsDir() {
		return nil
	}
	if err := told(os.MkdirAll(path, 0o777), Change{What: "folder", Path: path}); err != nil {
		return err
	}
	return SyncFolder(filepath.Dir(path))
}

// TempFolder makes a folder for what is still being written, beside a place.
func TempFolder(path string) (string, error) {
	dir, err := os.MkdirTemp(filepath.Dir(path), filepath.Base(path)+".*"+Ending)
	return dir, told(err, Change{What: "folder", Path: dir})
}

// SyncFolder waits until the names in a folder are on the disk, where the system can be asked to.
func SyncFolder(folder string) error {
	if runtime.GOOS == "windows" { // which has no such call for a folder
		return nil
	}
	f, err := os.Open(folder)
	if err != nil {
		return err
	}
	return told(errors.Join(f.Sync(), f.Close()), Change{What: "names", Path: folder})
}
