package main

import (
	"fmt"
	"io"
	"math"

	"walkline/valuation"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// shelfStray is how far the price that the shelf gives for a past buy lies about what the shop forecast then: log standard deviation.
// Invented.
const shelfStray = 0.06

// tabled returns builds as a table of past buys has them: sums by kind and trade, areas of damage without their extent, and no forecast but
// a first guess for the same facts. Its price is that of the comparables of its time, which lies about the shop's own forecast.
func (s *study) tabled(builds []learn.Build) ([]learn.Build, error) {
	m := valuation.NewMemory()
	var out []learn.Build
	for i, b := range builds {
		c := s.lots[i].Clone()
		for k := range c.Damage {
			c.Damage[k].Extent, c.Damage[k].Depth = "functional", "bolted"
		}
		stray := math.Exp(shelfStray * s.rng.NormFloat64())
		for _, x := range []*float64{&c.Resale.Guess.Low, &c.Resale.Guess.Likely, &c.Resale.Guess.High} {
			*x *= stray
		}
		guess, err := m.Foretell(c, s.know, b.Hammer)
		if err != nil {
			return nil, err
		}
		guess.Profit, guess.WalkAway = learn.Figure{}, nil
		b.Foretold, b.Guess = nil, &guess
		b.Came.Worked, b.Came.Receipts = summed(b.Came)
		out = append(out, b)
	}
	return out, nil
}

// summed returns own hours by trade and money by kind; what was paid for hidden damage is among the parts.
func summed(c learn.Came) (worked []learn.Worked, paid []learn.Receipt) {
	hours, sums := map[string]float64{}, map[learn.Kind]money.Amount{}
	for _, w := range c.Worked {
		hours[w.Trade] += w.Hours
	}
	for _, r := range c.Receipts {
		kind := r.Kind
		if kind == learn.HiddenKind {
			kind = learn.PartKind
		}
		sums[kind] += r.Paid
	}
	for _, trade := range lot.Trades {
		if hours[trade] > 0 {
			worked = append(worked, learn.Worked{Trade: trade, Hours: hours[trade]})
		}
	}
	for _, kind := range []learn.Kind{learn.PartKind, learn.MaterialsKind, learn.OutsideKind} {
		if sums[kind] > 0 {
			paid = append(paid, learn.Receipt{Kind: kind, Paid: sums[kind]})
		}
	}
	return worked, paid
}

// reached writes how much of what kept forecasts earn over the starter values a table alone earns.
func reached(out io.Writer, starter, table, kept year) {
	fmt.Fprintf(out, "\nA table of past buys alone earns %.2f of what kept forecasts earn over the starter values\n",
		float64(table.profit-starter.profit)/float64(kept.profit-starter.profit))
}
