package csvfile

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode"
)

// How much one file may hold. Starter values, ours: far above any list that a person keeps.
const (
	MaxBytes   = 64 << 20
	MaxRows    = 100_000
	MaxColumns = 500
)

// Reading is what the user states about the bytes; the zero value leaves all to the file.
type Reading struct {
	Encoding  string // [Windows1252] for an 8-bit file; empty: UTF-8 or UTF-16, as the file shows
	Delimiter rune   // one of , ; tab |; 0: comma, semicolon or tab, as the file shows
}

// Table is a file as rows of cells.
type Table struct {
	Header    []string // names of the columns, none empty, no two the same
	Records   []Record
	Blank     int // rows of empty cells, not counted among the records
	Delimiter rune
	Encoding  string
}

// Record is one row of the file.
type Record struct {
	Line  int      // where it starts, the first line being 1
	Cells []string // as many as the header has, unless Fault says otherwise
	Fault string   // why it is no row; empty: it is one
}

// Read returns the table that the bytes of a file hold. Rows that are broken in themselves are returned with their fault.
// Errors: [ErrEmpty], [ErrTooLarge], [ErrWorkbook], [ErrBinary], [ErrEncoding], [ErrDelimiter], [ErrHeader], [ErrNoRows], [ErrQuote].
func Read(data []byte, stated Reading) (Table, error) {
	if len(data) > MaxBytes {
		return Table{}, fmt.Errorf("%w: %d MB, and %d MB is the most that is read: split it", ErrTooLarge, len(data)>>20, MaxBytes>>20)
	}
	text, encoding, err := decoded(data, stated.Encoding)
	if err != nil {
		return Table{}, err
	}
	if bytes.IndexByte(text, '\n') < 0 {
		text = bytes.ReplaceAll(text, []byte("\r"), []byte("\n")) // line ends of old spreadsheets
	}
	text, named, skipped := separatorLine(text)
	t := Table{Encoding: encoding, Delimiter: stated.Delimiter}
	if t.Delimiter == 0 {
		t.Delimiter = named
	}
	if t.Delimiter == 0 {
		t.Delimiter = detected(text)
	}
	if _, err := reader(text, ',').Read(); t.Delimiter == 0 && err != nil {
		return t, errNames
	}
	if !strings.ContainsRune(",;\t|", t.Delimiter) {
		return t, ErrDelimiter
	}
	return t, t.fill(text, skipped)
}

var errNames = fmt.Errorf("%w: its quotes are broken", ErrHeader)

// separatorLine takes a first line like "sep=;" off, which some spreadsheet programs write, and returns the delimiter
// that it names and how many lines went.
func separatorLine(text []byte) ([]byte, rune, int) {
	line, rest, _ := bytes.Cut(text, []byte("\n"))
	line = bytes.ToLower(bytes.TrimRight(line, "\r"))
	if name, ok := bytes.CutPrefix(line, []byte("sep=")); ok && len(name) == 1 && bytes.ContainsAny(name, ",;\t") {
		return rest, rune(name[0]), 1
	}
	return text, 0, 0
}

// reader returns a strict reader of text. Spaces before a quote are allowed, save where they part the columns.
func reader(text []byte, delimiter rune) *csv.Reader {
	r := csv.NewReader(bytes.NewReader(text))
	r.Comma, r.FieldsPerRecord, r.TrimLeadingSpace = delimiter, -1, delimiter != '\t'
	return r
}

// sampled is how many rows are looked at to tell the delimiter.
const sampled = 50

// detected returns the delimiter that parts the most rows into as many cells as the first, 0 when none parts the first.
// Of equals, the one that makes more cells wins.
func detected(text []byte) rune {
	var best rune
	bestFit, bestCells := 0.0, 1
	for _, delimiter := range []rune{',', ';', '\t'} {
		fit, cells := fitOf(text, delimiter)
		if cells > 1 && (fit > bestFit || fit == bestFit && cells > bestCells) {
			best, bestFit, bestCells = delimiter, fit, cells
		}
	}
	return best
}

