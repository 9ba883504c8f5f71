package csvfile

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"walkline/store/cell"
	"walkline/store/grid"
	"walkline/store/table"
	"walkline/valuation/resale"
)

// Canonical is how the tables are written that a case file names, in a currency.
func Canonical(currency string) table.Stated {
	return table.Stated{Currency: currency, Decimal: ".", Dates: cell.DayFirst, Unit: "mi", Distance: "mi"}
}

// Settle reads a table and answers what it leaves open with the first of the ways, each said as a note. Errors: it is no table, what is
// stated does not fit it, or a question has no way that could be taken so: which column the price is, what a title means, the currency.
func Settle[T any](k *table.Kind[T], data []byte, s table.Stated) (r table.Result[T], notes []string, err error) {
	g, err := grid.Read(data, grid.Options{})
	if err != nil {
		return r, nil, err
	}
	r, answered, err := SettleGrid(k, g, s)
	for _, q := range answered {
		notes = append(notes, q.Text)
	}
	if err == nil && len(r.Open) > 0 {
		q := r.Open[0]
		return r, notes, fmt.Errorf("%s (%q)", q.Text, q.Options)
	}
	return r, notes, err
}

// SettleGrid reads rows of cells and answers what they leave open with the lot's or shop's unit and the system's order of days, else with
// the first of the ways, where one may be taken so. It returns the questions that were answered, each with its answer as the one way and
// in words; those that were not stand in the result.
func SettleGrid[T any](k *table.Kind[T], g grid.Grid, s table.Stated) (r table.Result[T], answered []table.Question, err error) {
	for range 5 { // an answer may open the next question
		if r, err = table.Read(k, g, s); err != nil {
			return r, answered, err
		}
		before := len(answered)
		for _, q := range r.Open {
			if way := answer(&s, q); way != "" {
				q.Text, q.Options = fmt.Sprintf("%s Read as %s.", q.Text, way), []string{way}
				answered = append(answered, q)
			}
		}
		if len(answered) == before {
			break
		}
	}
	return r, answered, nil
}

// answer takes a way for a question and returns it, empty where none may be taken so.
func answer(s *table.Stated, q table.Question) string {
	if len(q.Options) == 0 { // only the user can say
		return ""
	}
	way := q.Options[0]
	switch q.Key {
	case "kind":
		s.Kind = way
	case "unit":
		way = cmp.Or(s.Usual, way)
		s.Unit = way
	case "decimal":
		s.Decimal = way
	case "dates":
		way = cmp.Or(string(s.Order), way)
		s.Dates = cell.Order(way)
	default:
		return ""
	}
	return way
}

// Rows returns the comparables of a result as the valuation takes them. Ids are made unique: one that comes again is counted.
func Rows(r table.Result[Comparable]) []resale.Row {
	rows := make([]resale.Row, len(r.Rows))
	seen := map[string]int{}
	named := slices.ContainsFunc(r.Columns, func(c table.Became) bool { return c.Field == "source" })
	for i, c := range r.Rows {
		rows[i] = c.Known()
		if rows[i].ID == "" {
			continue
		}
		if r.Settled.Source != "" && !named {
			rows[i].ID = r.Settled.Source + ":" + rows[i].ID
		}
		id := rows[i].ID
		if seen[id]++; seen[id] > 1 {
			rows[i].ID = fmt.Sprintf("%s (%d)", id, seen[id])
		}
	}
	return rows
}

// ErrNoRows is the error of a table that names columns and has no row.
var ErrNoRows = errors.New("the table has a line of names and no rows below it")

// RefusedRows is the error of a table some of whose rows can't be used.
type RefusedRows []table.Refused

func (r RefusedRows) Error() string { return fmt.Sprintf("line %d: %s", r[0].Line, r[0].Faults[0]) }

// RowsOf returns the comparables of a table that must be usable whole, in the wanted currency, and notes on what it leaves open.
// Errors: [RefusedRows], [ErrNoRows], another currency than the wanted one, and those of [Settle].
func RowsOf(data []byte, s table.Stated) ([]resale.Row, []string, error) {
	r, notes, err := Settle(Comparables, data, s)
	rival := slices.IndexFunc(r.Open, func(q table.Question) bool { return q.Key == "as" && q.Word != "" })
	switch {
	case err != nil:
		return nil, notes, err
	case rival >= 0:
		return nil, notes, fmt.Errorf("%s %q", r.Open[rival].Text, r.Open[rival].Options)
	case s.Wanted != "" && r.Settled.Currency != s.Wanted:
		return nil, notes, OtherCurrency(r.Settled.Currency, s.Wanted)
	case len(r.Refused) > 0:
		return nil, notes, RefusedRows(r.Refused)
	case r.Read == 0:
		return nil, notes, ErrNoRows
	}
	return Rows(r), notes, nil
}

// OtherCurrency says that a table's prices are in another currency than the wanted one.
func OtherCurrency(has, wanted string) error {
	return fmt.Errorf("the table's prices are in %s, and they are wanted in %s; nothing converts them", has, wanted)
}
