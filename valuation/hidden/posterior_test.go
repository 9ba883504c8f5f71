package hidden_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"walkline/valuation/hidden"
	"walkline/valuation/prob"
)

// leaning are four risks that lean on the factor and share looks, and one that no look tells of.
func leaning() []hidden.Risk {
	tells := func(id string, present, absent float64) hidden.Evidence {
		return hidden.Evidence{Finding: id, IfPresent: present, IfAbsent: absent}
	}
	strong, weak := .8, .4
	return []hidden.Risk{
		{ID: "rail", Chance: hidden.Beta{A: 2, B: 8}, Loading: &strong, Findings: []hidden.Evidence{tells("ripple", .7, .1), tells("lamp",
			.8, .2)}},
		{ID: "mount", Chance: hidden.Beta{A: 3, B: 7}, Findings: []hidden.Evidence{tells("ripple", .9, .15), tells("knock", .6, .05)}},
		{ID: "hub", Chance: hidden.Beta{A: 1, B: 9}, Loading: &weak, Findings: []hidden.Evidence{tells("knock", .5, .1), tells("leak", .75,
			.02)}},
		{ID: "loom", Chance: hidden.Beta{A: 4, B: 6}, Findings: []hidden.Evidence{tells("lamp", .3, .25)}},
		{ID: "blind", Chance: hidden.Beta{A: 1, B: 5}},
	}
}

// sets are answers to them.
var sets = []map[string]string{
	{"ripple": "yes"}, {"ripple": "yes", "lamp": "yes", "knock": "yes", "leak": "yes"}, {"ripple": "no", "lamp": "no", "knock": "no",
		"leak": "no"},
	{"ripple": "yes", "knock": "no"}, {"lamp": "yes", "leak": "no", "knock": "yes"}, {"ripple": "no", "lamp": "yes"},
}

// plainState returns the chance of the answers when that damage is there: each look says "no" with a false alarm's complement, the
// smallest that any of its risks gives, times the ratio of "no" of each damage that is there.
func plainState(risks []hidden.Risk, there []bool, answers map[string]string) float64 {
	all := 1.0
	for finding, answer := range answers {
		alarm, ratio := 1.0, 1.0
		for i, r := range risks {
			for _, e := range r.Findings {
				if e.Finding != finding {
					continue
				}
				alarm = math.Min(alarm, e.IfAbsent)
				if there[i] {
					ratio *= (1 - e.IfPresent) / (1 - e.IfAbsent)
				}
			}
		}
		if no := (1 - alarm) * ratio; answer == "no" {
			all *= no
		} else {
			all *= 1 - no
		}
	}
	return all
}

// sample is a plain Monte Carlo written apart: the factor, then each damage, then the answers by their chance in that state.
type sample struct {
	weight, factor float64
	there          []bool
}

func simulate(risks []hidden.Risk, answers map[string]string, n int) []sample {
	rng := rand.New(rand.NewPCG(4, 2))
	out := make([]sample, n)
	for k := range out {
		z := rng.NormFloat64()
		there := make([]bool, len(risks))
		for i, r := range risks {
			rho := .3
			if r.Loading != nil {
				rho = *r.Loading
			}
			there[i] = rho*z+math.Sqrt(1-rho*rho)*rng.NormFloat64() > math.Sqrt2*math.Erfinv(1-2*r.Chance.Mean())
		}
		out[k] = sample{plainState(risks, there, answers), z, there}
	}
	return out
}

// Against a plain Monte Carlo: mean and spread of the factor after the answers, and the chance of each risk.
func TestAnswersMoveTheFactorAgainstPlainMonteCarlo(t *testing.T) {
	risks := leaning()
	before := scores(1 << 14)
	for _, answers := range sets {
		var all, mean, square float64
		chance := make([]float64, len(risks))
		for _, s := range simulate(risks, answers, 1_500_000) {
			all, mean, square = all+s.weight, mean+s.weight*s.factor, square+s.weight*s.factor*s.factor
			for i, is := range s.there {
				if is {
					chance[i] += s.weight
				}
			}
		}
		p := hidden.After(risks, answers, .3)
		factor := p.Factor(before)
		mean /= all
		near(t, fmt.Sprint("mean factor after ", answers), prob.Mean(factor), mean, .005)
		near(t, fmt.Sprint("spread after ", answers), math.Sqrt(prob.Variance(factor)), math.Sqrt(square/all-mean*mean), .005)
		for i, r := range risks {
			near(t, fmt.Sprint(r.ID, " after ", answers), p.Chances[i], chance[i]/all, .003)
		}
	}
}

