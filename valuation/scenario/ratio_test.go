package scenario_test

import (
	"math"
	"testing"

	"walkline/valuation/prob"
	"walkline/valuation/repair"
	"walkline/valuation/scenario"
)

// Certain hours become lognormal with the stated log sd and their own median; two trades' logs have the correlation loading
// squared; what has no spread stays certain. Closed forms of the lognormal and of the one-factor copula.
func TestSpreadsAreLognormal(t *testing.T) {
	line := func(trade string) repair.Line {
		return repair.Line{ID: trade, Job: trade, Hours: map[string]prob.Three{trade: prob.Certain(10)}}
	}
	l := scenario.Lot{Lines: []repair.Line{line("body"), line("paint"), line("trim")}, Loading: 0.6, N: 8192, Seed: 3,
		Rates: map[string]float64{"body": 1, "paint": 1, "trim": 1}, Time: scenario.Time{HoursPerWeek: 40, DaysToSell: prob.Certain(20)},
		Spreads: scenario.Spreads{"hours/body": 0.3, "hours/paint": 0.3, "days_to_sell": 0.5}}
	o := scenario.NewMemory(0).Play(l)
	logs := func(k int) []float64 {
		c := o.Lines[k].Costs(l.N)
		for i, x := range c {
			c[i] = math.Log(x / 10)
		}
		return c
	}
	body, paint, trim := logs(0), logs(1), logs(2)
	near := func(what string, got, want, within float64) {
		t.Helper()
		if math.Abs(got-want) > within {
			t.Errorf("%s: %g, want %g", what, got, want)
		}
	}
	near("log sd", math.Sqrt(prob.Variance(body)), 0.3, 0.01)
	near("median", prob.Quantile(prob.Sorted(body), 0.5), 0, 0.01)
	near("trim, certain", prob.Variance(trim), 0, 1e-20)
	cross := 0.0
	for i := range body {
		cross += body[i] * paint[i] / float64(l.N)
	}
	near("correlation", cross/0.09, 0.36, 0.03)
	near("mean days", prob.Mean(o.Days)-prob.Mean(o.Hours)/40*7, 20*math.Exp(0.125), 0.5)
	again := scenario.NewMemory(1 << 24)
	for range 2 { // drawn, then remembered
		if got := again.Play(l).Cost[7]; got != o.Cost[7] {
			t.Errorf("a memory changes the outcome from %g to %g", o.Cost[7], got)
		}
	}
}
