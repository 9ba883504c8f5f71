package learn

import (
	"math"
	"math/rand/v2"
	"testing"

	"walkline/valuation/prob"
	"walkline/valuation/score"
)

// gamma draws from the gamma distribution of shape a and scale 1. Source: Marsaglia and Tsang, ACM Trans. Math. Software 26
// (2000) 363-372 (from memory). Limits: a >= 1.
func gamma(rng *rand.Rand, a float64) float64 {
	d := a - 1.0/3
	for {
		x := rng.NormFloat64()
		v := math.Pow(1+x/math.Sqrt(9*d), 3)
		if v > 0 && math.Log(1-rng.Float64()) < x*x/2+d-d*v+d*math.Log(v) {
			return d * v
		}
	}
}

// Simulation-based calibration, as in package belief: the resale bias with forecasts that state their own spreads.
func TestCalibrationOfTheResaleBias(t *testing.T) {
	rng := rand.New(rand.NewPCG(14, 1))
	bias, spread := make([]int, 10), make([]int, 10)
	for range 1200 {
		prior := fitSales(nil).prior
		s := math.Sqrt(1 / gamma(rng, prior.A) * prior.B)
		truth := [2]float64{s * biasSD * rng.NormFloat64(), s * brandSD * rng.NormFloat64()}
		var facts []saleFact
		for range rng.IntN(15) {
			f := saleFact{weight: 1, sd: 0.05 + 0.15*rng.Float64(), brand: rng.Float64()}
			f.log = truth[0] + f.brand*truth[1] + s*f.sd*rng.NormFloat64()
			facts = append(facts, f)
		}
		post := fitSales(facts).post
		a := post.Of([]float64{1, 0})
		bias[int(10*prob.TCDF((truth[0]-a.Mean)/a.Scale, a.DF))]++
		spread[int(10*(1-prob.ChiSquaredTail(2*post.B/(s*s), 2*post.A)))]++
	}
	for what, ranks := range map[string][]int{"bias": bias, "spread": spread} {
		if p := score.Uneven(ranks); p < 0.001 {
			t.Errorf("%s: ranks %v are uneven (chance %.2g)", what, ranks, p)
		}
	}
}
