package build

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"walkline/valuation/lot"
)

// Check returns what cannot be, in words; nothing when all is well.
func (b Build) Check() []string {
	var out []string
	unless := func(ok bool, format string, args ...any) {
		if !ok {
			out = append(out, fmt.Sprintf(format, args...))
		}
	}
	unless(b.Outcome == "" || slices.Contains(Outcomes, b.Outcome), "The outcome %q is not known.", b.Outcome)
	unless(b.Hammer == nil || *b.Hammer >= 0, "The hammer price is below nothing.")
	unless(b.Sale.Price == nil || *b.Sale.Price >= 0, "The price that it sold for is below nothing.")
	for i, r := range b.Receipts {
		unless(slices.Contains(Kinds, r.Kind), "Bill %d: %q is no kind of bill.", i+1, r.Kind)
		unless(r.Date == "" || r.Date.Known(), "Bill %d: %q is no day.", i+1, r.Date)
	}
	for i, w := range b.Hours {
		unless(slices.Contains(lot.Trades, w.Trade), "Hours %d: %q is no trade.", i+1, w.Trade)
		unless(w.Hours >= 0 && !math.IsInf(w.Hours, 0), "Hours %d: %g hours.", i+1, w.Hours)
	}
	for _, u := range b.Unbilled {
		unless(slices.Contains(Kinds, u.Kind) && (u.Means == Nothing || u.Means == AsForecast), "No bill for %q means %q: that is not known.",
			u.Kind, u.Means)
	}
	for i, u := range b.Unlisted {
		again := slices.ContainsFunc(b.Unlisted[:i], func(x Unlisted) bool { return x.ID == u.ID })
		unless(strings.TrimSpace(u.Name) != "", "Found, number %d: say what was found.", i+1)
		unless(u.ID != "" && !again, "Found, number %d: its id %q is not its own.", i+1, u.ID)
		unless(slices.Contains(lot.Trades, u.Trade), "Found, number %d: %q is no trade.", i+1, u.Trade)
		unless(u.Cost.Ordered() && u.Cost.Low >= 0 && u.Hours.Ordered() && u.Hours.Low >= 0,
			"Found, number %d: low, likely and high must rise, from nothing on.", i+1)
	}
	return append(out, b.Dates.check()...)
}

// Steps are the days of a build in the order of the job, each with its name.
func (d *Dates) Steps() []struct {
	Name string
	Day  *lot.Date
} {
	return []struct {
		Name string
		Day  *lot.Date
	}{{"Bought", &d.Bought}, {"Home", &d.Home}, {"Started", &d.Started}, {"Finished", &d.Finished},
		{"Inspected", &d.Inspected}, {"Listed", &d.Listed}, {"Sold", &d.Sold}}
}

// after names the days that must not come before another. Work may start before the vehicle is home, and a vehicle may be
// listed before it is finished or inspected.
var after = [][2]string{{"Bought", "Home"}, {"Bought", "Started"}, {"Started", "Finished"}, {"Bought", "Inspected"}, {"Bought", "Listed"},
	{"Listed", "Sold"}, {"Bought", "Sold"}}

func (d Dates) check() []string {
	days, out := map[string]lot.Date{}, []string(nil)
	for _, s := range d.Steps() {
		days[s.Name] = *s.Day
		if *s.Day != "" && !s.Day.Known() {
			out = append(out, fmt.Sprintf("%s: %q is no day.", s.Name, *s.Day))
		}
	}
	for _, pair := range after {
		if n, ok := days[pair[0]].Days(days[pair[1]]); ok && n < 0 {
			out = append(out, fmt.Sprintf("%s on %s comes before %s on %s.", pair[1], days[pair[1]], pair[0], days[pair[0]]))
		}
	}
	return out
}
