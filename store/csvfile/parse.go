package csvfile

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"github.com/gocarina/gocsv"

	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// Result is what a table holds: Read = len(Rows) + len(Refused).
type Result struct {
	Read    int
	Rows    []resale.Row
	Lines   []int // of the file, one for each of Rows
	Refused []Refused
	Blank   int
	Others  []string // columns kept under their own names
	Absent  []Field  // fields that no column has
}

// Refused is a row that was not taken, with every reason.
type Refused struct {
	Line   int
	Faults []Fault
	Cells  []string // as in the file
}

// Fault is one bad cell. Column is empty when the row as a whole is bad.
type Fault struct {
	Column, Value, Reason string
}

// String returns the fault as a sentence part: `price "12,5O": not a number ...`.
func (f Fault) String() string {
	if f.Column == "" {
		return f.Reason
	}
	return fmt.Sprintf("%s %q: %s", f.Column, f.Value, f.Reason)
}

// Parse returns the comparables of a table, prices in minor units of the currency in o, and the rows that it refuses.
// Errors: the match or the options don't fit together; no row is looked at then.
func Parse(t Table, m Match, o Options) (Result, error) {
	if err := m.check(t.Header); err != nil {
		return Result{}, err
	}
	currency, err := o.check()
	if err != nil {
		return Result{}, err
	}
	p := parser{table: t, match: m, options: o, currency: currency, seen: map[string]int{}}
	drafts := make([]draft, len(t.Records))
	for i, r := range t.Records {
		drafts[i] = p.draft(r)
	}
	records, err := mapped(drafts, m)
	if err != nil {
		return Result{}, err
	}
	res := Result{Read: len(drafts), Blank: t.Blank, Others: m.Others(), Absent: m.Absent()}
	for i, d := range drafts {
		row, faults := p.row(d, records[i])
		if len(faults) > 0 {
			res.Refused = append(res.Refused, Refused{d.source.Line, faults, d.source.Cells})
			continue
		}
		res.Rows = append(res.Rows, row)
		res.Lines = append(res.Lines, d.source.Line)
	}
	return res, nil
}

// parser holds what every row needs.
type parser struct {
	table    Table
	match    Match
	options  Options
	currency money.Currency
	seen     map[string]int // how often each id came so far
}

// draft is a row in plain notation: the cell of each of [Fields] in order.
type draft struct {
	source Record
	cells  []string
	faults []Fault
}

// draft undoes the notation of a row.
func (p parser) draft(r Record) draft {
	d := draft{source: r, cells: make([]string, len(Fields))}
	if r.Fault != "" {
		d.faults = []Fault{{Reason: r.Fault}}
		return d
	}
	for i, field := range Fields {
		at := p.match.at(field)
		if at < 0 || r.Cells[at] == "" {
			continue
		}
		plain, err := p.options.Plain(field, r.Cells[at])
		if err != nil {
			d.fault(p.match[at].Name, r.Cells[at], err.Error())
			continue
		}
		d.cells[i] = plain
	}
	p.settleUnit(&d)
	return d
}

// settleUnit takes a unit that stands in the mileage cell itself. A unit column that says otherwise makes a fault.
func (p parser) settleUnit(d *draft) {
	at := p.match.at(Mileage)
	if at < 0 {
		return
	}
	_, inCell := WithoutUnit(d.source.Cells[at])
	column := slices.Index(Fields, Unit)
	stated := units[strings.ToLower(d.cells[column])]
	switch {
	case inCell == "":
	case stated != "" && stated != inCell:
		d.fault(p.match[at].Name, d.source.Cells[at], fmt.Sprintf("the unit column says %s", stated))
	default:
		d.cells[column] = inCell
	}
}

// fault notes a bad cell, once for a column.
func (d *draft) fault(column, value, reason string) {
	if !slices.ContainsFunc(d.faults, func(f Fault) bool { return f.Column == column || f.Column == "" }) {
		d.faults = append(d.faults, Fault{column, value, reason})
	}
}

