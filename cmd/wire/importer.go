package wire

import (
	"walkline/store/csvfile"
	"walkline/store/table"
	"walkline/ui/desk"
	"walkline/valuation/resale"
)

// Importer reads tables of comparables for the desk.
type Importer struct{}

var _ desk.Importer = Importer{}

var comparableFields = []string{"price", "kind", "date", "model_year", "make", "model", "trim", "mileage", "unit", "title", "distance",
	"note"}

func comparables() sheets[csvfile.Comparable] {
	return sheets[csvfile.Comparable]{kind: func() *table.Kind[csvfile.Comparable] { return csvfile.Comparables },
		first: printed(csvfile.Comparables, comparableFields), shown: comparableFields, used: comparablesUsed, odd: ofNoYear}
}

// Open returns the table with the match and the notation that it suggests.
func (Importer) Open(data []byte, o desk.Opening) (desk.Sheet, error) {
	return comparables().open(data, o)
}

// Reopen returns the table of the same file, read as it is now stated.
func (Importer) Reopen(s desk.Sheet, o desk.Opening) (desk.Sheet, error) {
	return comparables().reopen(s, o)
}

// Read returns the rows of a sheet and every refused one.
func (Importer) Read(s desk.Sheet) ([]resale.Row, []desk.Refusal, error) {
	res, err := comparables().taken(s)
	return csvfile.Rows(res), refusals(res.Refused), err
}

// Preview returns what a sheet gives as it is stated.
func (Importer) Preview(s desk.Sheet) (desk.Preview, error) { return comparables().preview(s) }

// Merge adds incoming rows to those there are.
func (Importer) Merge(existing, incoming []resale.Row) ([]resale.Row, desk.Counts) {
	m := csvfile.Merge(existing, incoming)
	return m.Rows, desk.Counts{New: m.New, Same: m.Same, Changed: m.Changed}
}

// Typed returns a row with what was typed in its fields.
func (Importer) Typed(old resale.Row, cells map[string]string, currency string) (resale.Row, error) {
	return csvfile.Typed(old, cells, currency, today())
}

// Refused writes the refused rows of a sheet as CSV.
func (Importer) Refused(s desk.Sheet) ([]byte, error) { return comparables().refused(s) }
