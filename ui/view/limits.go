package view

import (
	"slices"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/money"
)

// LimitRow is one house rule beside the verdict: what it does to the bid, and whether it is left out for a try.
type LimitRow struct {
	Rule, Name, Words string
	Tried             bool
}

// LimitRows returns the house rules that are on, in their order; none before there is an answer.
func LimitRows(o desk.Open) []LimitRow {
	if o.Valued == nil || len(o.Valued.Answer.Needs) > 0 {
		return nil
	}
	a := o.Valued.Answer
	var rows []LimitRow
	for _, rule := range bid.Names {
		r := LimitRow{Rule: rule, Name: valuation.RuleWords[rule], Tried: slices.Contains(o.Tried, rule)}
		at := slices.IndexFunc(a.Ceilings, func(c bid.Ceiling) bool { return c.Rule == rule })
		switch {
		case r.Tried:
			r.Words = "left out for a try"
		case at < 0:
			continue
		default:
			r.Words = limitWords(o, a.Ceilings[at])
		}
		rows = append(rows, r)
	}
	return rows
}

// limitWords says what a house rule does to the bid.
func limitWords(o desk.Open, c bid.Ceiling) string {
	a := o.Valued.Answer
	p := NewPurse(a.Currency)
	words := ""
	switch {
	case a.WalkAway != nil && c.Rule == a.BindingRule:
		words = "sets this bid"
	case c.Any:
		words = "stops no bid"
	case c.Bid == nil:
		words = "no bid keeps it"
	default:
		words = "stops at " + p.Group(*c.Bid)
	}
	if without, known := o.Without(c.Rule); known {
		words += "; " + withoutWords(p, a.WalkAway, without)
	}
	return words
}

// freed says what the bid would be without the limit that sets it; nothing while that is not worked out.
func freed(o desk.Open) string {
	a := o.Valued.Answer
	without, known := o.Without(a.BindingRule)
	if !known || a.WalkAway == nil {
		return ""
	}
	return ". W" + withoutWords(NewPurse(a.Currency), a.WalkAway, without)[1:] + "."
}

// withoutWords says what the bid would be without a house rule.
func withoutWords(p Purse, with, without *money.Amount) string {
	switch {
	case without == nil:
		return "without this limit: no bid either"
	case with != nil && *with == *without:
		return "without this limit: the same"
	}
	return "without this limit: " + p.Group(*without)
}
