package csvfile

import (
	"maps"
	"slices"
	"strconv"

	"walkline/store/grid"
	"walkline/store/table"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// record is one comparable in plain notation, as gocsv writes it.
type record struct {
	ID        string `csv:"id"`
	Price     string `csv:"price"`
	Kind      string `csv:"kind"`
	Date      string `csv:"date"`
	ModelYear string `csv:"model_year"`
	Make      string `csv:"make"`
	Model     string `csv:"model"`
	Trim      string `csv:"trim"`
	Mileage   string `csv:"mileage"`
	Unit      string `csv:"mileage_unit"`
	Title     string `csv:"title"`
	Distance  string `csv:"distance"`
	Condition string `csv:"upkeep"`
	Note      string `csv:"note"`
	Source    string `csv:"source"`
	Excluded  string `csv:"excluded"`
}

// Write returns comparables as CSV that [Canonical] reading gives back: a column for each field, then one for each key of the rows' own.
// Prices are major units of c. Cells that a spreadsheet would run are defused.
func Write(rows []resale.Row, c money.Currency) []byte {
	keys := map[string]bool{}
	records := make([]record, len(rows))
	for i, r := range rows {
		records[i] = recordOf(r, c)
		for key := range r.More {
			keys[key] = true
		}
	}
	extra := make([][]string, len(rows)+1)
	for _, key := range slices.Sorted(maps.Keys(keys)) {
		extra[0] = append(extra[0], otherName(key))
		for i, r := range rows {
			extra[i+1] = append(extra[i+1], r.More[key])
		}
	}
	return table.Marshal(records, extra, false)
}

// recordOf returns a comparable in plain notation.
func recordOf(r resale.Row, c money.Currency) record {
	out := record{
		ID: r.ID, Price: c.Text(r.Price), Kind: r.Kind, Date: string(r.Date), Make: r.Make, Model: r.Model, Trim: r.Trim,
		Mileage: text(r.Mileage),
		Unit:    r.Unit, Title: r.Title, Distance: text(r.DistanceMi), Condition: text(r.Condition), Note: r.Note, Source: r.Source,
	}
	if r.ModelYear != 0 {
		out.ModelYear = strconv.Itoa(r.ModelYear)
	}
	if r.Excluded {
		out.Excluded = "yes"
	}
	return out
}

// text returns a number that reads back as the same, nothing for one that is not known. Three decimals get a fourth, so that they are no
// thousand.
func text(x *float64) string {
	if x == nil {
		return ""
	}
	digits := strconv.FormatFloat(*x, 'f', -1, 64)
	if len(digits) > 4 && digits[len(digits)-4] == '.' {
		digits += "0"
	}
	return digits
}

// otherName returns the column's name of a key of a row's own, marked when it would be taken for a field.
func otherName(key string) string {
	r, err := table.Read(Comparables, grid.Grid{Rows: []grid.Row{{Line: 1, Cells: []string{key}}}}, table.Stated{Headings: new(1)})
	if err != nil || r.Columns[0].Field != table.Other {
		return table.OtherPrefix + key
	}
	return key
}
