package store

import (
	"bytes"
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"os"
	"walkline/store/plain"
)

// journalHead is how a rollback journal begins that SQLite would write back into the file beside it. Source: SQLite, "Database File
// Format", section 3.
var journalHead = []byte{0xd9, 0xd5, 0x05, 0xf9, 0x20, 0xa1, 0x63, 0xd7}

// journalOf returns where SQLite looks for a rollback journal.
func journalOf(path string) string { return path + "-journal" }

// journalled refuses a rollback journal beside the file at path. A store leaves none once it holds anything, for it keeps a write-ahead
// file, but where turning a backup into one that does was cut off. That of another file would write its pages into this one. Errors:
// [ErrLog].
func journalled(path string) error {
	main, err := os.Stat(path)
	if err != nil || main.Size() <= 4096 { // a first start that was cut off
		return nil
	}
	head, err := plain.Head(journalOf(path), len(journalHead))
	if err != nil || !bytes.Equal(head, journalHead) || turning(path, main.Size()) {
		return nil
	}
	return fmt.Errorf("%w: %s belongs to another file, and would overwrite parts of this one", ErrLog, journalOf(path))
}

// marksOfMode are the bytes of a file's first page that change when it is turned into one with a write-ahead file: from and behind each.
// Source: as above, section 1.3.
var marksOfMode = [][2]int{{18, 20}, {24, 28}, {92, 100}}

// turning reports whether the journal beside a file holds its first page alone, as it is but for those marks: taking that back is harmless.
func turning(path string, size int64) bool {
	head, err := plain.Head(journalOf(path), 28)
	if err != nil || len(head) < 28 {
		return false
	}
	sector, page := int(binary.BigEndian.Uint32(head[20:])), int(binary.BigEndian.Uint32(head[24:]))
	info, err := os.Stat(journalOf(path))
	if err != nil || sector < 28 || page < 512 || page > 1<<16 || info.Size() != int64(sector+4+page+4) {
		return false
	}
	whole, err1 := plain.Head(journalOf(path), sector+4+page)
	first, err2 := plain.Head(path, page)
	if err1 != nil || err2 != nil || len(whole) != sector+4+page || len(first) != page {
		return false
	}
	kept := whole[sector+4:]
	for _, at := range marksOfMode {
		copy(kept[at[0]:at[1]], first[at[0]:at[1]])
	}
	pages := int64(binary.BigEndian.Uint32(head[16:])) // that the file had, and would be cut to
	return binary.BigEndian.Uint32(whole[sector:]) == 1 && pages*int64(page) == size && bytes.Equal(kept, first)
}

// takenBack lets SQLite take back, beside a file, the journal of turning it into one with a log, which who only reads can't.
func takenBack(ctx context.Context, path string) error {
	if info, err := os.Stat(path); err != nil || !turning(path, info.Size()) {
		return nil
	}
	db, err := reading.open(ctx, path)
	if err != nil {
		return err
	}
	_, err = column(ctx, db, `SELECT count(*) FROM sqlite_schema`)
	return errors.Join(err, db.Close())
}