// fitOf returns the share of the first rows that have as many cells as the very first, and that number.
func fitOf(text []byte, delimiter rune) (fit float64, cells int) {
	r := reader(text, delimiter)
	rows, fitting := 0, 0
	for rows < sampled {
		row, err := r.Read()
		if err == io.EOF {
			break
		}
		if rows++; rows == 1 {
			cells = len(row)
		}
		if err == nil && len(row) == cells {
			fitting++
		}
	}
	return float64(fitting) / float64(max(rows, 1)), cells
}

// fill reads the header and the records; skipped is how many lines were taken off before.
func (t *Table) fill(text []byte, skipped int) error {
	r := reader(text, t.Delimiter)
	names, err := r.Read()
	if err != nil {
		return errNames
	}
	if t.Header, err = headerOf(names); err != nil {
		return err
	}
	for start := r.InputOffset(); ; start = r.InputOffset() {
		cells, err := r.Read()
		if err == io.EOF {
			break
		}
		if len(t.Records) == MaxRows {
			return fmt.Errorf("%w: more than %d rows: split it", ErrTooLarge, MaxRows)
		}
		end := r.InputOffset()
		f := found{cells: cells, err: err, raw: text[start:end], last: int(end) == len(text), skipped: skipped}
		if err == nil {
			f.line, _ = r.FieldPos(0)
		}
		record, err := t.record(f)
		if err != nil {
			return err
		}
		t.add(record)
	}
	if len(t.Records) == 0 {
		return ErrNoRows
	}
	return nil
}

// found is what the reader made of one row.
type found struct {
	cells   []string
	line    int
	err     error
	raw     []byte // the row as it stands in the file
	last    bool   // nothing comes after it
	skipped int    // lines taken off the file before
}

// record returns a row that was found. Errors: a quote that is never closed has swallowed the rest of the file.
func (t *Table) record(f found) (Record, error) {
	var broken *csv.ParseError
	if errors.As(f.err, &broken) {
		if errors.Is(f.err, csv.ErrQuote) && f.last && bytes.Count(f.raw, []byte(`"`))%2 == 1 {
			return Record{}, fmt.Errorf("%w: it starts in the row of line %d", ErrQuote, broken.StartLine+f.skipped)
		}
		fault := "a quote stands where none can: put the whole cell in quotes and double those inside it"
		if broken.Line > broken.StartLine {
			fault += fmt.Sprintf(" (it took the lines up to %d into this row)", broken.Line+f.skipped)
		}
		return Record{Line: broken.StartLine + f.skipped, Cells: []string{strings.Trim(string(f.raw), "\r\n")}, Fault: fault}, nil
	}
	cells := f.cells
	for i, cell := range cells {
		cells[i] = undefused(strings.TrimSpace(cell))
	}
	for len(cells) > len(t.Header) && cells[len(cells)-1] == "" {
		cells = cells[:len(cells)-1]
	}
	record := Record{Line: f.line + f.skipped, Cells: cells}
	if len(cells) != len(t.Header) {
		record.Fault = fmt.Sprintf("the row has %d cells and the header %d", len(cells), len(t.Header))
	}
	return record, nil
}

// add keeps a record unless all its cells are empty.
func (t *Table) add(record Record) {
	if strings.Join(record.Cells, "") == "" {
		t.Blank++
		return
	}
	t.Records = append(t.Records, record)
}

// headerOf returns the names of the columns, made whole: an empty one is called by its place, a second one of a name by
// its count.
func headerOf(names []string) ([]string, error) {
	if len(names) > MaxColumns {
		return nil, fmt.Errorf("%w: more than %d columns", ErrTooLarge, MaxColumns)
	}
	if !strings.ContainsFunc(strings.Join(names, ""), unicode.IsLetter) {
		return nil, ErrHeader
	}
	seen := map[string]bool{}
	header := make([]string, len(names))
	for i, name := range names {
		name = strings.Join(strings.Fields(undefused(strings.TrimSpace(name))), " ")
		if name == "" {
			name = fmt.Sprintf("column %d", i+1)
		}
		unique := name
		for n := 2; seen[unique]; n++ {
			unique = fmt.Sprintf("%s (%d)", name, n)
		}
		seen[unique] = true
		header[i] = unique
	}
	return header, nil
}
