package view

import (
	"fmt"
	"strings"

	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// Rules returns the house rules that are on: each in few words with its limit.
func Rules(r bid.Rules, p Purse) [][2]string {
	var out [][2]string
	amount := func(name string, a *money.Amount) {
		if a != nil {
			out = append(out, [2]string{shortRule(name), p.Show(*a)})
		}
	}
	number := func(name string, x *float64, how func(float64) string) {
		if x != nil {
			out = append(out, [2]string{shortRule(name), how(*x)})
		}
	}
	amount(bid.MinProfit, r.MinProfit)
	number(bid.MinMargin, r.MinMargin, Percent)
	number(bid.MaxLossChance, r.MaxLossChance, Percent)
	amount(bid.MaxWorstTenthLoss, r.MaxWorstTenthLoss)
	amount(bid.MinPerHour, r.MinPerHour)
	amount(bid.MaxCash, r.MaxCash)
	number(bid.MaxDays, r.MaxDays, func(x float64) string { return fmt.Sprintf("%g days", x) })
	return out
}

// Factors returns what an answer was reckoned with beside the vehicle itself: a label and its value.
func Factors(c valuation.Case, a valuation.Answer) [][2]string {
	p := NewPurse(c.Currency)
	out := [][2]string{{"Valued on", Day(c.ValuedOn)}, {"Price rests on", priceFrom(a)}}
	if a.Resale.RowsUsed > 0 {
		out = append(out, [2]string{"Asked to sold", threePercent(c.Resale.AskedToSold)})
	}
	out = append(out, [2]string{"Discount of a rebuilt title", threePercent(c.Resale.BrandDiscount)},
		[2]string{"My hour, " + p.Code, rates(c.Labour.Rates)}, [2]string{"Hours a week", fmt.Sprintf("%g", c.Time.HoursPerWeek)},
		[2]string{"Holding a day", p.Code + " " + plain(c.Time.HoldingPerDay)}, [2]string{"Capital a year", Percent(c.Time.CapitalRate)},
		[2]string{"Selling", selling(c.Selling, p)}, [2]string{"Winner's allowance", allowance(c)})
	for _, r := range Rules(c.Rules, p) {
		out = append(out, [2]string{"Rule: " + r[0], r[1]})
	}
	out = append(out, Learned(c.Factors)...)
	return append(out, [2]string{"Catalogue", catalogue(c)},
		[2]string{"Engine", fmt.Sprintf("%s, %d scenarios, seed %d", valuation.Engine, c.Run.Scenarios, c.Run.Seed)})
}

func priceFrom(a valuation.Answer) string {
	if a.Resale.RowsUsed == 0 {
		return "the buyer's guess alone"
	}
	return Count(a.Resale.RowsUsed, "comparable")
}

// plain writes a number with no more decimals than it has, two at most.
func plain(x float64) string {
	return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.2f", x), "0"), ".")
}

func threePercent(t prob.Three) string {
	return fmt.Sprintf("%s to %s, likely %s", Percent(t.Low), Percent(t.High), Percent(t.Likely))
}

// rates returns the labour rates by trade, trades of the same rate together.
func rates(byTrade map[string]float64) string {
	var order []string
	trades := map[string][]string{}
	for _, trade := range lot.Trades {
		if rate, ok := byTrade[trade]; ok {
			words := plain(rate)
			if trades[words] == nil {
				order = append(order, words)
			}
			trades[words] = append(trades[words], trade)
		}
	}
	if len(order) == 0 {
		return "not counted"
	}
	if len(order) == 1 && len(trades[order[0]]) == len(lot.Trades) {
		return "all trades " + order[0]
	}
	var out []string
	for _, words := range order {
		out = append(out, strings.Join(trades[words], ", ")+" "+words)
	}
	return strings.Join(out, "; ")
}

func selling(s valuation.Selling, p Purse) string {
	var parts []string
	if s.Percent > 0 {
		parts = append(parts, Percent(s.Percent))
	}
	if s.Flat > 0 || len(parts) == 0 {
		parts = append(parts, p.Code+" "+plain(s.Flat))
	}
	return strings.Join(parts, " and ")
}

func allowance(c valuation.Case) string {
	if !c.Run.WinnersAllowance {
		return "off"
	}
	others, _ := c.Market.Others()
	return "for " + Count(others, "other bidder")
}

func catalogue(c valuation.Case) string {
	switch jobs, risks := c.Repair.UseCatalogue, c.Hidden.UseCatalogue; {
	case jobs && risks:
		return "starter values for jobs and risks"
	case jobs:
		return "starter values for jobs"
	case risks:
		return "starter values for risks"
	}
	return "not used"
}
