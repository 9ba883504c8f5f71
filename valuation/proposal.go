package valuation

import (
	"fmt"

	"walkline/valuation/donor"
	"walkline/valuation/hammer"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// A lot that is sold on as it stands, opened up, brings this much of its guess of the hammer price: low, likely, high. The days are those
// until the next sale. What it takes to strip a lot down. All are starter values, from memory.
var (
	soldOn     = prob.Three{Low: 0.75, Likely: 0.9, High: 1}
	soldOnDays = prob.Three{Low: 7, Likely: 14, High: 30}
	stripHours = prob.Three{Low: 4, Likely: 7, High: 14}
	stripDays  = prob.Three{Low: 2, Likely: 4, High: 10}
)

// offered are the chances at which the ends and the middle of what the next buyer offers are read from the law of hammer prices.
var offered = prob.Three{Low: 0.1, Likely: 0.5, High: 0.9}

// Proposed are starter values for the ways out, and what they rest on.
type Proposed struct {
	WaysOut WaysOut
	Parts   []donor.Item // that the money for parts is made of
	Missing []string     // what a way could not be proposed without, in words
	Notes   []string     // what stands in for figures that the shop's catalogue does not have
}

// ProposeWays returns starter values for both ways out of a case: for parts from the assemblies that the survey leaves sound, as it stands
// from what the wreck is worth to the next buyer, and no more than the guess of the hammer price. What the case says already stays. Parts
// that the law may forbid to sell count only where that is allowed. Limits: as [Value]. Errors: as [Value].
func ProposeWays(c Case, k Knowledge, allowed bool) (Proposed, error) {
	p := Proposed{WaysOut: c.WaysOut}
	o := &p.WaysOut
	if o.Strip.Hours.Zero() && o.Strip.Days.Zero() {
		o.Strip.Hours, o.Strip.Days = stripHours, stripDays
	}
	if o.AsItStands.Money != nil && o.ForParts.Money != nil {
		return p, nil
	}
	w, m := work{c: c, k: k}, NewMemory()
	w.currency, _ = money.Lookup(c.Currency)
	w.market = m.doubtful(c, c.beliefs(w.currency), k.Prior)
	if err := w.market.model.Err(); err != nil {
		return p, err
	}
	if o.ForParts.Money == nil {
		p.parting(c, k.Parts, w.currency.Major(w.before()), allowed)
	}
	if o.AsItStands.Money == nil {
		if err := w.expect(); err != nil {
			return p, err
		}
		w.items = w.list()
		w.played = m.scenes.Play(w.scene())
		p.standing(c, w.worthToNext(p.WaysOut.ForParts))
	}
	return p, nil
}

// worthToNext returns what the lot is worth to its next buyer, who sees what is seen of it: finished less the visible work where the title
// lets it be finished, or its parts less the work and the days that they take, whichever is more.
func (w *work) worthToNext(parts Parting) float64 {
	worth := 0.0
	if !w.forbidden(Rebuild) {
		worth = w.market.table.Mean()*(1-w.c.Selling.Percent) - w.c.Selling.fixed() - prob.Mean(w.played.Repair)
	}
	if parts.Money == nil {
		return worth
	}
	return max(worth, parts.Money.Mean()-parts.Hours.Mean()*w.c.ownRate(parts.Trade)-parts.Days.Mean()*w.c.Time.HoldingPerDay)
}

// standing proposes what the lot brings as it stands: the share of what it is worth to the next buyer for which lots of its kind go, as
// package hammer starts out, and no more than what is left of the guess of the hammer price. So a guess that is too high for the wreck
// carries no bid. Selling it again is paid from either.
func (p *Proposed) standing(c Case, worth float64) {
	law, err := hammer.Starter().Law(hammer.Kind{Loss: c.Lot.Loss, Condition: c.Lot.Condition}, worth, 0)
	if err != nil {
		p.Missing = append(p.Missing, "As it stands: nothing that is known of the lot is worth more than the work it takes.")
		return
	}
	offer := prob.Three{Low: law.Quantile(offered.Low), Likely: law.Quantile(offered.Likely), High: law.Quantile(offered.High)}
	if g := c.Market.HammerGuess; g != nil {
		offer.Low, offer.Likely = min(offer.Low, soldOn.Low*g.Low), min(offer.Likely, soldOn.Likely*g.Likely)
		offer.High = min(offer.High, soldOn.High*g.High)
	}
	net := func(x float64) float64 { return max(0, x*(1-c.Selling.Percent)-c.Selling.fixed()) }
	brings := prob.Three{Low: net(offer.Low), Likely: net(offer.Likely), High: net(offer.High)}
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
	if known.StandsIn(l) {
		p.Notes = append(p.Notes, "For parts: your assemblies do not say how often a lot runs after a hit. Starter values stand in, from memory.")
	}
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
