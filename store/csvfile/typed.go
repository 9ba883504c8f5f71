package csvfile

import (
	"fmt"
	"maps"

	"walkline/store/cell"
	"walkline/store/grid"
	"walkline/store/table"
	"walkline/valuation/lot"
	"walkline/valuation/resale"
)

// TypedFields are the fields of a comparable that can be typed, in their order.
var TypedFields = []string{"price", "kind", "date", "model_year", "make", "model", "trim", "mileage", "unit", "title", "distance",
	"upkeep", "note"}

// Typed returns a row with what was typed in its fields, each cell read as one of a table is; what they leave open is read with "." before
// decimals, and miles. What the row says beside stays. Errors: the first cell that can't be read, with its field.
func Typed(old resale.Row, cells map[string]string, currency string, on lot.Date) (resale.Row, error) {
	head, body := grid.Row{Line: 1}, grid.Row{Line: 2}
	for _, field := range TypedFields {
		head.Cells, body.Cells = append(head.Cells, field), append(body.Cells, cells[field])
	}
	line, unit := 1, cell.UnitOf(cells["unit"])
	if unit == "" {
		unit = "mi"
	}
	res, err := table.Read(Comparables, grid.Grid{Rows: []grid.Row{head, body}}, table.Stated{Headings: &line, Match: TypedFields,
		Decimal: ".", Unit: unit, Distance: "mi", Kind: "asked", Currency: currency, On: on})
	switch {
	case err != nil:
		return old, err
	case len(res.Refused) > 0:
		return old, fmt.Errorf("%s", res.Refused[0].Faults[0])
	case len(res.Open) > 0:
		return old, fmt.Errorf("%s", res.Open[0].Text)
	case len(res.Rows) == 0:
		return old, fmt.Errorf("no price: a comparable needs one")
	}
	r := Rows(res)[0]
	r.ID, r.Source, r.More, r.Excluded, r.Shelf = old.ID, old.Source, maps.Clone(old.More), old.Excluded, old.Shelf
	return r, nil
}
