package view_test

import (
	"slices"
	"testing"

	"walkline/ui/view"
	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/learn"
)

func TestFactors(t *testing.T) {
	c := valuation.Defaults()
	others := 4
	c.Currency, c.ValuedOn, c.Market.Rivals = "USD", "2026-11-20", &others
	c.Labour.Rates = map[string]float64{"body": 35, "paint": 40.5, "structure": 35}
	c.Selling = valuation.Selling{Percent: .05, Flat: 250}
	loss, days := .15, 150.0
	c.Rules = bid.Rules{MinProfit: usd(1500), MaxLossChance: &loss, MaxDays: &days}
	a := valuation.Answer{Currency: "USD"}
	a.Resale.RowsUsed = 34
	factors := view.Factors(c, a)
	for _, want := range [][2]string{{"Price rests on", "34 comparables"}, {"Asked to sold", "90 % to 100 %, likely 95 %"},
		{"My hour, USD", "body, structure 35; paint 40.5"},
		{"Selling", "5.0 % and USD 250"}, {"Winner's allowance", "for 4 other bidders"}, {"Rule: least profit", "USD 1,500"},
		{"Rule: chance of a loss", "15 %"}, {"Rule: longest time", "150 days"}, {"Catalogue", "starter values for jobs and risks"}} {
		if !slices.Contains(factors, want) {
			t.Errorf("no %q in %q", want, factors)
		}
	}
	c.Labour.Rates, c.Selling, c.Run.WinnersAllowance, c.Repair.UseCatalogue, c.Hidden.UseCatalogue = nil, valuation.Selling{}, false, false,
		false
	a.Resale.RowsUsed = 0
	factors = view.Factors(c, a)
	for _, want := range [][2]string{{"Price rests on", "the buyer's guess alone"}, {"My hour, USD", "not counted"}, {"Selling", "USD 0"},
		{"Winner's allowance", "off"}, {"Catalogue", "not used"}} {
		if !slices.Contains(factors, want) {
			t.Errorf("no %q in %q", want, factors)
		}
	}
	if slices.ContainsFunc(factors, func(f [2]string) bool { return f[0] == "Asked to sold" }) {
		t.Error("a discount on asked prices stands though no asked price is used")
	}
}

func TestLearnedFactorsAreNamed(t *testing.T) {
	none := [2]string{"Learned factors", "none, starter values stand"}
	if got := view.Learned(nil); !slices.Equal(got, [][2]string{none}) || !slices.Equal(view.Learned(&learn.Factors{}), got) {
		t.Errorf("%q", got)
	}
	f := learn.Factors{Hours: map[string]learn.Ratio{"paint": {Factor: .9, From: 1}, "body": {Factor: 1.25, From: 7, When: "2026-10-01"}},
		Parts:     map[string]learn.Ratio{"new_maker": {Factor: 1.1, From: 3}},
		Materials: &learn.Ratio{Factor: 2, From: 2}, Resale: &learn.Bias{Factor: .97, Spread: 1.3, From: 9},
		Risks: map[string]learn.Chance{"rail_bent": {A: 1, B: 3, From: 4}}, Loading: &learn.Loading{Value: .4, From: 8}}
	want := [][2]string{{"Learned: hours, body", "× 1.25 from 7 buys, 2026-10-01"}, {"Learned: hours, paint", "× 0.90 from 1 buy"},
		{"Learned: price of parts, new maker", "× 1.10 from 3 buys"},
		{"Learned: materials", "× 2.00 from 2 buys"}, {"Learned: resale price", "× 0.97, spread × 1.30 from 9 buys"},
		{"Learned: chance of rail bent", "25 % from 4 buys"}, {"Learned: shared loading", "0.40 from 8 buys"}}
	if got := view.Learned(&f); !slices.Equal(got, want) {
		t.Errorf("%q\nwant %q", got, want)
	}
}
