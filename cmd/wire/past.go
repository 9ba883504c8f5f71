package wire

import (
	"fmt"
	"strings"

	"walkline/store/csvfile"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/hidden"
	"walkline/valuation/money"
)

// PastTables reads tables of past buys for the desk. Risks that a table calls by their names are found in the catalogue.
type PastTables struct{ Risks hidden.Catalogue }

var _ desk.PastTables = PastTables{}

var pastFields = []string{"bought", "vehicle", "paid", "sold", "sold for", "outcome"}

func pasts() sheets[csvfile.Past] {
	return sheets[csvfile.Past]{kind: csvfile.PastBuys, shown: pastFields, first: func(p csvfile.Past) []string {
		b, l := p.Build, p.Lot
		amount := func(a *money.Amount) string {
			currency, known := money.Lookup(p.Currency)
			if a == nil || !known {
				return ""
			}
			return currency.Group(*a)
		}
		return []string{string(b.Dates.Bought), strings.TrimSpace(fmt.Sprintf("%s %s %s", l.Make, l.Model, l.Trim)), amount(b.Hammer),
			string(b.Dates.Sold), amount(b.Sale.Price), string(b.Outcome)}
	}}
}

// OpenPast returns the table with the match and the notation that it suggests.
func (PastTables) OpenPast(data []byte, o desk.Opening) (desk.Sheet, error) {
	return pasts().open(data, o)
}

// Reopen returns the table of the same file, read as it is now stated.
func (PastTables) Reopen(s desk.Sheet, o desk.Opening) (desk.Sheet, error) {
	return pasts().reopen(s, o)
}

// ReadPast returns the buys of a sheet and every refused row.
func (p PastTables) ReadPast(s desk.Sheet) ([]desk.Past, []desk.Refusal, error) {
	res, err := pasts().taken(s)
	if err != nil {
		return nil, nil, err
	}
	list := make([]desk.Past, len(res.Rows))
	for i, r := range res.Rows {
		c := valuation.Defaults()
		c.Currency, c.Lot, c.Damage = s.Stated.Currency, r.Lot, r.Damage
		c.Lot.Condition = "unknown"
		if c.Lot.Odometer == nil {
			c.Lot.OdometerUnit, c.Lot.OdometerStatus = valuation.Defaults().Lot.OdometerUnit, "unknown"
		}
		for k := range r.Build.Risks {
			r.Build.Risks[k].Risk = p.risk(r.Build.Risks[k].Risk)
		}
		list[i] = desk.Past{Case: c, Build: r.Build}
	}
	return list, refusals(res.Refused), nil
}

// risk returns the id of a risk that is called by its name; what is not known stays as it is.
func (p PastTables) risk(name string) string {
	for _, e := range p.Risks.Risks {
		if strings.EqualFold(e.Name, name) {
			return e.ID
		}
	}
	return name
}

// Preview returns what a sheet gives as it is stated, and what each of its rows teaches.
func (PastTables) Preview(s desk.Sheet) (desk.Preview, error) {
	p, err := pasts().preview(s)
	if err != nil {
		return p, err
	}
	res, err := pasts().result(s)
	if err != nil {
		return p, err
	}
	for _, r := range res.Rows {
		p.Teaches = append(p.Teaches, fmt.Sprintf("Line %d teaches %s.", r.Line, teaches(r)))
	}
	return p, nil
}

// RefusedPast writes the refused rows of a sheet as CSV.
func (PastTables) RefusedPast(s desk.Sheet) ([]byte, error) { return pasts().refused(s) }

// PastTemplate returns an empty table of past buys.
func (PastTables) PastTemplate() []byte { return csvfile.PastTemplate() }

// hasPrice reports whether a price could have been forecast for a sold vehicle, were there comparables.
func hasPrice(p csvfile.Past) bool {
	l, b := p.Lot, p.Build
	return l.ModelYear > 0 && l.Make != "" && l.Model != "" && l.Odometer != nil && l.OdometerStatus == "actual" && b.Sale.Price != nil &&
		b.Sale.Brand != "" && b.Dates.Sold.Known()
}

// teaches says what a row of past buys can teach, and what it can't and why.
func teaches(p csvfile.Past) string {
	b := p.Build
	if !b.Outcome.Ended() {
		return "nothing until it has ended"
	}
	var can, cannot []string
	put := func(ok bool, what, why string) {
		if ok {
			can = append(can, what)
		} else if why != "" {
			cannot = append(cannot, what+" ("+why+")")
		}
	}
	_, days := b.DaysToSell()
	sold := b.Outcome == build.Sold
	work, damaged, priced := len(b.Hours) > 0 || len(b.Receipts) > 0, len(p.Damage) > 0, hasPrice(p)
	put(sold && b.Sale.FirstAsked != nil && b.Sale.Price != nil, "asked to sold", "needs first asked and sold for")
	put(len(b.Risks) > 0, "damage found", "needs found or not there")
	switch {
	case !sold:
		put(false, "hours, costs, days, resale price", "not finished and sold")
	case !damaged:
		put(false, "hours and costs", "no damage given")
	default:
		put(work, "hours and costs, against today's first guess", "none given")
		put(days, "days to sell", "no days given")
	}
	put(sold && priced, "resale price, if the shelf has 5 prices of the model from the year before the sale", "")
	if sold && !priced {
		put(false, "resale price", "needs year, make, model, odometer, sold, sold for and brand")
	}
	words := "nothing"
	if len(can) > 0 {
		words = strings.Join(can, ", ")
	}
	if len(cannot) > 0 {
		words += "; not: " + strings.Join(cannot, ", ")
	}
	return words
}
