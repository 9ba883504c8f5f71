package valuation

import (
	"math"
	"slices"

	"walkline/valuation/lot"
)

// Need is something that a bid needs at least and that nobody has entered. JSON keys are those of the answer.
type Need struct {
	Key     string `json:"key"`     // the key of the case file
	Text    string `json:"text"`    // what to enter, and where
	Finding string `json:"finding"` // whose answer "no" says it too: no damage was seen; empty: none does
}

// NothingSeen is the finding that is answered "no" where a vehicle was looked at and no damage was seen on it.
const NothingSeen = "damage_unmarked"

// Unready stands in the place of the binding rule where a bid still needs something: see [Answer.Needs].
const Unready = "missing"

// Needs returns what a bid still needs, in the order in which it is entered; none: the lot is ready.
func (c Case) Needs() []Need {
	var out []Need
	unless := func(said bool, n Need) {
		if !said {
			out = append(out, n)
		}
	}
	l := c.Lot
	unless(l.ModelYear != 0 || l.Make != "" || l.Model != "" || l.VIN != "", Need{Key: "lot",
		Text: "Facts: enter which vehicle it is (model year, make, model or VIN)."})
	unless(lot.ReadPaper(l.Title.Document) != lot.NoPaper || len(l.Title.Brands) > 0,
		Need{Key: "lot.title.document", Text: "Facts: enter the title document, or say \"" + lot.NotYetKnown + "\"."})
	unless(c.lookedAt(), Need{Key: "damage", Text: "Damage: mark what is damaged, or say that none was seen.", Finding: NothingSeen})
	unless(len(c.Resale.Rows) > 0 || c.Resale.Comparables != "" || c.Resale.Guess != nil,
		Need{Key: "resale", Text: "Resale: import comparables, or enter what it should sell for (low, likely, high)."})
	return out
}

// lookedAt reports whether somebody has said what is damaged: by a mark, by a line or risk of their own, by what the survey says of each of
// the causes of loss, or that none was seen.
func (c Case) lookedAt() bool {
	return len(c.Damage)+len(c.Repair.Lines)+len(c.Hidden.Risks) > 0 || c.Survey.Hurt() && !slices.ContainsFunc(c.Lot.Loss, c.silent) ||
		c.Findings[NothingSeen] == "no"
}

// silent reports whether the survey, without marks, says nothing of what a cause of loss does: that wheels are gone tells of no fire.
func (c Case) silent(loss string) bool {
	switch v := c.Survey; loss {
	case "flood":
		return v.Water == nil
	case "fire":
		return v.Fire == nil
	case "hail":
		return v.Hail == nil
	case "mechanical":
		return len(v.Causes) == 0
	case "theft":
		return len(v.Missing) == 0
	}
	return loss != "other"
}

// byHand reports whether the lot is figured without the catalogues, from lines and risks that were all entered: nothing is read off
// facts and survey then, and what is missing of them is said and not asked for.
func (c Case) byHand() bool {
	return !c.Repair.UseCatalogue && !c.Hidden.UseCatalogue && len(c.Repair.Lines)+len(c.Hidden.Risks) > 0
}

// Missing returns what keeps the lot from a bid: what it needs, without what stands in for that, as a first guess does for the survey of
// a lot that nobody has looked at ([Case.Unlooked]).
func (c Case) Missing() []Need {
	if c.byHand() {
		return nil
	}
	needs := c.Needs()
	if c.Unlooked() { // a first guess stands in for the survey
		needs = slices.DeleteFunc(needs, func(n Need) bool { return n.Key == "damage" })
	}
	return needs
}

// unready takes out of an answer what it cannot say of a lot that nobody has described: every bid, its invoice, profit and odds.
func (a *Answer) unready(missing []Need) {
	a.Decision, a.BindingRule, a.WalkAway, a.Needs = "do_not_bid", Unready, nil, missing
	a.Reasons = nil
	for _, n := range missing {
		a.Reasons = append(a.Reasons, n.Text)
	}
	none := math.NaN()
	a.Profit = Profit{none, none, none, none, none, none, none, none, nil}
	a.Ladder, a.Waterfall, a.Drivers, a.Ceilings, a.NoCeiling = nil, nil, nil, nil, nil
	a.Exits, a.Winning, a.Acquisition = Exits{}, Winning{}, Acquisition{}
}

// SeeNothing says that the vehicle was looked at and no damage was seen, or takes that back.
func (c *Case) SeeNothing(on bool) {
	delete(c.Findings, NothingSeen)
	if on {
		if c.Findings == nil {
			c.Findings = map[string]string{}
		}
		c.Findings[NothingSeen] = "no"
	}
}
