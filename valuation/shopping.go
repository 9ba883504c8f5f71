package valuation

import (
	"cmp"
	"slices"
	"strconv"

	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// Wanted is one source of one part that a lot's plan may need. Money is in major units of the lot's currency.
type Wanted struct {
	Lot, Vehicle, Currency string
	Line, For, Area        string // id of the line, its job in words, its place
	Part                   string
	Need                   float64 // chance that the part is needed
	Turn                   int     // 1 is asked first; the sources follow their expected cost
	Source                 string  // as in [repair.Option]; fallback: where no source has it
	Price, Freight         prob.Three
	LeadDays               prob.Three
	Has                    float64       // chance that the source has it
	Said                   *repair.Quote // what a yard said; nil: nobody was asked
	Caution                string        // of the work that it is for
}

// Fallback is the source of what is done where no other has the part.
const Fallback = "fallback"

// Shopping returns all parts over all lines of the lots, each with its sources in the order in which they are asked. The parts of a
// lot stand together, what is needed for certain before what may be.
func Shopping(cases []Case, k Knowledge) []Wanted {
	var all []Wanted
	for _, c := range cases {
		own := wanted(c, k)
		slices.SortStableFunc(own, func(a, b Wanted) int { return cmp.Compare(b.Need, a.Need) })
		all = append(all, own...)
	}
	return all
}

// wanted returns the parts of one lot in the order of its lines.
func wanted(c Case, k Knowledge) []Wanted {
	var all []Wanted
	for _, l := range Plan(c, k) {
		for _, p := range l.Parts {
			if p.InHand() {
				continue
			}
			head := Wanted{Lot: c.Lot.Number, Vehicle: vehicle(c.Lot), Currency: c.Currency, Line: l.ID, For: l.Job, Area: l.Area, Part: p.Name,
				Need: repair.Or(l.Chance, 1), Caution: l.Caution}
			all = append(all, sources(head, p, c.Labour.Rates[l.ChiefTrade()], c.Time.HoldingPerDay)...)
		}
	}
	return all
}

// sources returns a row for each source of a part, and one for its fallback.
func sources(head Wanted, p repair.Part, rate, holding float64) []Wanted {
	var all []Wanted
	for turn, i := range p.Order(rate, holding) {
		o, row := p.Options[i], head
		row.Turn, row.Source, row.Price, row.Freight, row.LeadDays = turn+1, o.Source, o.Price, o.Freight, o.LeadDays
		row.Has, row.Said = repair.Or(o.Chance, 1), o.Quote
		all = append(all, row)
	}
	if f := p.Fallback; f != nil {
		row := head
		row.Turn, row.Source, row.Price, row.LeadDays, row.Has = len(all)+1, Fallback, f.Price, f.LeadDays, 1
		all = append(all, row)
	}
	return all
}

// vehicle names a vehicle by what is known of it.
func vehicle(l lot.Lot) string {
	words := ""
	for _, w := range []string{year(l.ModelYear), l.Make, l.Model, l.Trim} {
		if w != "" && words != "" {
			words += " "
		}
		words += w
	}
	return words
}

func year(y int) string {
	if y == 0 {
		return ""
	}
	return strconv.Itoa(y)
}
