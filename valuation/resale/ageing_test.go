package resale_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"walkline/valuation/lot"
	"walkline/valuation/resale"
)

// ageing returns what a table foretells of a year: prices fall by a tenth with each year of age, and those dated a year before
// the valuation lie off the others by a drift.
func ageing(t *testing.T, n int, drift float64) resale.Effect {
	t.Helper()
	rng := rand.New(rand.NewPCG(11, 2))
	var rows []resale.Row
	for i := range n {
		year, miles, day, off := 2014+rng.IntN(9), 52_000+8_000*rng.NormFloat64(), lot.Date("2024-05-01"), 0.0
		if i%2 == 0 {
			day, off = "2023-05-01", -drift+.1
		}
		price := 20_000 * math.Exp(-.1*float64(2024-year)+off+.05*rng.NormFloat64())
		rows = append(rows, resale.Row{Price: usd.FromMajor(price), ModelYear: year, Mileage: &miles, Kind: "sold", Date: day, Title: "rebuilt"})
	}
	s, b := rebuilt()
	s.Trim, s.SaleMonth, s.More = "", "", nil
	e, known := resale.Fit(rows, s, b, starter(t)).Ageing()
	if !known {
		t.Fatal("comparables tell nothing of ageing")
	}
	return e
}

// The slope that made the rows comes back; a drift of the market is taken for a trend in part, and in its direction. Construction: the rows
// are made with that slope.
func TestAgeingIsTheSlopeThatMadeTheRows(t *testing.T) {
	still := ageing(t, 200, 0)
	if math.Abs(still.Mean+.1) > .02 {
		t.Errorf("ageing %+v, made with -0.1 a year", still)
	}
	rising, falling := ageing(t, 200, .15), ageing(t, 200, -.15)
	if !(rising.Mean > still.Mean+.01 && falling.Mean < still.Mean-.01 && rising.Mean < still.Mean+.1) {
		t.Errorf("still %.4f, rising %.4f, falling %.4f", still.Mean, rising.Mean, falling.Mean)
	}
	if !(still.SD > 0 && still.SD < .06) {
		t.Errorf("doubt %.4f", still.SD)
	}
	s, b := rebuilt()
	if _, known := resale.Fit(nil, s, b, starter(t)).Ageing(); known {
		t.Error("no comparables, and ageing known")
	}
}
