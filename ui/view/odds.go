package view

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
)

// Odds is what one bid brings.
type Odds struct {
	Bid     money.Amount
	Name    string // the bid in words
	Limits  []BidLimit
	Words   string // the bid, its invoice and its chances
	Doubt   string // why this is no bid that the sale takes; empty: it is one
	Verdict string
	Holds   bool
	Figures [][2]string
	Rules   []RuleRow // those that fail first
}

// BidLimit is the highest bid that something allows.
type BidLimit struct {
	Bid    money.Amount
	Name   string
	Strong bool // the walk-away bid
}

// RuleRow is one house rule at a bid.
type RuleRow struct {
	Cells []string // as RuleColumns
	Holds bool
}

// rank orders the rules: those that fail stand first, where they cannot be overlooked.
func (r RuleRow) rank() int {
	if r.Holds {
		return 0
	}
	return 1
}

// RuleColumns are the columns of the house rules at a bid.
var RuleColumns = []Column{{"House rule", false, 150}, {"Asks for", true, 116}, {"At this bid", true, 76}, {"", false, 64}}

// OddsAsked returns the bid whose odds are asked for: the one that was asked, or that of the answer.
func OddsAsked(o desk.Open) money.Amount {
	if o.Asked == 0 && o.Valued != nil {
		return o.Valued.Answer.Acquisition.Bid
	}
	return o.Asked
}

// NewOdds returns what a bid brings, and false when no odds are known.
func NewOdds(o desk.Open, b money.Amount) (Odds, bool) {
	if o.Valued == nil || !o.Valued.Odds.Known() {
		return Odds{}, false
	}
	a := o.Valued.Answer
	p := NewPurse(a.Currency)
	at := o.Valued.Odds.At(b)
	out := Odds{Bid: b, Name: "bid " + p.Show(b), Holds: at.Holds && a.WalkAway != nil, Limits: limits(a),
		Words:   fmt.Sprintf("A bid of %s costs %s with everything on the invoice. %s", p.Show(b), p.Show(at.Total), chances(at, a.WinFrom)),
		Doubt:   notLegal(p, o.Valued.Of.Buying.BidSteps, b),
		Figures: oddsFigures(p, at)}
	out.Verdict = oddsVerdict(a, at)
	for _, r := range at.Rules {
		word := "holds"
		if !r.Holds {
			word = "fails"
		}
		out.Rules = append(out.Rules, RuleRow{[]string{sentence(valuation.RuleWords[r.Rule]), strings.Replace(r.Wanted, p.Code+" ", "", 1),
			found(p, r.Rule, at), word}, r.Holds})
	}
	slices.SortStableFunc(out.Rules, func(a, b RuleRow) int { return cmp.Compare(b.rank(), a.rank()) })
	return out, true
}

// chances says how often a bid loses and how often it wins.
func chances(at valuation.Outlook, from string) string {
	if at.Win == nil {
		return Percent(at.Profit.LossChance) + " chance of a loss."
	}
	return Percent(at.Profit.LossChance) + " chance of a loss, " + Percent(*at.Win) + " chance to win the lot, going by " + from + "."
}

// limits lists the walk-away bid and the highest bid of each house rule that has one.
func limits(a valuation.Answer) []BidLimit {
	var out []BidLimit
	if a.WalkAway != nil {
		out = append(out, BidLimit{*a.WalkAway, "walk-away bid", true})
	}
	for _, c := range a.Ceilings {
		if c.Bid != nil && !c.Any {
			out = append(out, BidLimit{*c.Bid, valuation.RuleWords[c.Rule], false})
		}
	}
	return out
}

// oddsFigures lists what a bid brings.
func oddsFigures(p Purse, at valuation.Outlook) [][2]string {
	f := at.Profit
	out := [][2]string{
		{"Expected profit", p.Whole(f.Mean)},
		{"Chance of a loss", Percent(f.LossChance)},
		{"Worst tenth, on average", p.Whole(f.WorstTenth)},
		{"Profit, 8 times in 10", p.Range(f.P10, f.P90)},
		{"Margin", Percent(f.Margin)},
	}
	if f.PerHour != nil {
		out = append(out, [2]string{"Per hour of mine", p.Whole(*f.PerHour)})
	}
	return out
}

// found returns the figure that a house rule looks at.
func found(p Purse, rule string, at valuation.Outlook) string {
	f := at.Profit
	switch rule {
	case bid.MinMargin:
		return fmt.Sprintf("%.1f %%", 100*f.Margin)
	case bid.MaxLossChance:
		return fmt.Sprintf("%.1f %%", 100*f.LossChance)
	case bid.MaxWorstTenthLoss:
		return p.Whole(-f.WorstTenth)
	case bid.MinPerHour:
		if f.PerHour == nil {
			return "no hours of yours"
		}
		return p.Whole(*f.PerHour)
	case bid.MaxCash:
		return p.Whole(at.Cash90)
	case bid.MaxDays:
		return fmt.Sprintf("%.0f days", at.Days90)
	}
	return p.Whole(f.Mean)
}

// oddsVerdict says in a sentence whether a bid keeps the rules.
func oddsVerdict(a valuation.Answer, at valuation.Outlook) string {
	fails := 0
	for _, r := range at.Rules {
		if !r.Holds {
			fails++
		}
	}
	switch {
	case fails > 0:
		return "This bid breaks " + Count(fails, "house rule") + "."
	case a.WalkAway == nil:
		return "Every house rule holds, and yet: do not bid. A stop stands against this lot."
	case at.Bid > *a.WalkAway:
		return "Every house rule holds here, above the walk-away bid: look at the warning about the fees."
	}
	return "Every house rule holds at this bid."
}

// notLegal says which bids the sale takes instead of one that it does not; empty when it takes that.
func notLegal(p Purse, steps []invoice.Step, bid money.Amount) string {
	if len(steps) == 0 || invoice.Legal(steps, bid) {
		return ""
	}
	next := p.Exact(invoice.After(steps, bid))
	if low, n := invoice.Stand(steps, bid); n > 0 {
		return "Not a bid of this sale: it takes " + p.Exact(low) + " or " + next + "."
	}
	return "Below the lowest bid of this sale, " + next + "."
}

// Along returns the chances along the bids, for the chart; nothing when they are not known.
func Along(v *desk.Valued) []valuation.Chances {
	const bids = 90
	if v == nil || !v.Odds.Known() {
		return nil
	}
	return v.Odds.Along(bids)
}

// Around returns the legal bids about one that the next key may lead to, in major units.
func Around(p Purse, steps []invoice.Step, b money.Amount) []float64 {
	const many = 10
	var out []float64
	for by := -many; by <= many; by++ {
		if at := p.Major(Stepped(steps, b, by)); len(out) == 0 || at > out[len(out)-1] {
			out = append(out, at)
		}
	}
	return out
}

// Stepped returns the bid so many legal steps above or below another; it stops at the lowest legal bid.
func Stepped(steps []invoice.Step, b money.Amount, by int) money.Amount {
	return max(Raised(steps, b, by), steps[0].Step)
}
