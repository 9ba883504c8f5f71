package build

import (
	"cmp"
	"slices"
	"strconv"

	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Total is what a year came to in one currency, of one kind of wreck or of all. What was bought counts in the year of its purchase, what
// ended in the year of its sale. Units: money in major units, own hours, days from the purchase to the sale.
type Total struct {
	Year     int // 0: the day was not entered
	Currency string
	Kind     string
	All      bool // of all kinds
	Bought   int
	Paid     float64 // to the sales: the invoices of what was bought
	Sold     int     // that ended, in whatever way
	Unknown  int     // of Sold: what it brought or cost is not known, so it is in no sum
	Brought  float64
	Profit   float64 // own hours paid at their rates, and the money that was tied up
	Tied     float64 // cost of the money that was tied up
	Untied   int     // of Sold: what it came to is known, the cost of the money tied up is not and counts in no sum
	Labour   float64 // own hours at their rates
	Hours    float64

	timed, days float64 // profit and days of those whose days are known
}

// PerHour returns what an own hour brought, profit and paid hours over the hours, and whether there were any.
func (t Total) PerHour() (float64, bool) { return (t.Profit + t.Labour) / t.Hours, t.Hours > 0 }

// PerDay returns the profit of a day that a vehicle stood there, and whether any days are known.
func (t Total) PerDay() (float64, bool) { return t.timed / t.days, t.days > 0 }

// Years adds builds up by year and currency: all kinds of wreck together, then each. The latest year comes first, what has no day last.
func Years(list []Account) []Total {
	at := map[Total]*Total{}
	in := func(day lot.Date, a Account, add func(*Total)) {
		year, _ := strconv.Atoi(string(day[:min(len(day), 4)]))
		for _, key := range []Total{{Year: year, Currency: a.Currency, All: true}, {Year: year, Currency: a.Currency, Kind: a.Kind}} {
			if at[key] == nil {
				t := key
				at[key] = &t
			}
			add(at[key])
		}
	}
	for _, a := range list {
		in(a.Build.Dates.Bought, a, a.bought)
		if a.Build.Outcome.Ended() {
			in(a.Build.Dates.Sold, a, a.ended)
		}
	}
	var out []Total
	for _, t := range at {
		out = append(out, *t)
	}
	slices.SortFunc(out, func(a, b Total) int {
		if a.All != b.All && a.Year == b.Year && a.Currency == b.Currency {
			return map[bool]int{true: -1, false: 1}[a.All]
		}
		return cmp.Or(cmp.Compare(b.Year, a.Year), cmp.Compare(a.Currency, b.Currency), cmp.Compare(a.Kind, b.Kind))
	})
	return out
}

func (a Account) bought(t *Total) {
	t.Bought++
	cur, known := money.Lookup(a.Currency)
	if a.Build.Hammer == nil || !known {
		return
	}
	sum := *a.Build.Hammer
	for _, c := range a.Build.Charges {
		sum += c.Amount
	}
	t.Paid += cur.Major(sum)
}

func (a Account) ended(t *Total) {
	t.Sold++
	r, ok := a.Result()
	if !ok {
		t.Unknown++
		return
	}
	if r.Tied != nil {
		t.Tied += *r.Tied
	} else {
		t.Untied++
	}
	t.Brought, t.Profit, t.Labour = t.Brought+r.Brought, t.Profit+r.Profit, t.Labour+r.Labour
	for _, w := range a.Build.Hours {
		t.Hours += w.Hours
	}
	if days, ok := a.days(); ok && days > 0 {
		t.timed, t.days = t.timed+r.Profit, t.days+float64(days)
	}
}
