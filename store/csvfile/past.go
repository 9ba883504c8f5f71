package csvfile

import (
	"fmt"
	"slices"
	"strings"

	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Past is one buy from before the program. What the table leaves empty is not known.
type Past struct {
	Line  int // of the file
	Lot   lot.Lot
	Build build.Build
}

// PastResult is what a table of past buys holds: Read = len(Rows) + len(Refused).
type PastResult struct {
	Read    int
	Rows    []Past
	Refused []Refused
	Blank   int
}

// PastOptions is how a table of past buys is written; for all of it, never per row.
type PastOptions struct {
	Marks    Marks
	Dates    Order
	Currency string
}

// pastField is one column that a table of past buys may have.
type pastField struct {
	name string
	also []string // other names that are understood
	take func(r *pastReader, cell string) error
}

// pastFields are the columns in the order of the template.
var pastFields = slices.Concat([]pastField{
	{"id", []string{"number", "stock number"}, func(r *pastReader, cell string) error { r.past.Lot.Number = cell; return nil }},
	{"sale", []string{"yard", "auction"}, textInto(func(p *Past) *string { return &p.Lot.Sale })},
	{"vin", nil, textInto(func(p *Past) *string { return &p.Lot.VIN })},
	{"model_year", []string{"year"}, func(r *pastReader, cell string) error {
		var y year
		err := y.UnmarshalCSV(cell)
		r.past.Lot.ModelYear = int(y)
		return err
	}},
	{"make", nil, textInto(func(p *Past) *string { return &p.Lot.Make })},
	{"model", nil, textInto(func(p *Past) *string { return &p.Lot.Model })},
	{"trim", nil, textInto(func(p *Past) *string { return &p.Lot.Trim })},
	{"bought", []string{"bought on", "sale date"}, dayInto(func(d *build.Dates) *lot.Date { return &d.Bought })},
	{"home", nil, dayInto(func(d *build.Dates) *lot.Date { return &d.Home })},
	{"started", nil, dayInto(func(d *build.Dates) *lot.Date { return &d.Started })},
	{"finished", nil, dayInto(func(d *build.Dates) *lot.Date { return &d.Finished })},
	{"inspected", nil, dayInto(func(d *build.Dates) *lot.Date { return &d.Inspected })},
	{"listed", nil, dayInto(func(d *build.Dates) *lot.Date { return &d.Listed })},
	{"sold", []string{"sold on"}, dayInto(func(d *build.Dates) *lot.Date { return &d.Sold })},
	{"price_paid", []string{"hammer price", "hammer", "paid"}, amountInto(func(p *Past, a money.Amount) { p.Build.Hammer = &a })},
	{"fees", []string{"buyer fees", "fees and tax"}, amountInto(func(p *Past, a money.Amount) {
		p.Build.Charges = append(p.Build.Charges, build.Charge{Name: "Fees and tax", Amount: a})
	})},
}, billFields(), hourFields(), []pastField{
	{"outcome", []string{"how it ended"}, func(r *pastReader, cell string) error {
		o := build.Outcome(strings.ToLower(cell))
		if !slices.Contains(build.Outcomes, o) {
			return fmt.Errorf("one of open, sold, parted out, resold as is, cancelled")
		}
		r.past.Build.Outcome = o
		return nil
	}},
	{"first_asked", []string{"asked", "asking price"}, amountInto(func(p *Past, a money.Amount) { p.Build.Sale.FirstAsked = &a })},
	{"sold_for", []string{"sale price", "sold price"}, amountInto(func(p *Past, a money.Amount) { p.Build.Sale.Price = &a })},
	{"days_on_market", []string{"days to sell"}, func(r *pastReader, cell string) error {
		var n number
		err := n.read(cell, 0, 3650, "whole days, 0 to 3650")
		if days := int(n.value); err == nil && float64(days) == n.value {
			r.past.Build.Sale.Days = &days
			return nil
		}
		return fmt.Errorf("whole days, 0 to 3650")
	}},
	{"brand", []string{"title", "title brand"}, textInto(func(p *Past) *string { return &p.Build.Sale.Brand })},
	{"found", []string{"hidden damage found"}, seenInto(build.Found)},
	{"not_there", []string{"hidden damage not there"}, seenInto(build.NotThere)},
	{"note", []string{"notes"}, textInto(func(p *Past) *string { return &p.Build.Note })},
})

// billFields are the columns of money by kind; each makes one bill.
func billFields() []pastField {
	var out []pastField
	for _, kind := range build.Kinds {
		name := map[string]string{"part": "parts", "outside": "bought_in_work", "other": "other_costs", "selling": "selling_costs", "holding": "holding_costs"}[kind]
		if name == "" {
			name = kind
		}
		out = append(out, pastField{name, nil, amountInto(func(p *Past, a money.Amount) {
			p.Build.Receipts = append(p.Build.Receipts, build.Receipt{What: "all, from a table of past buys", Kind: kind, Amount: a})
		})})
	}
	return out
}

// hourFields are the columns of own hours by trade.
func hourFields() []pastField {
	var out []pastField
	for _, trade := range lot.Trades {
		out = append(out, pastField{"hours_" + trade, nil, func(r *pastReader, cell string) error {
			plain, err := r.options.Marks.plain(cell)
			if err != nil {
				return err
			}
			var n number
			if err := n.read(plain, 0, 5000, "hours, 0 to 5000"); err != nil {
				return err
			}
			r.past.Build.Hours = append(r.past.Build.Hours, build.Work{Trade: trade, Hours: n.value, What: "all, from a table of past buys"})
			return nil
		}})
	}
	return out
}

func textInto(at func(p *Past) *string) func(*pastReader, string) error {
	return func(r *pastReader, cell string) error { *at(&r.past) = cell; return nil }
}

func dayInto(at func(d *build.Dates) *lot.Date) func(*pastReader, string) error {
	return func(r *pastReader, cell string) (err error) {
		*at(&r.past.Build.Dates), err = r.options.Dates.day(cell)
		return err
	}
}

func amountInto(put func(p *Past, a money.Amount)) func(*pastReader, string) error {
	return func(r *pastReader, cell string) error {
		cell, err := withoutCurrency(cell, r.options.Currency)
		if err != nil {
			return err
		}
		if cell, err = r.options.Marks.plain(cell); err != nil {
			return err
		}
		a, err := r.currency.Parse(cell)
		if err == nil && a < 0 {
			err = fmt.Errorf("below nothing")
		}
		if err == nil {
			put(&r.past, a)
		}
		return err
	}
}

// seenInto takes risks by id or name, parted by semicolons.
func seenInto(state string) func(*pastReader, string) error {
	return func(r *pastReader, cell string) error {
		for _, risk := range strings.Split(cell, ";") {
			risk = strings.TrimSpace(risk)
			switch was := r.past.Build.Saw(risk); {
			case risk == "":
			case was != "" && was != state:
				return fmt.Errorf("%s is said to be found and not to be there", risk)
			default:
				r.past.Build.See(risk, state)
			}
		}
		return nil
	}
}
