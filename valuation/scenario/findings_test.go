package scenario_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"walkline/valuation/hidden"
	"walkline/valuation/prob"
	"walkline/valuation/scenario"
)

// signed is the lot with two risks of which looks tell, and what they tell.
func signed() (scenario.Lot, map[string]string) {
	l := lot()
	l.Risks[0].Findings = []hidden.Evidence{{Finding: "gap", IfPresent: .7, IfAbsent: .1}, {Finding: "drip", IfPresent: .8, IfAbsent: .05}}
	l.Risks[0].Chance = hidden.Beta{A: 1, B: 3}
	strong := .7
	l.Risks = append(l.Risks, hidden.Risk{ID: "g", Name: "gearbox", Chance: hidden.Beta{A: 1, B: 5}, Loading: &strong,
		Cost:     prob.Three{Low: 500, Likely: 900, High: 2500},
		Findings: []hidden.Evidence{{Finding: "gap", IfPresent: .5, IfAbsent: .2}}})
	l.Chances = []float64{.25, 1. / 6}
	return l, map[string]string{"gap": "yes", "drip": "yes"}
}

// plainSigned plays that lot plainly: the factor, each damage, each line, every run weighed by the chance of the answers in it.
// It returns mean and spread of what repair and hidden damage come to.
func plainSigned(l scenario.Lot, answers map[string]string) (mean, sd float64) {
	rng := rand.New(rand.NewPCG(8, 1))
	var all, sum, square float64
	for range 300_000 {
		z := rng.NormFloat64()
		lean := func(rho float64) float64 { return rho*z + math.Sqrt(1-rho*rho)*rng.NormFloat64() }
		draw := func(t prob.Three, rho float64) float64 { return t.Quantile(prob.NormCDF(lean(rho))) }
		cost := draw(l.Lines[0].Hours["body"], .3)*30 + draw(l.Lines[0].Materials, .3) + draw(l.Lines[0].Parts[0].Options[0].Price, .3)
		if lean(.3) > prob.Edge(.3) {
			cost += draw(l.Lines[1].Outside, .3)
		}
		quiet := map[string]float64{"gap": .9, "drip": .95} // false alarms: the smallest of each
		for i, r := range l.Risks {
			if lean(*r.Loading) > prob.Edge(l.Chances[i]) {
				cost += draw(r.Cost, *r.Loading)
				for _, e := range r.Findings {
					quiet[e.Finding] *= (1 - e.IfPresent) / (1 - e.IfAbsent)
				}
			}
		}
		w := 1.0
		for finding, answer := range answers {
			if answer == "yes" {
				w *= 1 - quiet[finding]
			} else {
				w *= quiet[finding]
			}
		}
		all, sum, square = all+w, sum+w*cost, square+w*cost*cost
	}
	mean = sum / all
	return mean, math.Sqrt(square/all - mean*mean)
}

// Findings move lines and risks alike, as a plain Monte Carlo does it that knows no quadrature: "yes" and "no" throughout.
func TestFindingsAgainstPlainMonteCarlo(t *testing.T) {
	l, yes := signed()
	l.N = 1 << 15
	for _, answers := range []map[string]string{yes, {"gap": "no", "drip": "no"}, {"gap": "yes", "drip": "no"}} {
		belief := hidden.After(l.Risks, answers, l.Loading)
		l.Belief = &belief
		o := scenario.NewMemory(0).Play(l)
		cost := make([]float64, l.N)
		for i := range cost {
			cost[i] = o.Repair[i] + o.Hidden[i]
		}
		mean, sd := plainSigned(l, answers)
		near(t, "mean cost", prob.Mean(cost), mean, .008*mean)
		if answers["gap"] == "no" { // a "yes" that two risks share ties them; drawn each by its own chance, they spread wider
			near(t, "spread", math.Sqrt(prob.Variance(cost)), sd, .02*sd)
		}
	}
}

// No answers leave every draw as it was, to the bit, and so does an answer that tells of no risk.
func TestNoFindingsChangeNoDraw(t *testing.T) {
	l, _ := signed()
	before := scenario.NewMemory(0).Play(l)
	for _, answers := range []map[string]string{nil, {"other": "yes"}} {
		belief := hidden.After(l.Risks, answers, l.Loading)
		l.Belief = &belief
		if after := scenario.NewMemory(0).Play(l); !slices.Equal(after.Cost, before.Cost) || !slices.Equal(after.Days, before.Days) {
			t.Errorf("%v moved a draw", answers)
		}
	}
}
