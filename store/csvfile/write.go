package csvfile

import (
	"bytes"
	"encoding/csv"
	"maps"
	"slices"
	"strconv"
	"strings"

	"github.com/gocarina/gocsv"

	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// byteOrderMark tells spreadsheet programs that the file is UTF-8; [Read] takes it off.
const byteOrderMark = "\uFEFF"

// Write returns comparables as CSV that [Read] and [Parse] with [Canonical] options give back: a column for each field,
// then one for each key of the rows' own. Prices are major units of c. Cells that a spreadsheet would run are defused.
func Write(rows []resale.Row, c money.Currency) []byte {
	keys := map[string]bool{}
	records := make([]record, len(rows))
	for i, r := range rows {
		records[i] = recordOf(r, c)
		for key := range r.More {
			keys[key] = true
		}
	}
	var out bytes.Buffer
	w := newWriter(&out)
	for _, key := range slices.Sorted(maps.Keys(keys)) {
		w.extra[0] = append(w.extra[0], otherName(key))
		for i, r := range rows {
			w.extra[i+1] = append(w.extra[i+1], r.More[key])
		}
	}
	w.marshal(records)
	return out.Bytes()
}

// recordOf returns a comparable in plain notation.
func recordOf(r resale.Row, c money.Currency) record {
	return record{
		ID: r.ID, Price: price(c.Text(r.Price)), Kind: kind(r.Kind), Date: string(r.Date), ModelYear: year(r.ModelYear),
		Make: r.Make, Model: r.Model, Trim: r.Trim, Mileage: length{numberOf(r.Mileage)}, Unit: unit(r.Unit), Title: title(r.Title),
		Distance: length{numberOf(r.DistanceMi)}, Condition: grade{numberOf(r.Condition)}, Note: r.Note, Source: r.Source,
		Excluded: tick(r.Excluded),
	}
}

// otherName returns the column's name of a key of a row's own, marked when it would be taken for a field.
func otherName(key string) string {
	if m := Propose([]string{key}); m[0].Field != Other {
		return otherPrefix + key
	}
	return key
}

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

// WriteRefused returns the refused rows of a table as CSV: their cells as they were, and why they were refused. Set
// right, the file can be read again with the match and options of the first.
func WriteRefused(t Table, refused []Refused) []byte {
	var out bytes.Buffer
	w := newWriter(&out)
	refusals := make([]refusal, len(refused))
	for i, r := range refused {
		refusals[i] = refusalOf(r)
		w.extra[i+1] = own(t.Header, padded(r.Cells, len(t.Header)))
	}
	w.extra[0], w.before = own(t.Header, t.Header), true
	w.marshal(refusals)
	return out.Bytes()
}

func refusalOf(r Refused) refusal {
	var columns, values, reasons []string
	for _, f := range r.Faults {
		columns, values, reasons = append(columns, f.Column), append(values, f.Value), append(reasons, f.Reason)
	}
	return refusal{strconv.Itoa(r.Line), strings.Join(columns, "; "), strings.Join(values, "; "), strings.Join(reasons, "; ")}
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

// padded returns the cells of a row that may lack some. Cells beyond the header stand in the last one, parted by spaces,
// so that none is lost.
func padded(cells []string, n int) []string {
	row := make([]string, n)
	copy(row, cells)
	if len(cells) > n {
		row[n-1] = strings.Join(cells[n-1:], " ")
	}
	return row
}

// writer takes rows from gocsv, adds the cells that no struct holds, and defuses all of them.
type writer struct {
	*csv.Writer
	extra  map[int][]string // of each row, the header being 0
	before bool             // the extra cells come first
	row    int
}

func newWriter(out *bytes.Buffer) *writer {
	out.WriteString(byteOrderMark)
	return &writer{Writer: csv.NewWriter(out), extra: map[int][]string{}}
}

// Write writes one row.
func (w *writer) Write(cells []string) error {
	all := slices.Concat(cells, w.extra[w.row])
	if w.before {
		all = slices.Concat(w.extra[w.row], cells)
	}
	w.row++
	for i, cell := range all {
		all[i] = defused(cell)
	}
	return w.Writer.Write(all)
}

// marshal writes a slice of structs. A buffer takes every byte and the structs are plain, so an error is a bug.
func (w *writer) marshal(structs any) {
	if err := gocsv.MarshalCSV(structs, w); err != nil {
		panic(err)
	}
}