// mapped returns the drafts as records; what a field's type refuses is noted in its draft.
func mapped(drafts []draft, m Match) ([]record, error) {
	var plain bytes.Buffer
	w := csv.NewWriter(&plain)
	header := make([]string, len(Fields))
	for i, field := range Fields {
		header[i] = string(field)
	}
	w.Write(header)
	for _, d := range drafts {
		w.Write(d.cells)
	}
	w.Flush()
	refuse := func(e *csv.ParseError) bool {
		d, field := &drafts[e.Line-2], Fields[e.Column-1] // gocsv counts records from 1, the header first
		column, value := string(field), ""
		if at := m.at(field); at >= 0 && d.source.Fault == "" {
			column, value = m[at].Name, d.source.Cells[at]
		}
		d.fault(column, value, e.Err.Error())
		return true
	}
	var records []record
	err := gocsv.UnmarshalWithErrorHandler(&plain, refuse, &records)
	return records, err
}

// row returns the comparable of a draft, or why there is none.
func (p parser) row(d draft, r record) (resale.Row, []Fault) {
	if len(d.faults) > 0 {
		return resale.Row{}, d.faults
	}
	amount, err := p.currency.Parse(string(r.Price))
	if err != nil {
		at := p.match.at(Price)
		return resale.Row{}, []Fault{{p.match[at].Name, d.source.Cells[at], err.Error()}}
	}
	row := resale.Row{
		ID: p.id(r), Price: amount, Kind: string(r.Kind), Date: lot.Date(r.Date), ModelYear: int(r.ModelYear),
		Make: r.Make, Model: r.Model, Trim: r.Trim, Mileage: r.Mileage.pointer(), Unit: string(r.Unit), Title: string(r.Title),
		DistanceMi: p.miles(r.Distance), Condition: r.Condition.pointer(), Note: r.Note, Source: r.Source,
		More: p.more(d.source), Excluded: bool(r.Excluded),
	}
	if row.Kind == "" {
		row.Kind = p.options.Kind
	}
	if row.Unit == "" && row.Mileage != nil {
		row.Unit = p.options.Unit
	}
	if row.Source == "" {
		row.Source = p.options.Source
	}
	return row, nil
}

// id returns the id of a row as it is kept: with the source of the import before it when the file names none, so that
// two sites' numbers stay apart, and with a count from its second coming in one file on.
func (p parser) id(r record) string {
	if r.ID == "" {
		return ""
	}
	id := r.ID
	if p.options.Source != "" && !p.match.Has(Source) {
		id = p.options.Source + ":" + id
	}
	p.seen[id]++
	if n := p.seen[id]; n > 1 {
		return fmt.Sprintf("%s (%d)", id, n)
	}
	return id
}

// miles returns a distance in miles.
func (p parser) miles(d length) *float64 {
	if d.known && p.options.DistanceUnit == "km" {
		d.value /= lot.KilometresPerMile
	}
	return d.pointer()
}

// more returns the cells of the columns that are no field, by their keys; nil when all are empty.
func (p parser) more(r Record) map[string]string {
	var more map[string]string
	taken := map[string]bool{}
	for i, c := range p.match {
		if c.Field != Other {
			continue
		}
		key := moreKey(c.Name)
		for n := 2; taken[key]; n++ {
			key = fmt.Sprintf("%s_%d", moreKey(c.Name), n)
		}
		taken[key] = true
		if r.Cells[i] == "" {
			continue
		}
		if more == nil {
			more = map[string]string{}
		}
		more[key] = r.Cells[i]
	}
	return more
}

// otherPrefix marks a column that [Write] writes for a key that would be taken for a field.
const otherPrefix = "other: "

// moreKey returns the key of a column: small letters and digits, words joined by "_".
func moreKey(name string) string {
	words := strings.FieldsFunc(strings.ToLower(strings.TrimPrefix(name, otherPrefix)), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r)
	})
	if len(words) == 0 {
		return "column"
	}
	return strings.Join(words, "_")
}
