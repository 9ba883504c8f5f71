package learn

import (
	"math"
	"math/rand/v2"
	"testing"

	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// normalFigure is the figure of a normal distribution.
func normalFigure(mean, sd float64) Figure {
	f := Figure{Mean: mean}
	for _, u := range Chances {
		f.Q = append(f.Q, mean+sd*prob.NormQuantile(u))
	}
	return f
}

// Ten forecasts of rain. Source: Brier, Monthly Weather Review 78 (1950), table 1 (from memory); the decomposition is
// Murphy's (1973). Brier's own score is twice today's.
func TestBrierTable(t *testing.T) {
	p := []float64{.7, .9, .8, .4, .2, 0, 0, 0, 0, .1}
	came := []bool{false, true, true, true, false, false, false, false, false, false}
	var calls []call
	for i := range p {
		calls = append(calls, call{p[i], came[i]})
	}
	r := reliability(calls)
	near(t, "Brier", r.Brier, .095, 1e-12)
	near(t, "calibration", r.Calibration, .095, 1e-12)
	near(t, "resolution", r.Resolution, .21, 1e-12)
	near(t, "uncertainty", r.Uncertainty, .21, 1e-12)
	near(t, "within", r.Within, 0, 1e-12)
	if r.N != 10 || r.Events != 3 || r.Bins[0].N != 4 {
		t.Errorf("counts: %+v", r)
	}
}

// The decomposition adds up where several chances share a tenth, too.
func TestReliabilityAddsUp(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	var calls []call
	for range 500 {
		p := rng.Float64()
		calls = append(calls, call{p, rng.Float64() < p})
	}
	r := reliability(calls)
	near(t, "sum", r.Calibration-r.Resolution+r.Uncertainty+r.Within, r.Brier, 1e-12)
	if r.Within < -0.01 || r.Within > 0.01 {
		t.Errorf("within-bin part %g: tenths are narrow", r.Within)
	}
}

// Source: closed form of the CRPS of a normal, Gneiting and Raftery 2007 (from memory; checked by integration).
func TestCRPSOfTheNormal(t *testing.T) {
	for _, c := range []struct{ mean, sd, y, want float64 }{
		{0, 1, 0, 0.233694977}, {0, 1, 1, 0.602441358}, {0, 1, 2, 1.452791822}, {10, 3, 14, 2.561801940}, {12000, 1500, 13250, 743.6302985},
	} {
		near(t, "crps", normalFigure(c.mean, c.sd).crps(c.y), c.want, 2e-4*c.sd)
	}
}

// Ensemble {1, 2, 4, 7} scored at 3 is 0.75. Source: the same, by hand.
func TestNaiveBaseline(t *testing.T) {
	xs := []float64{1, 2, 4, 7, 3}
	want := 0.0
	for i, y := range xs {
		var near, apart float64
		for j, a := range xs {
			for k, b := range xs {
				if j != i && k != i {
					apart += math.Abs(a-b) / 16
				}
			}
			if j != i {
				near += math.Abs(a-y) / 4
			}
		}
		if i == 4 && math.Abs(near-apart/2-0.75) > 1e-12 {
			t.Errorf("ensemble score %g, want 0.75", near-apart/2)
		}
		want += (near - apart/2) / 5
	}
	near(t, "baseline", climate(xs), want, 1e-12)
}

func TestPITOfTheNormal(t *testing.T) {
	f := normalFigure(100, 10)
	for _, x := range []float64{60, 80, 93.7, 100, 108, 131} {
		near(t, "cdf", f.cdf(x), prob.NormCDF((x-100)/10), 1e-9)
	}
	if f := (Figure{Q: make([]float64, len(Chances))}); f.cdf(1) != 0.5 {
		t.Error("a certain figure has no distribution to fall in")
	}
}

// sold is a build that was sold as foretold, to the cent.
func sold(id int64) Build {
	a := func(x money.Amount) *money.Amount { return &x }
	hammer, all, hours := money.Amount(400_000), 60.0, 40.0
	return Build{ID: id, Currency: "USD", Ending: Sold, Hammer: &hammer,
		Foretold: &Prediction{At: hammer, Resale: normalFigure(12000, 900), Profit: normalFigure(1500, 1000), Cost: normalFigure(3000, 500),
			Hours: normalFigure(40, 6), Days: normalFigure(60, 15), LossChance: 0.1,
			Terms: Terms{Rate: 30, HoldingPerDay: 5, CapitalRate: 0.1},
			Money: Ledger{Resale: 1_200_000, Selling: 20_000, Repair: 150_000, Hidden: 30_000, Labour: 120_000, Freight: 18_000, Storage: 0,
				Holding: 30_000, Capital: 7_479, Allowance: 25_000, Fees: 55_000}},
		Came: Came{Fees: a(55_000), Freight: a(18_000), Storage: a(0), Repair: a(150_000), Hidden: a(30_000), Selling: a(20_000), Hours: &hours,
			Days: Days{All: &all}, Sale: &Sale{Price: 1_200_000}}}
}

func TestMoneyByCauseAddsUp(t *testing.T) {
	b := sold(1)
	m, known := b.money()
	if !known || m.Came != m.Foretold+b.Foretold.Money.Allowance {
		t.Fatalf("came %d, foretold %d: want them the allowance apart", m.Came, m.Foretold)
	}
	rng := rand.New(rand.NewPCG(3, 4))
	var all []Build
	for i := range 50 {
		b := sold(int64(i))
		shift := func(p *money.Amount) { *p += money.Amount(rng.IntN(60_001) - 30_000) }
		for _, p := range []*money.Amount{b.Came.Fees, b.Came.Freight, b.Came.Repair, b.Came.Hidden, b.Came.Selling, b.Hammer, &b.Came.Sale.Price} {
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
	bare.Came = Came{Sale: &Sale{Price: 1_100_000}}
	r := Judge([]Build{whole, noFees, bare, {ID: 4, Ending: Sold}}, "USD")
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
	var all []Build
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
