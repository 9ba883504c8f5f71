package wire

import (
	"slices"
	"strings"

	"walkline/store/csvfile"
	"walkline/ui/desk"
	"walkline/valuation/resale"
)

// Importer is the CSV reader as the desk sees it.
type Importer struct{}

var _ desk.Importer = Importer{}

// sampleRows is how many rows of a table are shown before it is imported.
const sampleRows = 6

// Open returns the table with the match and the notation that it suggests.
func (Importer) Open(data []byte, currency string) (desk.Sheet, error) {
	table, err := csvfile.Read(data, csvfile.Reading{})
	if err != nil {
		return desk.Sheet{}, err
	}
	if err := csvfile.OtherCurrency(table, currency); err != nil {
		return desk.Sheet{}, err
	}
	match := csvfile.Propose(table.Header)
	given, err := csvfile.StatedCurrency(table)
	if err != nil {
		return desk.Sheet{}, err
	}
	options, doubts := csvfile.ProposeOptions(table, match, csvfile.Options{Currency: given})
	s := desk.Sheet{Data: data, Header: table.Header, Added: csvfile.Added(table.Header), Rows: len(table.Records)}
	for _, r := range table.Records[:min(sampleRows, len(table.Records))] {
		s.Sample = append(s.Sample, r.Cells)
	}
	for _, f := range append(slices.Clone(csvfile.Fields), csvfile.Other, csvfile.Ignored) {
		s.Fields = append(s.Fields, string(f))
	}
	for _, d := range doubts {
		if d.Option == "currency" {
			options.Currency = currency
			d.Text = "No column says the currency; the prices are read as " + currency + "."
		}
		s.Doubts = append(s.Doubts, desk.Doubt{Option: d.Option, Text: d.Text})
	}
	s.Stated = stated(match, options)
	return s, nil
}

func stated(m csvfile.Match, o csvfile.Options) desk.Stated {
	s := desk.Stated{Marks: o.Marks.String(), Dates: string(o.Dates), Unit: o.Unit, Distance: o.DistanceUnit, Kind: o.Kind, Currency: o.Currency}
	for _, c := range m {
		s.Match = append(s.Match, string(c.Field))
	}
	return s
}

// read parses a sheet as it is stated.
func read(s desk.Sheet) (csvfile.Table, csvfile.Result, error) {
	table, err := csvfile.Read(s.Data, csvfile.Reading{})
	if err != nil {
		return table, csvfile.Result{}, err
	}
	match := make(csvfile.Match, len(s.Header))
	for i, name := range s.Header {
		match[i] = csvfile.Column{Name: name, Field: csvfile.Field(s.Stated.Match[i])}
	}
	result, err := csvfile.Parse(table, match, csvfile.Options{Marks: marks(s.Stated.Marks), Dates: csvfile.Order(s.Stated.Dates),
		Unit: s.Stated.Unit, DistanceUnit: s.Stated.Distance, Currency: s.Stated.Currency, Kind: s.Stated.Kind})
	return table, result, err
}

// marks reads the marks off an example number such as 1,234.50.
func marks(example string) csvfile.Marks {
	m := csvfile.Marks{Decimal: "."}
	if n := len(example); n > 3 {
		m.Decimal = example[n-3 : n-2]
		m.Thousands = strings.Trim(example[:n-3], "0123456789")
	}
	return m
}

// Read returns the rows of a sheet and every refused one.
func (Importer) Read(s desk.Sheet) ([]resale.Row, []desk.Refusal, error) {
	_, result, err := read(s)
	return result.Rows, refusals(result.Refused), err
}

// refusals puts the reasons of each refused row into one line.
func refusals(list []csvfile.Refused) []desk.Refusal {
	var refused []desk.Refusal
	for _, r := range list {
		var reasons []string
		for _, f := range r.Faults {
			reasons = append(reasons, f.String())
		}
		refused = append(refused, desk.Refusal{Line: r.Line, Reason: strings.Join(reasons, "; ")})
	}
	return refused
}

// Merge adds incoming rows to those there are.
func (Importer) Merge(existing, incoming []resale.Row) ([]resale.Row, desk.Counts) {
	m := csvfile.Merge(existing, incoming)
	return m.Rows, desk.Counts{New: m.New, Same: m.Same, Changed: m.Changed}
}

// Refused writes the refused rows of a sheet as CSV.
func (Importer) Refused(s desk.Sheet) ([]byte, error) {
	table, result, err := read(s)
	if err != nil {
		return nil, err
	}
	return csvfile.WriteRefused(table, result.Refused), nil
}
