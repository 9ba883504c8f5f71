package hindsight

import (
	"encoding/json"
	"math/rand/v2"
	"testing"

	"walkline/valuation/learn"
	"walkline/valuation/money"
)

// Whatever was entered, the record is made of numbers, and its sums of money add up.
func TestOddBuildsGiveASoundRecord(t *testing.T) {
	rng := rand.New(rand.NewPCG(22, 1))
	amounts := []money.Amount{0, -5_000, 1, 1_200_000, 1 << 45}
	for shop := range 300 {
		var builds []learn.Build
		for i := range rng.IntN(9) {
			b := sold(int64(i))
			b.Came.Sale.Price, *b.Hammer, *b.Came.Repair = amounts[rng.IntN(5)], amounts[rng.IntN(5)], amounts[rng.IntN(5)]
			*b.Came.Days.All, *b.Came.Hours = float64(rng.IntN(3))*1e4-1e4, float64(rng.IntN(3))*1e5
			p := b.Foretold
			p.Resale = []learn.Figure{p.Resale, {}, normalFigure(0, 0), normalFigure(-3, 1), normalFigure(5000, 0)}[rng.IntN(5)]
			p.Profit = []learn.Figure{p.Profit, {}, normalFigure(10, 0)}[rng.IntN(3)]
			p.Risks, b.Came.Risks = []learn.Risk{{ID: "r", Chance: float64(rng.IntN(3)) / 2}},
				map[string]learn.Seen{"r": learn.Seen([]string{"found", "not there", "?"}[rng.IntN(3)])}
			b.Currency = []string{"USD", "USD", "JPY", "???"}[rng.IntN(4)]
			for _, lost := range []func(){func() { b.Hammer = nil }, func() { b.Came.Sale = nil }, func() { b.Came.Hours = nil },
				func() { b.Foretold = nil }} {
				if rng.IntN(8) == 0 {
					lost()
				}
			}
			builds = append(builds, b)
		}
		r := Judge(builds, "USD")
		if _, err := json.Marshal(r); err != nil {
			t.Fatalf("shop %d: %v", shop, err)
		}
		sum := r.Money.Foretold
		for _, c := range r.Money.Causes {
			sum += c.Difference
		}
		if sum != r.Money.Came {
			t.Errorf("shop %d: causes lead to %d, made %d", shop, sum, r.Money.Came)
		}
	}
}
