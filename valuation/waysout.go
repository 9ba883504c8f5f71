package valuation

import (
	"fmt"
	"slices"

	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// The plans for a lot: what it is bought for.
const (
	Rebuild    = "rebuild"
	AsItStands = "as_it_stands"
	ForParts   = "for_parts"
)

// Plans are the plans that there are, in their order.
var Plans = []string{Rebuild, AsItStands, ForParts}

// WaysOut is what else can be done with the lot than to finish it: after the strip-down, or from the start.
type WaysOut struct {
	Stop       bool     `json:"stop"` // the buyer may stop at the strip-down where a way out brings more
	Strip      Strip    `json:"strip"`
	AsItStands Standing `json:"as_it_stands"`
	ForParts   Parting  `json:"for_parts"`
	Plans      []string `json:"plans"` // that are priced; empty: rebuild, and each way with money
}

// Strip is what it takes to open the lot up until it is known what is behind the skin: part of the repair where it is finished.
type Strip struct {
	Hours prob.Three `json:"hours"`
	Trade string     `json:"trade"` // empty: body
	Days  prob.Three `json:"days"`
}

// Standing is what the lot brings as it stands, net of selling it; no money: not a way.
type Standing struct {
	Money   *prob.Three `json:"money" unit:"money"`
	Days    prob.Three  `json:"days"`
	Starter bool        `json:"starter"` // a proposal that nobody has changed yet
}

// Parting is what the lot brings in parts, net of selling them and of what the rest costs or brings; no money: not a way.
type Parting struct {
	Money *prob.Three `json:"money" unit:"money"`
	Hours prob.Three  `json:"hours"`
	Trade string      `json:"trade"` // empty: body
	Days  prob.Three  `json:"days"`

	Starter bool `json:"starter"` // a proposal that nobody has changed yet
}

// wayTrade is the trade of hours that name none; starterOwnShare is how much of the shared doubt differs from bidder to
// bidder, as a share of its standard deviation: a starter value, from memory; replace it with yours.
const (
	wayTrade        = "body"
	starterOwnShare = 0.5
)

// way is one way out of a lot, with what its hours cost.
type way struct {
	name               string
	money, hours, days prob.Three
	rate               float64
}

// ownRate returns the rate of a trade, of body work where none is named.
func (c Case) ownRate(trade string) float64 {
	if trade == "" {
		trade = wayTrade
	}
	return c.Labour.Rates[trade]
}

// ways returns the ways out for which money is given.
func (c Case) ways() []way {
	var out []way
	o := c.WaysOut
	if m := o.AsItStands.Money; m != nil {
		out = append(out, way{name: AsItStands, money: *m, days: o.AsItStands.Days})
	}
	if m := o.ForParts.Money; m != nil {
		out = append(out, way{ForParts, *m, o.ForParts.Hours, o.ForParts.Days, c.ownRate(o.ForParts.Trade)})
	}
	return out
}

// Priced returns the plans that are priced: those that the case names, or else the rebuild and each way with money.
func (c Case) Priced() []string {
	if len(c.WaysOut.Plans) > 0 {
		return c.WaysOut.Plans
	}
	out := []string{Rebuild}
	for _, w := range c.ways() {
		out = append(out, w.name)
	}
	return out
}

// waysOut checks the ways out.
func (f *faults) waysOut(c Case) {
	o := c.WaysOut
	trade := func(key, name string) {
		if name != "" {
			f.word(key, name, lot.Trades)
		}
	}
	f.spell("ways_out.strip.hours", o.Strip.Hours)
	f.spell("ways_out.strip.days", o.Strip.Days)
	trade("ways_out.strip.trade", o.Strip.Trade)
	if m := o.AsItStands.Money; m != nil {
		f.three("ways_out.as_it_stands.money", *m)
	}
	f.spell("ways_out.as_it_stands.days", o.AsItStands.Days)
	if m := o.ForParts.Money; m != nil {
		f.three("ways_out.for_parts.money", *m)
	}
	f.spell("ways_out.for_parts.hours", o.ForParts.Hours)
	trade("ways_out.for_parts.trade", o.ForParts.Trade)
	f.spell("ways_out.for_parts.days", o.ForParts.Days)
	for i, plan := range o.Plans {
		at := fmt.Sprintf("ways_out.plans[%d]", i)
		f.word(at, plan, Plans)
		f.unless(!slices.Contains(o.Plans[:i], plan), at, plan, "each plan once")
		f.unless(plan != AsItStands || o.AsItStands.Money != nil, at, plan, "a plan with money: ways_out.as_it_stands.money is missing")
		f.unless(plan != ForParts || o.ForParts.Money != nil, at, plan, "a plan with money: ways_out.for_parts.money is missing")
	}
}

// growing checks how the price moves while the lot is owned.
func (f *faults) growing(r Resale) {
	if y := r.YearlyChange; y != nil {
		f.unless(y.Ordered(), "resale.yearly_change", y.Text(),
			"low no more than likely, likely no more than high")
		f.between("resale.yearly_change", y.Low, leastChange, mostChange)
		f.between("resale.yearly_change", y.High, leastChange, mostChange)
	}
	f.unless(len(r.Season) == 0 || len(r.Season) == 12, "resale.season", len(r.Season), "twelve factors, from January to December")
	for i, x := range r.Season {
		f.between(fmt.Sprintf("resale.season[%d]", i), x, leastSeason, mostSeason)
	}
}

// Between these bounds a price may move in a year, and a month's prices lie against the year's mean.
const (
	leastChange, mostChange = -0.9, 5
	leastSeason, mostSeason = 0.2, 5
)
