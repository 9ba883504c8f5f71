package grid

import (
	"bytes"
	"fmt"
)

// How much one table may hold. Starter values, ours: far above any list that a person keeps.
const (
	MaxBytes   = 64 << 20
	MaxRows    = 200_000
	MaxColumns = 500
)

// Options is what the user states about the bytes; the zero value leaves all to them.
type Options struct {
	Encoding  string // one of [Encodings], for an 8-bit file
	Sheet     string // of a workbook; empty: the first
	Delimiter rune   // 0: as the text shows
}

// Grid is a table as rows of cells.
type Grid struct {
	Rows      []Row
	Encoding  string   // of a text
	Delimiter rune     // of a text
	Sheets    []string // of a workbook
}

// Row is one row. One of a text that is blank has no cells.
type Row struct {
	Line  int // where it starts, the first being 1
	Cells []string
	Typed uint64 // a bit for each of the first 64 cells that a workbook holds as a number: its mark is a point
	Fault string // why it is no row; empty: it is one
}

// Number reports whether a workbook holds the cell as a number.
func (r Row) Number(cell int) bool { return cell < 64 && r.Typed>>cell&1 == 1 }

// Read returns the rows that the bytes hold. Rows that are broken in themselves are returned with their fault.
// Errors: [ErrEmpty], [ErrTooLarge], [ErrWorkbook], [ErrBinary], [ErrQuote], [ErrSheet], and [Unsettled] where it can't be told how
// the text is encoded.
func Read(data []byte, o Options) (Grid, error) {
	if len(data) > MaxBytes {
		return Grid{}, fmt.Errorf("%w: %d MB, and %d MB is the most that is read: split it", ErrTooLarge, len(data)>>20, MaxBytes>>20)
	}
	if bytes.HasPrefix(data, []byte("PK\x03\x04")) {
		return workbook(data, o.Sheet)
	}
	text, encoding, err := decoded(data, o.Encoding)
	if err != nil {
		return Grid{}, err
	}
	if bytes.IndexByte(text, '\n') < 0 {
		text = bytes.ReplaceAll(text, []byte("\r"), []byte("\n")) // line ends of old spreadsheets
	}
	text, named, skipped := separatorLine(text)
	g := Grid{Encoding: encoding, Delimiter: o.Delimiter}
	for _, delimiter := range []rune{named, detected(text), '\t'} { // no delimiter: one column
		if g.Delimiter == 0 {
			g.Delimiter = delimiter
		}
	}
	if g.Rows, err = delimited(text, g.Delimiter); err != nil {
		return g, err
	}
	for i := range g.Rows {
		g.Rows[i].Line += skipped
	}
	return g, nil
}

// separatorLine takes a first line like "sep=;" off, which some spreadsheet programs write, and returns the delimiter that it names
// and how many lines went.
func separatorLine(text []byte) ([]byte, rune, int) {
	line, rest, _ := bytes.Cut(text, []byte("\n"))
	line = bytes.ToLower(bytes.TrimRight(line, "\r"))
	if name, ok := bytes.CutPrefix(line, []byte("sep=")); ok && len(name) == 1 && bytes.ContainsAny(name, ",;\t|") {
		return rest, rune(name[0]), 1
	}
	return text, 0, 0
}
