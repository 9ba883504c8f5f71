package learn

import (
	"encoding/json"
	"math/rand/v2"
	"testing"

	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// pick returns one of the values.
func pick[T any](rng *rand.Rand, xs ...T) T { return xs[rng.IntN(len(xs))] }

// odd is a build with figures that are missing, nothing, huge, negative or as old as they can be.
func odd(rng *rand.Rand, id int64) Build {
	b := built(id, pick(rng, 0, 1e-9, 0.3, 1, 2, 7, 1e9), 0)
	b.Closed = pick(rng, "", "2026-11-19", "1950-01-01", "2099-01-01", lot.Date("never"))
	b.Ending, b.Currency = pick(rng, Endings...), pick(rng, "USD", "JPY", "", "???")
	amount := func() money.Amount { return pick(rng, money.Amount(0), -5_000, 1, 20_000, 1<<50) }
	for range rng.IntN(4) {
		b.Came.Receipts = append(b.Came.Receipts, Receipt{Line: pick(rng, "", "a", "b", "z"), Risk: pick(rng, "", "rail"),
			Part: pick(rng, "", "cover"),
			Kind: pick(rng, PartKind, MaterialsKind, OutsideKind, HiddenKind), Source: pick(rng, "", "used", "made"), Paid: amount()})
	}
	if rng.IntN(2) == 0 {
		asked, days := amount(), pick(rng, -3.0, 0, 1, 400)
		b.Came.Sale, b.Came.Days.Sell = &Sale{Price: amount(), Asked: &asked, Brand: pick(rng, "", "rebuilt")}, &days
	}
	b.Came.Risks = map[string]Seen{pick(rng, "rail", "tower", "leak"): pick(rng, Found, NotThere, NotKnown, Seen("odd"))}
	b.Foretold.Risks[0].Base, b.Foretold.Risks[0].Chance = pick(rng, 0, 0.2, 1), pick(rng, 0, 1e-12, 0.5, 1)
	p := b.Foretold
	p.Resale = pick(rng, p.Resale, Figure{}, normalFigure(0, 0), normalFigure(9000, 0), normalFigure(100, 90))
	p.Terms = Terms{Brand: pick(rng, "", "rebuilt"), BrandShare: pick(rng, 0, 0.5, 1), AskedToSold: pick(rng, 0, 0.95),
		AskedShare: rng.Float64(), DaysToSell: pick(rng, 0, 30.0), DaysSD: pick(rng, 0, 9.0),
		ResaleAllow: pick(rng, 0, 300, 1e6), CostAllow: pick(rng, 0, 100.0)}
	if rng.IntN(6) == 0 {
		b.Foretold = nil
	}
	return b
}

// Whatever was entered, proposals are numbers, in their range, and say why.
func TestOddBuildsGiveSoundProposals(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 1))
	for shop := range 400 {
		var builds []Build
		for i := range rng.IntN(12) {
			builds = append(builds, odd(rng, int64(i)))
		}
		now := Factors{HalfLife: pick(rng, 0, 1e-3, 365, 1e6)}
		for _, p := range Propose(builds, today, now, starter) {
			if _, err := json.Marshal(p); err != nil {
				t.Fatalf("shop %d, %s: %v in %+v", shop, p.Key, err, p)
			}
			v := p.Proposed
			if !(v.Low <= v.At+1e-9 && v.At <= v.High+1e-9) || v.At <= 0 || p.Unit == ChanceUnit && v.At >= 1 || len(p.Why) == 0 ||
				p.Pull < -1e-9 || p.Pull > 1 {
				t.Errorf("shop %d, %s: %+v, pull %g, why %q", shop, p.Key, v, p.Pull, p.Why)
			}
			now = Apply(now, p)
		}
		if _, err := json.Marshal(now); err != nil {
			t.Fatalf("shop %d: %v", shop, err)
		}
	}
}
