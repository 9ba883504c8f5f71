package main

import (
	"fmt"
	"math"
	"math/rand/v2"

	"github.com/shopspring/decimal"

	"walkline/valuation/invoice"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/sale"
)

var usd, _ = money.Lookup("USD")

// invented draws a sale: what lots are worth, how far their prices lie about that, and what there is to spend. Every figure is invented.
func invented(rng *rand.Rand, lots int) sale.Sale {
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*rng.Float64() }
	s := sale.Sale{Currency: usd}
	s.Purse = sale.Purse{Cash: whole(between(7000, 18000)), Hours: math.Round(between(100, 260)), Bays: 2 + rng.IntN(2)}
	steps := []invoice.Step{{Step: 5000}, {From: 100000, Step: 10000}, {From: 500000, Step: 25000}}
	minimum := whole(150)
	rows := []invoice.Row{{Percent: decimal.New(12, -2), Minimum: &minimum}, {From: whole(4000), Percent: decimal.New(10, -2)}}
	terms := invoice.Terms{Tax: invoice.Tax{Base: "hammer"}, Fixed: []invoice.Fixed{{Name: "Gate", Amount: whole(79)}},
		Fees: []invoice.Schedule{{Name: "Buyer fee", Mode: "whole", Rows: rows}}}
	for i := range lots {
		worth := between(2200, 9500)
		likely := worth * math.Exp(-.25+.3*rng.NormFloat64())
		walkAway := whole(worth*.87 - between(100, 900))
		hammer := prob.Three{Low: math.Round(likely * .6), Likely: math.Round(likely), High: math.Round(likely * 1.6)}
		s.Lots = append(s.Lots, sale.Lot{ID: fmt.Sprint(i + 1), Worth: whole(worth), WalkAway: &walkAway,
			Beside: whole(worth * between(.08, .25)), Hours: math.Round(between(12, 90)), Hammer: hammer, Steps: steps, Terms: terms})
	}
	return s
}

// whole returns an amount without minor units.
func whole(x float64) money.Amount { return usd.FromMajor(math.Round(x)) }

// prices draws what each lot of a sale goes for.
func prices(rng *rand.Rand, s sale.Sale) []money.Amount {
	out := make([]money.Amount, len(s.Lots))
	for i, l := range s.Lots {
		x := usd.FromMajor(l.Hammer.(prob.Three).Quantile(rng.Float64()))
		if out[i] = x; !invoice.Legal(l.Steps, x) {
			out[i] = invoice.After(l.Steps, x)
		}
	}
	return out
}

// earned returns the profits of a buyer who follows the policy while the lots go for those prices.
func earned(s sale.Sale, policy sale.Policy, prices []money.Amount) float64 {
	sum := money.Amount(0)
	for i, l := range s.Lots {
		bid, ok := policy.Stop(i, s.Purse)
		if !ok || prices[i] > bid {
			continue
		}
		total := l.Terms.Total(prices[i], s.Currency).Total
		s.Purse = sale.Purse{Cash: s.Cash - total - l.Beside, Hours: s.Hours - l.Hours, Bays: s.Bays - 1}
		sum += l.Worth - total
	}
	return s.Currency.Major(sum)
}

// printed is the policy that keeps the bids of the first list all day, as far as cash, hours and bays go.
type printed struct {
	sale sale.Sale
	bids []sale.Bid
	most sale.Policy // walk-away bids as far as the cash goes
}

func newPrinted(s sale.Sale, a sale.Answer) printed { return printed{s, a.Lots, sale.InOrder(s)} }

func (p printed) Stop(lot int, left sale.Purse) (money.Amount, bool) {
	most, ok := p.most.Stop(lot, left)
	if bid := p.bids[lot].Bid; ok && bid != nil {
		return min(most, *bid), true
	}
	return 0, false
}
