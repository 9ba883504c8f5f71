package hindsight

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"walkline/valuation/learn"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/score"
)

// normalFigure is the figure of a normal distribution.
func normalFigure(mean, sd float64) learn.Figure {
	f := learn.Figure{Mean: mean}
	for _, u := range score.Chances {
		f.Q = append(f.Q, mean+sd*prob.NormQuantile(u))
	}
	return f
}

// sold is a build that was sold as foretold, to the cent.
func sold(id int64) learn.Build {
	a := func(x money.Amount) *money.Amount { return &x }
	hammer, all, hours := money.Amount(400_000), 60.0, 40.0
	return learn.Build{ID: id, Currency: "USD", Ending: learn.Sold, Hammer: &hammer,
		Foretold: &learn.Prediction{At: hammer, Resale: normalFigure(12000, 900), Profit: normalFigure(1500, 1000), Cost: normalFigure(3000, 500),
			Hours: normalFigure(40, 6), Days: normalFigure(60, 15), LossChance: 0.1,
			Terms: learn.Terms{Rate: 30, HoldingPerDay: 5, CapitalRate: 0.1},
			Money: learn.Ledger{Resale: 1_200_000, Selling: 20_000, Repair: 150_000, Hidden: 30_000, Labour: 120_000, Freight: 18_000, Storage: 0,
				Holding: 30_000, Capital: 7_479, Allowance: 25_000, Fees: 55_000}},
		Came: learn.Came{Fees: a(55_000), Freight: a(18_000), Storage: a(0), Repair: a(150_000), Hidden: a(30_000), Selling: a(20_000),
			Hours: &hours,
			Days:  learn.Days{All: &all}, Sale: &learn.Sale{Price: 1_200_000}}}
}

func TestMoneyByCauseAddsUp(t *testing.T) {
	b := sold(1)
	m, known := moneyIn(b)
	if !known || m.Came != m.Foretold+b.Foretold.Money.Allowance {
		t.Fatalf("came %d, forecast %d: want them the allowance apart", m.Came, m.Foretold)
	}
	rng := rand.New(rand.NewPCG(3, 4))
	var all []learn.Build
	for i := range 50 {
		b := sold(int64(i))
		shift := func(p *money.Amount) { *p += money.Amount(rng.IntN(60_001) - 30_000) }
		for _, p := range []*money.Amount{b.Came.Fees, b.Came.Freight, b.Came.Repair, b.Came.Hidden, b.Came.Selling, b.Hammer,
			&b.Came.Sale.Price} {
			shift(p)
		}
		*b.Came.Hours += 20 * rng.NormFloat64()
		*b.Came.Days.All += 20 * rng.NormFloat64()
		all = append(all, b)
	}
	r := Judge(all, "USD")
	check := func(foretold, came money.Amount, causes []Cause) {
		t.Helper()
		sum := foretold
		for _, c := range causes {
			sum += c.Difference
		}
		if sum != came {
			t.Errorf("causes lead from %d to %d, came %d", foretold, sum, came)
		}
	}
	check(r.Money.Foretold, r.Money.Came, r.Money.Causes)
	for _, m := range r.Money.Buys {
		check(m.Foretold, m.Came, m.Causes)
	}
	if len(r.Money.Buys) != 50 {
		t.Errorf("%d buys in the sums, want 50", len(r.Money.Buys))
	}
}

// What is not known leaves a build out of the figures that need it, and of no other; and it is said.
func TestUnknownIsNotZero(t *testing.T) {
	whole, noFees, bare := sold(1), sold(2), sold(3)
	noFees.Came.Fees = nil
	bare.Came = learn.Came{Sale: &learn.Sale{Price: 1_100_000}}
	r := Judge([]learn.Build{whole, noFees, bare, {ID: 4, Ending: learn.Sold}}, "USD")
	counts := map[string]int{"resale": 3, "profit": 1, "cost": 2, "hours": 2, "days": 2}
	for _, f := range r.Figures {
		if f.N != counts[f.Key] {
			t.Errorf("%s: %d outcomes, want %d", f.Key, f.N, counts[f.Key])
		}
	}
	if len(r.LeftOut) != 2 || r.Buys != 3 {
		t.Errorf("buys %d, left out %q", r.Buys, r.LeftOut)
	}
}

// Outcomes drawn from their own forecasts are covered as claimed, fall evenly, and beat the naive baseline.
func TestCalibratedForecastsAreFoundSo(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	var all []learn.Build
	for i := range 400 {
		b := sold(int64(i))
		mean := 8000 + 8000*rng.Float64()
		b.Foretold.Resale = normalFigure(mean, 900)
		b.Came.Sale.Price = money.Amount(100 * (mean + 900*rng.NormFloat64()))
		all = append(all, b)
	}
	f := Judge(all, "USD").Figures[0]
	for _, c := range f.Coverage {
		if !c.Holds() {
			t.Errorf("coverage of %g: %g (%g to %g)", c.Level, c.Share, c.Low, c.High)
		}
	}
	if skill, ok := f.Skill(); !ok || skill < 0.4 || f.Uneven < 0.01 {
		t.Errorf("skill %g, unevenness %g, PIT %v", skill, f.Uneven, f.PIT)
	}
}

// A score in money is a mean of money of one currency: ten thousand times as many yen beside it change no score and no ratio, and
// still count among the ranges that held.
func TestScoresAreInOneCurrency(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 8))
	var dollars, both []learn.Build
	for i := range 40 {
		b := sold(int64(i))
		b.Came.Sale.Price += money.Amount(rng.IntN(200_000))
		dollars = append(dollars, b)
		yen := sold(int64(100 + i))
		yen.Currency = "JPY"
		yen.Foretold.Resale = normalFigure(1.2e8, 9e6)
		yen.Came.Sale.Price = 121_000_000
		both = append(both, b, yen)
	}
	one, two := Judge(dollars, "USD"), Judge(both, "USD")
	f, g := one.Figures[0], two.Figures[0]
	if f.CRPS != g.CRPS || f.Naive == nil || g.Naive == nil || *f.Naive != *g.Naive || one.Ratios.N != two.Ratios.N ||
		one.Ratios.PRD != two.Ratios.PRD {
		t.Errorf("dollars %+v, with yen %+v", f, g)
	}
	if f.Unscored != 0 || g.Unscored != 40 || two.Figures[3].Unscored != 0 {
		t.Errorf("not scored: %d, with yen %d, hours %d", f.Unscored, g.Unscored, two.Figures[3].Unscored)
	}
	if f.N != 40 || g.N != 80 || two.Figures[3].N != 80 {
		t.Errorf("%d, with yen %d, hours %d", f.N, g.N, two.Figures[3].N)
	}
}

// Outcomes that are all alike leave no baseline to be better than.
func TestNoBaselineOfLikeOutcomes(t *testing.T) {
	r := Judge([]learn.Build{sold(1), sold(2), sold(3), sold(4)}, "USD")
	for _, f := range r.Figures {
		if _, ok := f.Skill(); ok || f.Naive != nil {
			t.Errorf("%s: a baseline of %g", f.Name, *f.Naive)
		}
	}
}

// BenchmarkJudge is the record over 200 and over 2,000 builds.
func BenchmarkJudge(b *testing.B) {
	for _, n := range []int{200, 2000} {
		var builds []learn.Build
		for i := range n {
			builds = append(builds, sold(int64(i)))
		}
		b.Run(fmt.Sprintf("%d builds", n), func(b *testing.B) {
			for b.Loop() {
				if Judge(builds, "USD").Buys != n {
					b.Fatal("builds are missing")
				}
			}
		})
	}
}
