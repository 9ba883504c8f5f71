package table

import (
	"bytes"
	"encoding/csv"
	"slices"
	"strconv"
	"strings"

	"github.com/gocarina/gocsv"

	"walkline/store/grid"
)

// refusedPrefix starts the columns that say why a row was refused; they are not read again.
const refusedPrefix = "refused: "

// Added returns how many of the last columns are those that [WriteRefused] has added.
func Added(header []string) int {
	n := 0
	for n < len(header) && strings.HasPrefix(header[len(header)-1-n], refusedPrefix) {
		n++
	}
	return n
}

// refusal is why a row was refused, as the columns after its own.
type refusal struct {
	Line   string `csv:"refused: line"`
	Column string `csv:"refused: column"`
	Value  string `csv:"refused: value"`
	Reason string `csv:"refused: reason"`
}

// WriteRefused returns the refused rows of a table as CSV: their cells as they were, and why they were refused. Set right, the file can
// be read again as the first was.
func WriteRefused(header []string, refused []Refused) []byte {
	refusals := make([]refusal, len(refused))
	extra := [][]string{own(header, header)}
	for i, r := range refused {
		var columns, values, reasons []string
		for _, f := range r.Faults {
			columns, values, reasons = append(columns, f.Column), append(values, f.Value), append(reasons, f.Reason)
		}
		refusals[i] = refusal{strconv.Itoa(r.Line), strings.Join(columns, "; "), strings.Join(values, "; "), strings.Join(reasons, "; ")}
		extra = append(extra, own(header, padded(r.Cells, len(header))))
	}
	return Marshal(refusals, extra)
}

// own returns the cells of the columns that an earlier [WriteRefused] did not add.
func own(header, cells []string) []string {
	var kept []string
	for i, name := range header {
		if !strings.HasPrefix(name, refusedPrefix) {
			kept = append(kept, cells[i])
		}
	}
	return kept
}

// padded returns the cells of a row that may lack some. Cells beyond the header stand in the last one, parted by spaces, so that none is
// lost.
func padded(cells []string, n int) []string {
	row := make([]string, n)
	copy(row, cells)
	if len(cells) > n && n > 0 {
		row[n-1] = strings.Join(cells[n-1:], " ")
	}
	return row
}

// byteOrderMark tells spreadsheet programs that the file is UTF-8; package grid takes it off.
const byteOrderMark = "\uFEFF"

// Marshal writes a slice of structs with csv tags as CSV, each row after cells of its own (the header's first), where there are any.
// Cells that a spreadsheet would run are defused.
func Marshal(structs any, before [][]string) []byte {
	var out bytes.Buffer
	out.WriteString(byteOrderMark)
	w := &writer{Writer: csv.NewWriter(&out), before: before}
	if err := gocsv.MarshalCSV(structs, w); err != nil {
		panic(err) // a buffer takes every byte and the structs are plain: an error is a bug
	}
	return out.Bytes()
}

// writer takes rows from gocsv, adds the cells that no struct holds, and defuses all of them.
type writer struct {
	*csv.Writer
	before [][]string
	row    int
}

// Write writes one row.
func (w *writer) Write(cells []string) error {
	all := cells
	if w.row < len(w.before) {
		all = slices.Concat(w.before[w.row], cells)
	}
	w.row++
	for i, c := range all {
		all[i] = grid.Defused(c)
	}
	return w.Writer.Write(all)
}
