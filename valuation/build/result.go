package build

import (
	"slices"

	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Account is one build as the books see it.
type Account struct {
	Build    Build
	Currency string
	Kind     string             // of wreck; empty: not known
	Rates    map[string]float64 // money an own hour by trade, major units
	SaleDay  lot.Date           // day of the sale at which it was bought, where the build names none
	Said     *Said              // nil: nothing was foretold, and only what was entered counts
}

// Said is what a forecast counts a build's costs at; it stands in where no bill says them.
type Said struct {
	Costs   map[string]money.Amount // by kind of bill: freight, storage, and selling at the price that came
	Holding float64                 // of a day, major units
	Capital float64                 // what money that is tied up costs a year, as a share of it
	Fees    *invoice.Terms          // what the sale charges; nil: not kept
}

// AskedFor are the kinds of cost of which a bill is expected wherever the forecast counts them. Selling is that of a finished vehicle.
var AskedFor = []string{"freight", "storage", "selling"}

// Result is what an ended build came to. Units: money in major units.
type Result struct {
	Brought, Outlay, Labour, Profit float64
	Tied                            *float64 // cost of the money that was tied up, taken off Profit; nil: not known, and not counted
	Taken                           []Charge // by kind, in Outlay: what no bill says, at the forecast's value
}

// Meant returns what it was said to mean that a kind has no bill; empty: nothing was said.
func (b Build) Meant(kind string) string {
	for _, u := range b.Unbilled {
		if u.Kind == kind {
			return u.Means
		}
	}
	return ""
}

// MeanAll sets what it means that these kinds have no bill.
func (b *Build) MeanAll(kinds []string, means string) {
	b.Unbilled = slices.DeleteFunc(b.Unbilled, func(u Unbilled) bool { return slices.Contains(kinds, u.Kind) })
	for _, kind := range kinds {
		b.Unbilled = append(b.Unbilled, Unbilled{kind, means})
	}
}

// Lacks reports whether what a kind cost is not entered: it has no bill, and was not said to have cost nothing.
func (b Build) Lacks(kind string) bool {
	return b.Meant(kind) != Nothing && !slices.ContainsFunc(b.Receipts, func(r Receipt) bool { return r.Kind == kind })
}

// Unsaid returns the kinds of [AskedFor] that the forecast counts and nothing was entered of, each with the forecast's value.
func (a Account) Unsaid() []Charge {
	var out []Charge
	for _, kind := range AskedFor {
		due := kind != "selling" && a.Build.Outcome != Cancelled || a.Build.Outcome == Sold
		if a.Said != nil && due && a.Build.Lacks(kind) && a.Said.Costs[kind] != 0 {
			out = append(out, Charge{kind, a.Said.Costs[kind]})
		}
	}
	return out
}

// days returns the days from the purchase to the sale, and whether both are known.
func (a Account) days() (int, bool) {
	from := a.Build.Dates.Bought
	if from == "" {
		from = a.SaleDay
	}
	n, known := from.Days(a.Build.Dates.Sold)
	return n, known && n >= 0
}

// paid returns what the sale's invoice came to: as entered, else as the terms of the forecast charge.
func (a Account) paid(c money.Currency) money.Amount {
	var terms invoice.Terms
	if a.Said != nil && a.Said.Fees != nil {
		terms = *a.Said.Fees
	}
	sum, _ := a.Build.Invoice(terms, c)
	return sum
}

// taken returns what is counted at the forecast's value: the fees, what no bill says, and holding by the day.
func (a Account) taken(c money.Currency) []Charge {
	out := a.Unsaid()
	if fees := a.paid(c) - *a.Build.Hammer; len(a.Build.Charges) == 0 && fees != 0 {
		out = append([]Charge{{"fees", fees}}, out...)
	}
	days, dated := a.days()
	if a.Said == nil || !dated || a.Build.Outcome == Cancelled || !a.Build.Lacks("holding") {
		return out
	}
	if kept := c.FromMajor(float64(days) * a.Said.Holding); kept != 0 {
		out = append(out, Charge{"holding", kept})
	}
	return out
}

// Result returns what the build came to, counted as a forecast is: own hours at their rates, what no bill says at the forecast's value, and
// the cost of the money that was tied up over the days it took, where the cost of capital and both days are known. It says whether the
// build has ended and its price and hammer price are known. Cancelled purchases brought what came back, or nothing.
func (a Account) Result() (Result, bool) {
	cur, known := money.Lookup(a.Currency)
	b := a.Build
	if !known || !b.Outcome.Ended() || b.Hammer == nil || b.Sale.Price == nil {
		return Result{}, false
	}
	r := Result{Brought: cur.Major(*b.Sale.Price), Labour: Labour(b.Worked(), a.Rates), Taken: a.taken(cur)}
	out := a.paid(cur) + b.Spent()
	for _, x := range r.Taken {
		if x.Name != "fees" {
			out += x.Amount
		}
	}
	r.Outlay = cur.Major(out)
	r.Profit = r.Brought - r.Outlay - r.Labour
	if days, dated := a.days(); dated && a.Said != nil {
		cost := cur.Major(a.paid(cur)) * a.Said.Capital * float64(days) / 365
		r.Tied, r.Profit = &cost, r.Profit-cost
	}
	return r, true
}
