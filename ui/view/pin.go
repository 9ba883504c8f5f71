package view

import (
	"fmt"
	"strings"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/money"
)

// Pin is the bid of the open lot as it stays in sight on every page.
type Pin struct {
	Figure  string // the bid with its plan, "Do not bid", or what stands for it
	Moved   string // what moved it last, or what it still needs
	Refused bool
	Settled bool   // false: the figure is of an older state of the lot
	Seek    string // the key of what it still needs first; empty: nothing
}

// NewPin returns the bid of an open lot.
func NewPin(o desk.Open) Pin {
	v := NewVerdict(o)
	p := Pin{Figure: v.Figure, Refused: v.Refused, Settled: v.Settled}
	missing := StillMissing(o)
	switch {
	case len(missing) > 0 && (v.Figure == NotYet || len(o.Faults) > 0):
		names := make([]string, len(missing))
		for i, m := range missing {
			names[i] = m.Name
		}
		p.Figure, p.Moved, p.Seek, p.Refused, p.Settled = NotYet, "needs "+strings.Join(names, ", "), missing[0].Key, false, true
		return p
	case o.Problem != "":
		p.Moved = o.Problem
	case !o.Fresh:
		p.Moved = Working
	case len(o.Tried) > 0:
		p.Moved = TriedWords(o)
	default:
		p.Moved = movedWords(o)
	}
	if o.Valued != nil {
		p.Figure = joined(", ", v.Figure, planIn(o.Valued.Answer))
	}
	return p
}

// PinOf returns the bid of the lot in hand; of a build on screen, which is bid for no more, the price paid and what it comes to.
func PinOf(s desk.State) Pin {
	b := s.BuildInHand()
	if b == nil {
		return NewPin(*s.Open)
	}
	p := NewPurse(b.Currency)
	pin := Pin{Figure: "Lot " + b.Number + ", price not entered", Settled: true}
	if h := b.Build.Hammer; h != nil {
		pin.Figure = fmt.Sprintf("Lot %s, %s at %s", b.Number, b.State, p.Show(*h))
	}
	if f := b.Forecast; b.Ours() && !b.Build.Gone() && b.Fresh && f != nil && f.Whole != nil {
		pin.Moved = "profit forecast for the build: " + p.Whole(f.Whole.Mean)
	}
	return pin
}

// planIn names the plan of a bid, where others are priced too.
func planIn(a valuation.Answer) string {
	if a.WalkAway == nil || len(a.Plans) < 2 {
		return ""
	}
	return strings.ToLower(planNames[a.Plan])
}

// movedWords says what moved the bid last and by how much: "was 3,300: no ripple in the trunk floor".
func movedWords(o desk.Open) string {
	m := o.Moved
	if m == nil {
		return ""
	}
	was := "was " + Amount(o.Case.Currency, m.Was)
	if m.Since {
		was = "since last time: " + was
	}
	if m.By == "" {
		return was
	}
	return was + ": " + m.By
}

// Amount writes a bid without its currency; none: do not bid.
func Amount(currency string, bid *money.Amount) string {
	if bid == nil {
		return "do not bid"
	}
	return NewPurse(currency).Group(*bid)
}

// TriedWords says which house rules are left out for a try; empty where none is.
func TriedWords(o desk.Open) string {
	if len(o.Tried) == 0 {
		return ""
	}
	var names []string
	for _, rule := range o.Tried {
		names = append(names, valuation.RuleWords[rule])
	}
	return "a try without: " + strings.Join(names, "; ") + ". Nothing of it is kept."
}
