package valuation_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
	"walkline/valuation/resale"
)

// The size of the case that is measured.
const (
	benchLines, benchRisks, benchRows = 60, 40, 400
	benchScenarios                    = 16384
)

// large is a case of that size with all seven rules on. Invented.
func large() valuation.Case {
	loss, margin, days := .15, .10, 260.0
	c := uncertain(1, bid.Rules{MinProfit: usd(1200), MinMargin: &margin, MaxLossChance: &loss, MaxWorstTenthLoss: usd(2500),
		MinPerHour: usd(38), MaxCash: usd(26000), MaxDays: &days})
	rng := rand.New(rand.NewPCG(60, 40))
	three := func(scale float64) prob.Three {
		low := scale * (.3 + .5*rng.Float64())
		likely := low * (1.1 + .6*rng.Float64())
		return prob.Three{Low: low, Likely: likely, High: likely * (1.2 + 1.3*rng.Float64())}
	}
	c.Repair.Lines, c.Hidden.Risks = nil, nil
	for i := range benchLines {
		c.Repair.Lines = append(c.Repair.Lines, largeLine(rng, i, three))
	}
	for i := range benchRisks {
		c.Hidden.Risks = append(c.Hidden.Risks, hidden.Risk{ID: fmt.Sprint("h", i), Name: fmt.Sprint("risk ", i),
			Chance: hidden.Beta{A: 1, B: 3 + float64(rng.IntN(12))}, Cost: three(160), Hours: map[string]prob.Three{"mechanical": three(2)},
			Days: three(2)})
	}
	for _, trade := range lot.Trades {
		c.Labour.Rates[trade] = 30 + float64(rng.IntN(15))
	}
	c.Time.HoursPerWeek = 40
	miles := 61000
	c.Lot.ModelYear, c.Lot.Odometer, c.Resale.Guess = 2019, &miles, nil
	for range benchRows {
		c.Resale.Rows = append(c.Resale.Rows, largeRow(rng))
	}
	c.Run.WinnersAllowance, c.Market.Rivals = true, others(4)
	c.Run.Scenarios = benchScenarios
	stands := prob.Three{Low: 4000, Likely: 5000, High: 7000}
	c.WaysOut.Plans = []string{valuation.Rebuild}
	c.WaysOut.Strip = valuation.Strip{Hours: three(10), Days: three(4)}
	c.WaysOut.AsItStands = valuation.Standing{Money: &stands, Days: three(20)}
	return c
}

// others is a number of other bidders.
func others(n int) *int { return &n }

// largeLine has two trades, materials, work bought in now and then, and one part with two sources and a fallback.
func largeLine(rng *rand.Rand, i int, three func(float64) prob.Three) repair.Line {
	had, maybe := .5+.4*rng.Float64(), .3+.4*rng.Float64()
	l := repair.Line{ID: fmt.Sprint("l", i), Job: fmt.Sprint("job ", i), Materials: three(15),
		Hours: map[string]prob.Three{"body": three(1.5), lot.Trades[1+i%5]: three(1)},
		Parts: []repair.Part{{Name: "part", Options: []repair.Option{
			{Source: "used", Price: three(60), Freight: prob.Certain(12), LeadDays: three(4), Chance: &had, ExtraHours: three(.4)},
			{Source: "new_aftermarket", Price: three(110), LeadDays: three(7), Chance: &maybe}},
			Fallback: &repair.Fallback{Price: three(200), LeadDays: three(20)}}}}
	if i%3 == 0 {
		needed := .4 + .5*rng.Float64()
		l.Chance, l.Outside = &needed, three(40)
	}
	return l
}

func largeRow(rng *rand.Rand) resale.Row {
	year, miles := 2016+rng.IntN(7), 20000+100000*rng.Float64()
	price := 34000 * (1 + .09*float64(year-2019)) * (1 - miles/300000) * (1 + .09*rng.NormFloat64())
	return resale.Row{Price: money.Amount(100 * int(price)), Mileage: &miles, ModelYear: year, Kind: []string{"asked", "sold"}[rng.IntN(2)],
		Date: lot.Date(fmt.Sprintf("2026-%02d-%02d", 5+rng.IntN(6), 1+rng.IntN(28)))}
}

func BenchmarkValue(b *testing.B) {
	c, k := large(), shipped(b)
	if faults := c.Check(); len(faults) > 0 {
		b.Fatal(faults)
	}
	b.ReportAllocs()
	for b.Loop() {
		if a, err := valuation.Value(c, k); err != nil || a.WalkAway == nil {
			b.Fatal(err, a.Reasons)
		}
	}
}

// BenchmarkEdit changes one figure of one line and values the case again with what the valuation before it left.
func BenchmarkEdit(b *testing.B) {
	c, k := large(), shipped(b)
	m := valuation.NewMemory()
	n := 0
	b.ReportAllocs()
	for b.Loop() {
		n++
		c.Repair.Lines[7].Materials.High = 100 + float64(n)
		if a, err := m.Value(c, k); err != nil || a.WalkAway == nil {
			b.Fatal(err, a.Reasons)
		}
	}
}

// BenchmarkEditBesideManyRows is BenchmarkEdit with 5,000 comparables, which no edit of a line fits again.
func BenchmarkEditBesideManyRows(b *testing.B) {
	c, k := large(), shipped(b)
	rng := rand.New(rand.NewPCG(5, 0))
	for len(c.Resale.Rows) < 5000 {
		c.Resale.Rows = append(c.Resale.Rows, largeRow(rng))
	}
	m := valuation.NewMemory()
	n := 0
	b.ReportAllocs()
	for b.Loop() {
		n++
		c.Repair.Lines[7].Materials.High = 100 + float64(n)
		if _, err := m.Value(c, k); err != nil {
			b.Fatal(err)
		}
	}
}
