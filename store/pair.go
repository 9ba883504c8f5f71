package store

import (
	"bytes"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strings"
	"time"

	"walkline/store/plain"
	"walkline/store/wal"
)

// Every transaction leaves a new mark in the one row of the table pairing, and the mark before it. So the write-ahead file holds a
// chain of marks, and the main file holds one of that chain, wherever a checkpoint was cut off. A main file with any other mark is
// not the one that the write-ahead file was written over.

// errCut says that a log is damaged somewhere, and the main file stands before its first edit: those before the damage can be read.
var errCut = errors.New("is damaged: not all edits that it held can be read")

// markWord stands before the two marks: what a page is searched for.
const markWord = "walkline-pair "

// logOf returns where SQLite keeps the write-ahead file of a database, and indexOf its index.
func logOf(path string) string   { return path + "-wal" }
func indexOf(path string) string { return path + "-shm" }

// paired runs f and, if it changed anything, leaves the next mark.
func paired(p place, f func(tx *sql.Tx) error) error {
	var before int64
	if err := p.row(`SELECT total_changes()`).Scan(&before); err != nil {
		return err
	}
	if err := f(p.tx); err != nil {
		return err
	}
	return p.exec(`UPDATE pairing SET mark = '`+markWord+`' || substr(mark, -32) || ' ' || lower(hex(randomblob(16)))
		WHERE total_changes() > ?`, before)
}

// pair checks that the write-ahead file beside the file at path, if there is one, goes with it, and returns what there is to say.
// Errors: [ErrLog]; the folder cannot be read. Nothing is changed.
func pair(ctx context.Context, path string) (said []string, err error) {
	for try := range 4 { // another window may be writing both just now
		if try > 0 {
			time.Sleep(50 * time.Millisecond)
		}
		if said, err = pairNow(ctx, path); !errors.Is(err, ErrLog) {
			break
		}
	}
	return said, err
}

func pairNow(ctx context.Context, path string) ([]string, error) {
	info, err := os.Lstat(logOf(path))
	if errors.Is(err, fs.ErrNotExist) || err == nil && info.Size() == 0 {
		return nil, nil
	}
	if err != nil || !info.Mode().IsRegular() {
		return nil, fmt.Errorf("%w: %s is no plain file", ErrLog, logOf(path))
	}
	if main, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) || err == nil && main.Size() == 0 {
		return nil, fmt.Errorf("%w: %s holds edits, but the file that they belong to is not there: put that back beside it", ErrLog, logOf(path))
	}
	log, page, chain, err := chained(path, pairingPage(ctx, path))
	if err != nil {
		return nil, err
	}
	mark, err := marked(path, page, log.PageSize)
	switch {
	case err != nil:
		return nil, err
	case len(chain) > 0 && !slices.Contains(chain, mark):
		return nil, fmt.Errorf("%w: %s holds edits of another file: one of the two was moved or copied without the other", ErrLog, logOf(path))
	case log.Damaged() && len(chain) > 0 && chain[0] == mark:
		return nil, fmt.Errorf("%w: %w", ErrLog, fmt.Errorf("%s %w", logOf(path), errCut))
	case log.Damaged():
		return nil, fmt.Errorf("%w: %s is damaged: edits that it held can't be read", ErrLog, logOf(path))
	case log.Torn:
		return []string{"The last step before the program stopped was not whole; it is left out."}, nil
	}
	return nil, nil
}

// unmarked is the mark before the first: the main file has no mark until its format came to be.
var unmarked = strings.Repeat("0", 32)

// pairingPage returns the page of the main file that holds the mark, 0 where the file says nothing of it: it has none, or a checkpoint was
// cut off in the middle of its pages.
func pairingPage(ctx context.Context, path string) (page uint32) {
	db, err := still.open(ctx, path)
	if err != nil {
		return 0
	}
	defer db.Close()
	if db.QueryRowContext(ctx, `SELECT rootpage FROM sqlite_schema WHERE name = 'pairing'`).Scan(&page) != nil {
		return 0
	}
	return page
}

// marked returns the mark on a page of the main file, [unmarked] where there is none. It is read past SQLite, which reads no file alone
// whose checkpoint was cut off.
func marked(path string, page uint32, size int) (string, error) {
	f, err := os.Open(path)
	if err != nil {
		return "", err
	}
	defer f.Close()
	data := make([]byte, size)
	if n, err := f.ReadAt(data, (int64(page)-1)*int64(size)); page == 0 || n < size {
		if errors.Is(err, io.EOF) || page == 0 {
			err = nil
		}
		return unmarked, err
	}
	if _, after, ok := marksOn(data); ok {
		return after, nil
	}
	return unmarked, nil
}

// marksOn returns the mark on a page and the one before it.
func marksOn(page []byte) (before, after string, ok bool) {
	at := bytes.Index(page, []byte(markWord))
	if at < 0 || at+len(markWord)+65 > len(page) {
		return "", "", false
	}
	marks := string(page[at+len(markWord):][:65])
	return marks[:32], marks[33:], true
}

// chained returns what the write-ahead file holds, and the marks on a page that its commits leave, with the one before them. Of page 0 it
// is the first that holds a mark.
func chained(path string, page uint32) (log wal.Log, of uint32, chain []string, err error) {
	f, err := os.Open(logOf(path))
	if err != nil {
		return log, page, nil, err
	}
	defer f.Close()
	log, err = wal.Scan(f, func(n uint32, data []byte) {
		before, after, ok := marksOn(data)
		if page != 0 && n != page || !ok {
			return
		}
		if page = n; len(chain) == 0 {
			chain = append(chain, before)
		}
		chain = append(chain, after)
	})
	return log, page, chain, err
}

// KeepLogAside renames the write-ahead file beside the file at path, or the journal there that [Open] refuses, so that the file opens
// without the edits in it, and returns its new name. Renamed back beside the file that it goes with, it is whole again.
// Errors: the folder cannot be written.
func KeepLogAside(path string, now time.Time) (string, error) {
	from := logOf(path)
	if journalled(path) != nil {
		from = journalOf(path)
	}
	doing, to := "keeping "+from+" aside", freeName(fmt.Sprintf("%s.aside-%s", from, stampOf(now)))
	if err := plain.Rename(from, to); err != nil {
		return "", wrapped(doing, err)
	}
	if from == logOf(path) {
		return to, wrapped(doing, plain.Remove(indexOf(path))) // which SQLite makes anew
	}
	return to, nil
}

// Said returns what the user should hear of how the file was found, sentence by sentence.
func (s *Store) Said() []string { return s.said }
