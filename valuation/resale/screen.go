package resale

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"walkline/valuation/money"
)

// screened is a row on its way through the fit: where it stood in the table, and why it is left out if it is.
type screened struct {
	index  int // in the table given to Fit
	row    Row
	order  string // what the row says, for a stable order and for finding duplicates
	reason string // empty: used
	traits traits
	price  float64 // major units
}

// screen returns the rows in an order that depends on their content alone, each with the reason if it can't be used.
func screen(rows []Row, c calendar, cur money.Currency) []screened {
	out := make([]screened, len(rows))
	for i, r := range rows {
		out[i] = screened{index: i, row: r, order: content(r), traits: c.row(r), price: cur.Major(r.Price)}
		out[i].reason = refusal(r)
	}
	sort.SliceStable(out, func(i, j int) bool {
		if out[i].order != out[j].order {
			return out[i].order < out[j].order
		}
		return out[i].row.ID < out[j].row.ID
	})
	markDuplicates(out)
	return out
}

func refusal(r Row) string {
	switch {
	case r.Excluded:
		return "left out by hand"
	case r.Price <= 0:
		return "no price"
	case r.ModelYear <= 0:
		return "no model year"
	case r.Mileage != nil && (!finite(*r.Mileage) || *r.Mileage < 0):
		return "the mileage is no number"
	}
	return ""
}

// markDuplicates leaves out rows that say the same as an earlier one in everything but their name, note and source: one
// vehicle advertised twice. Rows without a mileage are kept, since two vehicles may well agree in the rest.
func markDuplicates(rows []screened) {
	first := -1
	for i := range rows {
		if rows[i].reason != "" {
			continue
		}
		if first >= 0 && rows[i].order == rows[first].order && rows[i].row.Mileage != nil {
			rows[i].reason = "the same vehicle as " + rows[first].name()
			continue
		}
		first = i
	}
}

func (s screened) name() string {
	if s.row.ID != "" {
		return "row " + s.row.ID
	}
	return fmt.Sprintf("row %d", s.index+1)
}

// content returns all that a row says of the vehicle and its price as one text.
func content(r Row) string {
	var b strings.Builder
	num := func(x *float64) float64 {
		if x == nil {
			return math.Inf(-1)
		}
		return *x
	}
	fmt.Fprintf(&b, "%d|%d|%g|%s|%s|%s|%s|%s|%s|%s|%g|%g", r.Price, r.ModelYear, num(r.Mileage), key(r.Unit), key(r.Kind), r.Date,
		key(r.Make), key(r.Model), key(r.Trim), key(r.Title), num(r.DistanceMi), num(r.Condition))
	names := make([]string, 0, len(r.More))
	for name := range r.More {
		names = append(names, name)
	}
	sort.Strings(names)
	for _, name := range names {
		fmt.Fprintf(&b, "|%s=%s", name, r.More[name])
	}
	return b.String()
}
