package valuation

import (
	"fmt"

	"walkline/valuation/donor"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// A lot that is sold on as it stands, opened up, brings this much of what its guess of the hammer price leaves after selling: low, likely,
// high. The days are those until the next sale. What it takes to strip a lot down. All are starter values, from memory.
var (
	soldOn     = prob.Three{Low: 0.75, Likely: 0.9, High: 1}
	soldOnDays = prob.Three{Low: 7, Likely: 14, High: 30}
	stripHours = prob.Three{Low: 4, Likely: 7, High: 14}
	stripDays  = prob.Three{Low: 2, Likely: 4, High: 10}
)

// Proposed are starter values for the ways out, and what they rest on.
type Proposed struct {
	WaysOut WaysOut
	Parts   []donor.Item // that the money for parts is made of
	Missing []string     // what a way could not be proposed without, in words
}

// ProposeWays returns starter values for both ways out of a case: as it stands from the guess of the hammer price, for parts from the
// assemblies that the survey leaves sound. What the case says already stays. Parts that the law may forbid to sell count only where that
// is allowed. Limits: as [Value]. Errors: nothing carries a resale price.
func ProposeWays(c Case, k Knowledge, allowed bool) (Proposed, error) {
	p := Proposed{WaysOut: c.WaysOut}
	o := &p.WaysOut
	if o.Strip.Hours.Zero() && o.Strip.Days.Zero() {
		o.Strip.Hours, o.Strip.Days = stripHours, stripDays
	}
	if o.AsItStands.Money == nil {
		p.standing(c)
	}
	if o.ForParts.Money != nil {
		return p, nil
	}
	w := work{c: c, k: k}
	w.currency, _ = money.Lookup(c.Currency)
	w.market = NewMemory().doubtful(c, c.beliefs(w.currency), k.Prior)
	if err := w.market.model.Err(); err != nil {
		return p, err
	}
	p.parting(c, k.Parts, w.currency.Major(w.before()), allowed)
	return p, nil
}

// standing proposes what the lot brings as it stands.
func (p *Proposed) standing(c Case) {
	g := c.Market.HammerGuess
	if g == nil {
		p.Missing = append(p.Missing, "As it stands: enter the hammer price that you guess, under Checks.")
		return
	}
	net := func(x, share float64) float64 { return max(0, share*x*(1-c.Selling.Percent)-c.Selling.Flat) }
	brings := prob.Three{Low: net(g.Low, soldOn.Low), Likely: net(g.Likely, soldOn.Likely), High: net(g.High, soldOn.High)}
	if brings.Zero() {
		p.Missing = append(p.Missing, "As it stands: selling it again costs more than it brings.")
		return
	}
	p.WaysOut.AsItStands = Standing{Money: &brings, Days: soldOnDays, Starter: true}
}

// parting proposes what the lot brings in parts at a clean resale level.
func (p *Proposed) parting(c Case, known donor.Catalogue, clean float64, allowed bool) {
	l := c.told()
	l.Survey = c.Survey
	rate, given := c.rate(known.Currency)
	switch {
	case len(known.Assemblies) == 0:
		p.Missing = append(p.Missing, "For parts: there is no catalogue of assemblies.")
		return
	case !given:
		p.Missing = append(p.Missing, fmt.Sprintf("For parts: enter under Costs how many %s one %s is.", c.Currency, known.Currency))
		return
	case !l.Covered():
		p.Missing = append(p.Missing, "For parts: the catalogue does not cover this kind of vehicle.")
		return
	}
	made := known.In(rate).Propose(l, c.Damage, clean, allowed)
	p.Parts = made.Items
	p.WaysOut.ForParts = Parting{Money: &made.Money, Hours: made.Hours, Trade: lot.Trades[0], Days: made.Days, Starter: true}
}

// starterWays names the ways out that are starter values still.
func (w *work) starterWays() []string {
	var out []string
	say := func(way string) {
		out = append(out, fmt.Sprintf("What the lot brings %s is a starter value, from memory: replace it under Costs.", way))
	}
	if o := w.c.WaysOut.AsItStands; o.Starter && o.Money != nil {
		say("as it stands")
	}
	if o := w.c.WaysOut.ForParts; o.Starter && o.Money != nil {
		say("in parts")
	}
	return out
}