// Against enumeration: all 32 states of five risks, summed over the factor by a grid of its own.
func TestAnswersAgainstEnumeration(t *testing.T) {
	risks := leaning()
	for _, answers := range sets {
		var all, moved float64
		chance := make([]float64, len(risks))
		for k := range 4001 {
			z := -8 + .004*float64(k)
			for state := range 1 << len(risks) {
				w, there := prob.NormPDF(z), make([]bool, len(risks))
				for i, r := range risks {
					rho := .3
					if r.Loading != nil {
						rho = *r.Loading
					}
					there[i] = state>>i&1 == 1
					q := prob.NormCDF((rho*z - prob.Edge(r.Chance.Mean())) / math.Sqrt(1-rho*rho))
					if !there[i] {
						q = 1 - q
					}
					w *= q
				}
				w *= plainState(risks, there, answers)
				all, moved = all+w, moved+w*z
				for i := range risks {
					if there[i] {
						chance[i] += w
					}
				}
			}
		}
		p := hidden.After(risks, answers, .3)
		for i, r := range risks {
			near(t, fmt.Sprint(r.ID, " after ", answers), p.Chances[i], chance[i]/all, 1e-6)
		}
		near(t, fmt.Sprint("mean factor after ", answers), prob.Mean(p.Factor(scores(1<<14))), moved/all, 2e-4)
	}
}

func scores(n int) []float64 {
	z := make([]float64, n)
	prob.NewDraws(n, 1).Column("lot/factor", z)
	return z
}

// All "yes" raises the factor and with it a risk that no look tells of; all "no" lowers and narrows what hidden damage comes to.
func TestBadSignsSayThatTheRestIsWorse(t *testing.T) {
	risks, before := leaning(), scores(4096)
	yes, no, none := hidden.After(risks, sets[1], .3), hidden.After(risks, sets[2], .3), hidden.After(risks, nil, .3)
	if !(yes.Chances[4] > none.Chances[4] && none.Chances[4] > no.Chances[4]) {
		t.Errorf("the blind risk: %.3f after all yes, %.3f before, %.3f after all no", yes.Chances[4], none.Chances[4], no.Chances[4])
	}
	if up, down := prob.Mean(yes.Factor(before)), prob.Mean(no.Factor(before)); !(up > .5 && down < -.1) {
		t.Errorf("mean factor %.3f after all yes, %.3f after all no", up, down)
	}
	if sd := math.Sqrt(prob.Variance(no.Factor(before))); sd >= 1 {
		t.Errorf("all no leaves a spread of %.3f", sd)
	}
	if none.Moves() != nil || !slices.Equal(none.Factor(before), before) {
		t.Error("without answers the factor moved")
	}
}

// Answers come in any order, and so do risks: 1e-12.
func TestOrderOfAnswersAndRisksIsIrrelevant(t *testing.T) {
	risks := leaning()
	turned := slices.Clone(risks)
	slices.Reverse(turned)
	for i := range turned {
		turned[i].Findings = slices.Clone(turned[i].Findings)
		slices.Reverse(turned[i].Findings)
	}
	a, b := hidden.After(risks, sets[1], .3), hidden.After(turned, sets[1], .3)
	for i := range risks {
		near(t, risks[i].ID, a.Chances[i], b.Chances[len(risks)-1-i], 1e-12)
	}
}

// Two ways to one number: the mean of a risk that is there after the answers against the draws.
func TestMeanAfterAnswersIsThatOfTheDraws(t *testing.T) {
	risks := leaning()
	for i := range risks {
		risks[i].Cost = prob.Three{Low: 100, Likely: 300, High: 900}
	}
	const n = 1 << 16
	d := prob.NewDraws(n, 3)
	for _, answers := range sets {
		p := hidden.After(risks, answers, .3)
		factor := p.Factor(scores(n))
		for i, r := range risks {
			out := r.Draw(p.There(i), hidden.Setting{Draws: d, Factor: factor, Loading: .3})
			near(t, fmt.Sprint(r.ID, " share after ", answers), float64(len(out.At))/n, p.Chances[i], .004)
			near(t, fmt.Sprint(r.ID, " cost after ", answers), p.IfPresent(i, nil).Cash, prob.Mean(out.Cash), 7)
		}
	}
}

// Findings that tie too many risks together are refused by name.
func TestTooManyTiedAnswersAreRefused(t *testing.T) {
	answers := map[string]string{}
	var r hidden.Risk
	for k := range 20 {
		id := fmt.Sprint("f", k)
		answers[id] = "yes"
		r.Findings = append(r.Findings, hidden.Evidence{Finding: id, IfPresent: .6, IfAbsent: .1})
	}
	r.Chance = hidden.Beta{A: 1, B: 3}
	if err := hidden.After([]hidden.Risk{r}, answers, .3).Err(); err != nil {
		t.Errorf("one risk with twenty answers: %v", err)
	}
	if err := hidden.After([]hidden.Risk{r, r}, answers, .3).Err(); err != hidden.ErrTied {
		t.Errorf("two risks with the same twenty answers: %v", err)
	}
}
