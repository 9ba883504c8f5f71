//go:build unix

package store

import (
	"bytes"
	"strings"
	"sync"
	"testing"
	"unsafe"

	"modernc.org/libc"
	sqlite3 "modernc.org/sqlite/lib"

	"walkline/store/plain"
)

// call is one call that SQLite or package plain makes to the file system, or what was acknowledged between two.
type call struct {
	what  string // create, write, truncate, sync, delete, rename, folder, names, acknowledged
	file  string // the path below the folder that is recorded
	to    string // the new one of what is renamed
	at    int64  // of a write; the size of a truncation; whether a deletion waits for the folder; what was acknowledged
	data  []byte
	isLog bool // a file whose first sync SQLite follows by one of its folder (os_unix.c, UNIXFILE_DIRSYNC)
}

// recorder stands between SQLite and its file system (SQLite, "The OS Interface or VFS"), hears of the changes of package plain, and keeps
// the calls to the files below one folder.
type recorder struct {
	mu     sync.Mutex
	folder string
	open   map[uintptr]recordedFile // by SQLite's pointer
	tables map[uintptr]uintptr      // of calls to an open file, of which there is one for each way of locking: by way of this recorder
	calls  []call
	below  sqlite3.Tsqlite3_vfs
}

// opened is an open file, with the calls to it.
type recordedFile struct {
	name string
	sqlite3.Tsqlite3_io_methods
}

// recording is the recorder at work: SQLite's call comes with no word of Go's.
var recording *recorder

// recorded plays work while the calls to the files of a folder are kept. All stores in it are to be closed when work ends.
func recorded(t *testing.T, folder string, work func(r *recorder)) []call {
	t.Helper()
	tls := libc.NewTLS()
	defer tls.Close()
	below := sqlite3.Xsqlite3_vfs_find(tls, 0)
	r := &recorder{folder: folder, open: map[uintptr]recordedFile{}, tables: map[uintptr]uintptr{}, below: *vfsAt(below)}
	vfs := libc.Xmalloc(tls, libc.Tsize_t(unsafe.Sizeof(r.below)))
	name, err := libc.CString("recording")
	if err != nil || vfs == 0 {
		t.Fatal("no memory")
	}
	*vfsAt(vfs) = r.below
	vfsAt(vfs).FzName, vfsAt(vfs).FxOpen, vfsAt(vfs).FxDelete = name, pointer(xOpen), pointer(xDelete)
	recording = r
	if sqlite3.Xsqlite3_vfs_register(tls, vfs, 1) != sqlite3.SQLITE_OK {
		t.Fatal("not registered")
	}
	plain.Watch = r.watch
	work(r)
	plain.Watch = nil
	sqlite3.Xsqlite3_vfs_unregister(tls, vfs)
	sqlite3.Xsqlite3_vfs_register(tls, below, 1)
	if len(r.open) > 0 {
		t.Fatalf("still open: %v", r.open)
	}
	libc.Xfree(tls, vfs)
	libc.Xfree(tls, name)
	return r.calls
}

// memoryAt, pointer and function go between the pointers of the C that SQLite was and those of Go.
func memoryAt(p uintptr) unsafe.Pointer     { return *(*unsafe.Pointer)(unsafe.Pointer(&p)) }
func vfsAt(p uintptr) *sqlite3.Tsqlite3_vfs { return (*sqlite3.Tsqlite3_vfs)(memoryAt(p)) }
func methodsAt(p uintptr) *sqlite3.Tsqlite3_io_methods {
	return (*sqlite3.Tsqlite3_io_methods)(memoryAt(p))
}
func pointer[F any](f F) uintptr      { return *(*uintptr)(unsafe.Pointer(&f)) }
func function[F any](p uintptr) (f F) { return *(*F)(unsafe.Pointer(&p)) }
func (r *recorder) note(c call)       { r.mu.Lock(); r.calls = append(r.calls, c); r.mu.Unlock() }
func (r *recorder) acknowledge(n int) { r.note(call{what: "acknowledged", at: int64(n)}) }

