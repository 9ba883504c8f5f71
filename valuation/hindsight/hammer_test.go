package hindsight_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"walkline/valuation/hammer"
	"walkline/valuation/hindsight"
)

// A market as the starter values have it is foretold as stated; one that turns half way is found out. Source: Dawid 1984 (from memory).
func TestHammerPricesAreHeldAgainstWhatWasForetold(t *testing.T) {
	rng := rand.New(rand.NewPCG(18, 1))
	var results []hammer.Result
	for range 200 {
		results = append(results, hammer.Result{Kind: hammer.Kind{Loss: []string{"collision"}, Condition: "starts"}, Finished: 9000, Work: 3000,
			Price: 6000 * .65 * math.Exp(.35*rng.NormFloat64())})
	}
	f := hindsight.Hammered(results)
	if f.N != 200 || f.Key != hindsight.HammerKey || !f.Coverage[0].Holds() || f.Uneven < .001 {
		t.Errorf("%+v", f)
	}
	for i := 100; i < 200; i++ {
		results[i].Price *= 4
	}
	if f := hindsight.Hammered(results); f.Uneven > .01 {
		t.Errorf("a market that turned is taken for foretold: %v", f.PIT)
	}
	if f := hindsight.Hammered(nil); f.N != 0 {
		t.Errorf("%+v", f)
	}
}
