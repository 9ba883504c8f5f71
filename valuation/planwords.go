package valuation

import (
	"fmt"

	"walkline/valuation/checks"
	"walkline/valuation/money"
)

// PlanWords says a plan as something to do.
var PlanWords = map[string]string{Rebuild: "rebuild it and sell it", AsItStands: "sell it on as it stands", ForParts: "sell it for parts"}

// licence is the caution that goes with parts where the road is closed.
const licence = "Taking a vehicle apart for sale may need a license: ask the agency before you bid."

// planWords says what the bid is for: the plan where it is no rebuild, why that is not to be had, and where to stop.
func (w *work) planWords() []string {
	plan := w.options[w.best].name
	if plan == Rebuild {
		return w.stopWords()
	}
	out := []string{fmt.Sprintf("The plan is to %s: that has the highest bid.", PlanWords[plan])}
	if w.rebuilt.stopped {
		out[0] = fmt.Sprintf("The plan is to %s: a rebuild is stopped.", PlanWords[plan])
		out = append(out, checks.Stops(w.items)...)
	}
	if plan == ForParts {
		out = append(out, licence)
	}
	return out
}

// stopWords says where to stop, how often that is, and what it is worth; nothing where no scenario stops.
func (w *work) stopWords() []string {
	if !w.stops.taken {
		return nil
	}
	return []string{w.exits().StopWords(w.currency)}
}

// StopWords says the stop line as something to do, how often that is and what it puts to the bid; empty where no stop is planned, or where
// no scenario comes to it.
func (e Exits) StopWords(cur money.Currency) string {
	if e.StopLine == nil || e.StopChance == 0 {
		return ""
	}
	said := StopSentence("the strip-down", *e.StopLine, e.StopWay, cur) + " That is so in " + cases(e.StopChance)
	bid := "the walk-away bid"
	if e.Plan == AsItStands || e.Plan == ForParts {
		said, bid = "Should you rebuild it: s"+said[1:], "the bid on a rebuild"
	}
	if e.WayOutWorth > 0 {
		said += " and adds " + cur.Show(e.WayOutWorth) + " to " + bid
	}
	return said + "."
}

// cases says a chance above 0 as so many of a hundred cases; a small one is not none, and a large one not all.
func cases(chance float64) string {
	switch {
	case chance < .01:
		return "fewer than 1 of 100 cases"
	case chance < 1 && chance > .99:
		return "more than 99 of 100 cases"
	}
	return fmt.Sprintf("%.0f of 100 cases", 100*chance)
}

// StopSentence says a stop line, in major units, as something to do; where says what shows how much is still to spend.
func StopSentence(where string, line float64, way string, cur money.Currency) string {
	if line <= 0 {
		return fmt.Sprintf("Stop line: whatever %s shows, stop and %s: finishing brings less.", where, PlanWords[way])
	}
	return fmt.Sprintf("Stop line: if %s shows more than %s %s still to spend, stop and %s.", where, cur.Code, cur.Whole(line), PlanWords[way])
}

// stopDoubts says where the option to stop is not planned since it would lower the bid, and where the price's change until the
// sale is not known.
func (w *work) stopDoubts() []string {
	var out []string
	if worse := w.stops.worse; worse != nil {
		out = append(out, fmt.Sprintf("No stop is planned: it would trade a chance of a gain for a small sure loss, and a rule on losses "+
			"would then allow %s instead of %s.",
			w.orNoBid(worse.Bid), w.orNoBid(w.stops.plain.Bid)))
	}
	if w.c.Resale.YearlyChange == nil && w.market.model.Bare() {
		out = append(out, "The price is taken to stay what you guessed until the day of sale: there are no comparables that tell how it "+
			"changes. Enter the yearly change under Resale.")
	}
	return out
}

func (w *work) orNoBid(b *money.Amount) string {
	if b == nil {
		return "no bid"
	}
	return w.currency.Show(*b)
}