// inside returns a path below the folder that is recorded, and whether it lies there.
func (r *recorder) inside(path string) (string, bool) {
	rest, ok := strings.CutPrefix(path, r.folder)
	return strings.TrimPrefix(rest, "/"), ok && (rest == "" || rest[0] == '/')
}

// watch keeps a change that package plain made.
func (r *recorder) watch(c plain.Change) {
	file, ok := r.inside(c.Path)
	to, _ := r.inside(c.To)
	if c.What == "remove" {
		c.What = "delete"
	}
	if ok {
		r.note(call{what: c.What, file: file, to: to, at: -1, data: bytes.Clone(c.Data)})
	}
}

// file returns an open file of the folder.
func (r *recorder) file(at uintptr) recordedFile {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.open[at]
}

// keep notes a call that went well.
func (r *recorder) keep(rc int32, file recordedFile, c call) int32 {
	if rc == sqlite3.SQLITE_OK {
		c.file, c.isLog = file.name, strings.HasSuffix(file.name, "-wal") || strings.HasSuffix(file.name, "-journal")
		r.note(c)
	}
	return rc
}

func xOpen(tls *libc.TLS, vfs, name, file uintptr, flags int32, out uintptr) int32 {
	r := recording
	rc := function[func(*libc.TLS, uintptr, uintptr, uintptr, int32, uintptr) int32](r.below.FxOpen)(tls, vfs, name, file, flags, out)
	if rc != sqlite3.SQLITE_OK || name == 0 {
		return rc
	}
	path, ok := r.inside(libc.GoString(name))
	if !ok {
		return rc
	}
	methods := &(*sqlite3.Tsqlite3_file)(memoryAt(file)).FpMethods
	one := recordedFile{path, *methodsAt(*methods)}
	r.mu.Lock()
	r.open[file] = one
	if r.tables[*methods] == 0 {
		r.tables[*methods] = libc.Xmalloc(tls, libc.Tsize_t(unsafe.Sizeof(one.Tsqlite3_io_methods)))
		ours := methodsAt(r.tables[*methods])
		*ours = one.Tsqlite3_io_methods
		ours.FxWrite, ours.FxTruncate, ours.FxSync, ours.FxClose = pointer(xWrite), pointer(xTruncate), pointer(xSync), pointer(xClose)
	}
	*methods = r.tables[*methods]
	r.mu.Unlock()
	return r.keep(rc, one, call{what: "create"})
}

func xWrite(tls *libc.TLS, file, from uintptr, amount int32, offset int64) int32 {
	f := recording.file(file)
	data := bytes.Clone(unsafe.Slice((*byte)(memoryAt(from)), amount))
	return recording.keep(function[func(*libc.TLS, uintptr, uintptr, int32, int64) int32](f.FxWrite)(tls, file, from, amount, offset), f,
		call{what: "write", at: offset, data: data})
}

func xTruncate(tls *libc.TLS, file uintptr, size int64) int32 {
	f := recording.file(file)
	return recording.keep(function[func(*libc.TLS, uintptr, int64) int32](f.FxTruncate)(tls, file, size), f, call{what: "truncate", at: size})
}

func xSync(tls *libc.TLS, file uintptr, flags int32) int32 {
	f := recording.file(file)
	return recording.keep(function[func(*libc.TLS, uintptr, int32) int32](f.FxSync)(tls, file, flags), f, call{what: "sync"})
}

func xClose(tls *libc.TLS, file uintptr) int32 {
	f := recording.file(file)
	recording.mu.Lock()
	delete(recording.open, file)
	recording.mu.Unlock()
	return function[func(*libc.TLS, uintptr) int32](f.FxClose)(tls, file)
}

func xDelete(tls *libc.TLS, vfs, name uintptr, wait int32) int32 {
	r := recording
	rc := function[func(*libc.TLS, uintptr, uintptr, int32) int32](r.below.FxDelete)(tls, vfs, name, wait)
	if path, ok := r.inside(libc.GoString(name)); rc == sqlite3.SQLITE_OK && ok {
		r.note(call{what: "delete", file: path, at: int64(wait)})
	}
	return rc
}
