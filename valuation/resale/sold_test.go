package resale_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// Source: the normal mean with a known variance by hand. Four pairs at 0.9 exactly leave a scatter of 4 x 0.05^2 / 7, so a precision of
// 4 / that; the belief from 0.90 over 0.95 to 1 has the mean 0.95 and the standard deviation of its modified PERT.
func TestSoldPricesAreLearnedFromPairs(t *testing.T) {
	before := prob.Three{Low: .9, Likely: .95, High: 1}
	pairs := []resale.Pair{{10000, 9000}, {20000, 18000}, {5000, 4500}, {8000, 7200}, {8000, 800}}
	got, ok := resale.LearnSold(pairs, before)
	own := 4 / (4 * .0025 / 7)
	start := .95 * .95 / before.Variance()
	want := math.Exp((own*math.Log(.9) + start*math.Log(.95)) / (own + start))
	if !ok || got.Pairs != 4 || got.Odd != 1 || math.Abs(got.Seen-.9) > 1e-9 || math.Abs(got.Share.Likely-want) > 1e-9 {
		t.Errorf("%+v, want %.4f", got, want)
	}
	if _, ok := resale.LearnSold(pairs[:2], before); ok {
		t.Error("two pairs teach")
	}
}

// Shops whose true factor is drawn from the belief: the range holds it about 95 times in 100, and more pairs come nearer to it.
func TestWhatPairsTeachIsCalibrated(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 15))
	before := prob.Three{Low: .9, Likely: .95, High: 1}
	const shops = 2000
	for _, n := range []int{3, 10, 40} {
		inside, off := 0, 0.0
		for range shops {
			truth := math.Log(.95) + math.Sqrt(before.Variance())/.95*rng.NormFloat64()
			var pairs []resale.Pair
			for range n {
				pairs = append(pairs, resale.Pair{Asked: 1e6, Sold: money.Amount(1e6 * math.Exp(truth+.05*rng.NormFloat64()))})
			}
			s, _ := resale.LearnSold(pairs, before)
			if math.Log(s.Share.Low) <= truth && truth <= math.Log(s.Share.High) {
				inside++
			}
			off += math.Abs(math.Log(s.Share.Likely)-truth) / shops
		}
		if share := float64(inside) / shops; share < .92 || share > .98 {
			t.Errorf("%d pairs: the range holds the truth in %.3f of shops", n, share)
		}
		if worst := .8 * .05 / math.Sqrt(float64(n)); off > worst*1.1 {
			t.Errorf("%d pairs: off by %.4f on average, the pairs' own mean by %.4f", n, off, worst)
		}
	}
}
