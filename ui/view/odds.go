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
	Line    float64 // its invoice total, in major units
	Name    string  // the bid in words
	Limit   *float64
	Loss    string // what loses, as a share of the outcomes
	Gain    string
	Words   string // the bid and its invoice
	Doubt   string // why this is no bid that the sale takes; empty: it is one
	Verdict string
	Holds   bool
	Figures [][2]string
	Rules   []RuleRow // those that fail first
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
	out := Odds{Bid: b, Line: p.Major(at.Total), Name: "bid " + p.Show(b), Holds: at.Holds && a.WalkAway != nil,
		Loss: "loss " + Percent(at.Profit.LossChance), Gain: "gain " + Percent(1-at.Profit.LossChance),
		Words: fmt.Sprintf("A bid of %s costs %s with everything on the invoice. What breaks even left of the line loses.", p.Show(b),
			p.Show(at.Total)),
		Doubt:   notLegal(p, o.Valued.Of.Buying.BidSteps, b),
		Figures: oddsFigures(p, at)}
	out.Verdict = oddsVerdict(a, at)
	if a.WalkAway != nil {
		limit := p.Major(o.Valued.Odds.Total(*a.WalkAway))
		out.Limit = &limit
	}
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

// Where says what a place under the pointer means at the bid: how often the lot breaks even below it, and the profit if it breaks
// even there.
func (o Odds) Where(p Purse, total, below float64) string {
	profit, word := total-o.Line, "profit"
	if profit < 0 {
		profit, word = -profit, "loss"
	}
	return fmt.Sprintf("%s break even below %s. Breaking even there is a %s of about %s at this bid.", Percent(below), p.Whole(total), word,
		p.Whole(profit))
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

// BreakEven returns where the lot breaks even, for the chart; nothing when it is not known.
func BreakEven(v *desk.Valued) []valuation.Slice {
	const slices = 72
	if v == nil || !v.Odds.Known() {
		return nil
	}
	return v.Odds.BreakEven(slices)
}

// Stepped returns the bid so many legal steps above or below another; it stops at the lowest legal bid.
func Stepped(steps []invoice.Step, b money.Amount, by int) money.Amount {
	return max(Raised(steps, b, by), steps[0].Step)
}
