package hidden_test

import (
	"testing"

	"walkline/valuation/hidden"
	"walkline/valuation/prob"
)

// Two ways to one number: the mean by quadrature against the mean over the scenarios in which the damage is drawn.
func TestMeanIfPresentIsThatOfTheDraws(t *testing.T) {
	const n = 1 << 16
	rates := map[string]float64{"body": 40}
	for _, c := range []struct{ chance, loading float64 }{{.25, .6}, {.05, .6}, {.8, .9}, {.3, 0}, {.25, .3}} {
		loading := c.loading
		r := hidden.Risk{ID: "r", Cost: prob.Three{Low: 100, Likely: 300, High: 900}, Days: prob.Three{Low: 1, Likely: 2, High: 9},
			Hours: map[string]prob.Three{"body": {Low: 1, Likely: 3, High: 10}}, Loading: &loading}
		d := prob.NewDraws(n, 3)
		factor := make([]float64, n)
		d.Column("lot/factor", factor)
		out := r.Draw(hidden.There{Chance: c.chance}, hidden.Setting{Draws: d, Factor: factor, Rates: rates})
		m := r.MeanIfPresent(c.chance, 0, rates)
		near(t, "cash", m.Cash, prob.Mean(out.Cash), 6)
		near(t, "labour", m.Labour, prob.Mean(out.Labour), 3)
		near(t, "days", m.Days, prob.Mean(out.Days), .06)
	}
}

// Without a common factor, or when the damage is certain, it is the judgement's own mean, (low + 4 likely + high) / 6.
func TestMeanIfPresentWithoutAFactor(t *testing.T) {
	r := hidden.Risk{ID: "r", Cost: prob.Three{Low: 100, Likely: 300, High: 900}}
	for _, c := range []struct{ chance, loading float64 }{{.2, 0}, {1, .6}, {0, .6}} {
		near(t, "cash", r.MeanIfPresent(c.chance, c.loading, nil).Cash, 2200./6, 1e-9)
	}
}
