package resale

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"walkline/valuation/hedonic"
	"walkline/valuation/money"
)

// screened is a row on its way through the fit: where it stood in the table, and why it is left out if it is.
type screened struct {
	index  int // in the table given to Fit
	row    Row
	order  string // what the row says, for a stable order and for finding duplicates
	reason string // empty: used
	traits hedonic.Traits
	price  float64 // major units
}

// screen returns the rows in an order that depends on their content alone, each with the reason if it can't be used.
func screen(rows []Row, c calendar, cur money.Currency) []screened {
	orders, place := make([]string, len(rows)), make([]int, len(rows))
	var w writer
	for i, r := range rows {
		orders[i], place[i] = w.content(r), i
	}
	slices.SortFunc(place, func(a, b int) int {
		return cmp.Or(strings.Compare(orders[a], orders[b]), strings.Compare(rows[a].ID, rows[b].ID), a-b)
	})
	out := make([]screened, len(rows))
	for k, i := range place {
		r := rows[i]
		out[k] = screened{index: i, row: r, order: orders[i], reason: refusal(r), traits: c.row(r), price: cur.Major(r.Price)}
	}
	markDuplicates(out)
	return out
}

// Usable reports whether the row can be reckoned with at all: it is not left out by hand, and has a price, a possible model
// year and no impossible mileage.
func (r Row) Usable() bool { return refusal(r) == "" }

// Unusable returns why the row can't be reckoned with; empty: it can.
func (r Row) Unusable() string { return refusal(r) }

func refusal(r Row) string {
	switch {
	case r.Excluded:
		return "left out by hand"
	case r.Price <= 0:
		return "no price"
	case r.ModelYear <= 0:
		return "no model year"
	case r.ModelYear < firstYear || r.ModelYear > lastYear:
		return "no year of any vehicle"
	case r.Mileage != nil && !(*r.Mileage >= 0 && *r.Mileage <= mostMiles):
		return "the mileage is not possible"
	}
	return ""
}

// sameVehicle begins the reason of a row that repeats another.
const sameVehicle = "the same vehicle as "

// markDuplicates leaves out rows that say the same as an earlier one in everything but their name, note and source: one
// vehicle advertised twice. Rows without a mileage are kept, since two vehicles may well agree in the rest.
func markDuplicates(rows []screened) {
	first := -1
	for i := range rows {
		if rows[i].reason != "" {
			continue
		}
		if first >= 0 && rows[i].order == rows[first].order && rows[i].row.Mileage != nil {
			rows[i].reason = sameVehicle + rows[first].name()
			continue
		}
		first = i
	}
}

func (s screened) name() string {
	if s.row.ID != "" {
		return "row " + strings.TrimPrefix(s.row.ID, "row-") // as an import numbers rows that have no id
	}
	return fmt.Sprintf("row %d", s.index+1)
}

// writer holds what writing one row's content leaves for the next.
type writer struct {
	text  []byte
	names []string
}

// content returns all that a row says of the vehicle and its price as one text, the price last: in another unit of money the rows keep
// their order.
func (w *writer) content(r Row) string {
	b := w.text[:0]
	text := func(s string) { b = append(append(b, '|'), s...) }
	num := func(x *float64) {
		b = append(b, '|')
		if x != nil {
			b = strconv.AppendFloat(b, *x, 'g', -1, 64)
		}
	}
	b = strconv.AppendInt(b, int64(r.ModelYear), 10)
	num(r.Mileage)
	for _, s := range []string{r.Unit, r.Kind, string(r.Date), r.Make, r.Model, r.Trim, r.Title} {
		text(hedonic.Key(s))
	}
	num(r.DistanceMi)
	num(r.Condition)
	w.names = w.names[:0]
	for name := range r.More {
		w.names = append(w.names, name)
	}
	slices.Sort(w.names)
	for _, name := range w.names {
		text(name)
		text(r.More[name])
	}
	w.text = strconv.AppendInt(append(b, '|'), int64(r.Price), 10)
	return string(w.text)
}
