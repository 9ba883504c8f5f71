package main

import (
	"cmp"
	"slices"

	"walkline/valuation"
	"walkline/valuation/money"
	"walkline/valuation/sale"
)

// buyer is one way to buy.
type buyer struct {
	name                       string
	looks, ways, learned, plan bool
	guesses                    bool                 // bids on lots that it has not looked at
	thumb                      func(*entry) float64 // greatest invoice total by a rule of thumb; nil: the program
	clairvoyant                bool
	price                      float64 // of a bay for the sales to come, or of a day in one for the clairvoyant
}

// cleanShare is the share of the clean price from which the repairs are taken. Common practice, no source.
const cleanShare = .7

// buyers are those who meet the same seasons. The first is the program whole, the last the clairvoyant.
func buyers() []buyer {
	full := buyer{name: "the program", looks: true, ways: true, learned: true, plan: true}
	blind, bold, stubborn, fresh, plain := full, full, full, full, full
	blind.name, blind.looks = "first guesses, no looks", false
	bold.name, bold.guesses = "looks and first guesses", true
	stubborn.name, stubborn.ways = "without ways out", false
	fresh.name, fresh.learned = "without learning", false
	plain.name, plain.plan = "without the plan", false
	share := buyer{name: "share of the clean price", thumb: func(e *entry) float64 { return cleanShare*e.clean - e.fixed }}
	twice := buyer{name: "twice the parts bill", thumb: func(e *entry) float64 { return e.said.Resale.Mean - 2*e.parts }}
	return []buyer{full, blind, bold, stubborn, fresh, plain, share, twice, {name: "clairvoyant", clairvoyant: true}}
}

const (
	lookedAt   = 12 // lots that there is time to look at before a sale
	ofInterest = 12 // lots of a sale that a buyer has in mind, those of the greatest expected gain
)

// opinions returns what the buyer thinks of each lot of a sale.
func (b buyer) opinions(day []*entry) []opinion {
	out := make([]opinion, len(day))
	order := make([]int, len(day))
	learned := 0
	if b.learned {
		learned = 1
	}
	for i, e := range day {
		order[i], out[i] = i, e.guess[learned].opinion
	}
	if b.thumb != nil {
		for i, e := range day {
			out[i] = b.byThumb(e, i < lookedAt)
		}
		return out
	}
	if !b.looks {
		return out
	}
	slices.SortStableFunc(order, func(x, y int) int { return cmp.Compare(day[y].guess[learned].rate, day[x].guess[learned].rate) })
	for k, i := range order {
		switch {
		case k < lookedAt:
			out[i] = day[i].views[view(b.learned, b.ways)]
		case !b.guesses:
			out[i].walk = nil
		}
	}
	return out
}

// byThumb is what a rule of thumb says of a lot; no bid where nobody has looked.
func (b buyer) byThumb(e *entry, looked bool) opinion {
	o := e.views[0]
	o.plan, o.line, o.walk = valuation.Rebuild, nil, nil
	if most := b.thumb(e); looked && most > 0 {
		total := usd.FromMajor(most)
		first := e.at.Buying.NewReach(e.at.Buying.BidSteps, total, usd)
		if bid, ok := first.Last(total); ok {
			o.walk, o.worth = &bid, usd.FromMajor(e.said.Resale.Mean)
		}
	}
	return o
}

// sale returns the lots that the buyer may bid on, as a sale to plan, with their places in the day.
func (b buyer) sale(day []*entry, all []opinion, left sale.Purse) (sale.Sale, []int) {
	var at []int
	for i, o := range all {
		if o.walk != nil && (b.thumb != nil || o.gain > 0) {
			at = append(at, i)
		}
	}
	if len(at) > ofInterest {
		slices.SortStableFunc(at, func(x, y int) int { return cmp.Compare(all[y].gain, all[x].gain) })
		at = at[:ofInterest]
		slices.Sort(at)
	}
	s := sale.Sale{Currency: usd, Purse: left}
	if b.plan {
		s.Later.Bay = b.price
	}
	for _, i := range at {
		o, c := all[i], day[i].at
		s.Lots = append(s.Lots, sale.Lot{ID: c.Lot.Number, Worth: o.worth, WalkAway: o.walk, Beside: o.beside, Hours: o.hours, Hammer: o.law,
			Steps: c.Buying.BidSteps, Terms: c.Buying.Terms})
	}
	return s, at
}

// bids returns the policy for a day.
func (b buyer) bids(s sale.Sale) sale.Policy {
	if b.plan {
		return sale.New(s)
	}
	return sale.InOrder(s)
}

// bought is one lot that was won, for its invoice total.
type bought struct {
	total money.Amount
	life
}
