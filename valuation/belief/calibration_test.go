package belief

import (
	"math"
	"math/rand/v2"
	"testing"

	"walkline/valuation/prob"
)

// Simulation-based calibration: a truth drawn from the belief before any buy, data drawn from the truth, and the place of
// the truth in the belief after the data must be uniform. Source: Talts, Betancourt, Simpson, Vehtari and Gelman,
// Validating Bayesian inference algorithms with simulation-based calibration, 2018 (from memory). Seeds are fixed; a
// histogram so uneven that it happens once in a thousand fails.
const (
	sbcRuns  = 1200
	sbcLimit = 0.001
)

// histogram counts places in 0..1 by tenths.
type histogram []int

func (h histogram) add(u float64) { h[min(len(h)-1, int(float64(len(h))*u))]++ }

// unevenness returns the chance of counts at least so uneven when every bar is as likely (chi-squared test).
func unevenness(h histogram) float64 {
	want := float64(sbcRuns) / float64(len(h))
	x := 0.0
	for _, c := range h {
		x += (float64(c) - want) * (float64(c) - want) / want
	}
	return prob.ChiSquaredTail(x, float64(len(h)-1))
}

func (h histogram) check(t *testing.T, what string) {
	t.Helper()
	if p := unevenness(h); p < sbcLimit {
		t.Errorf("%s: ranks %v are uneven (chance %.2g)", what, []int(h), p)
	}
}

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

func betaDraw(rng *rand.Rand, a, b float64) float64 {
	return prob.BetaQuantile(a, b, rng.Float64())
}

// The pooled ratios, with values of one build that go together, forecasts of unlike precision and an overall ratio.
func TestCalibrationOfRatios(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 1))
	const groups, rho = 4, 0.2
	sd := []float64{0.3, 0.2, 0.2, 0.2, 0.2} // in units of sigma
	prior := Independent(sd, 0.4, 5)
	overall, one, next := make(histogram, 10), make(histogram, 10), make(histogram, 10)
	for range sbcRuns {
		sigma := math.Sqrt(prior.B / gamma(rng, prior.A))
		truth := make([]float64, len(sd))
		for i := range truth {
			truth[i] = sigma * sd[i] * rng.NormFloat64()
		}
		var samples []Sample
		for range 1 + rng.IntN(8) {
			s := Sample{Weight: 1, Rho: rho}
			shared := rng.NormFloat64()
			for g := range groups {
				if rng.Float64() < 0.3 {
					continue
				}
				x := make([]float64, len(sd))
				x[0], x[1+g] = 1, 1
				unit := 0.5 + rng.Float64()
				e := math.Sqrt(rho)*shared + math.Sqrt(1-rho)*rng.NormFloat64()
				s.X, s.Scale, s.Y = append(s.X, x), append(s.Scale, unit), append(s.Y, Dot(x, truth)+sigma*unit*e)
			}
			if len(s.Y) > 0 {
				samples = append(samples, s)
			}
		}
		post := prior.Update(samples)
		place := func(h histogram, a T, x float64) { h.add(prob.TCDF((x-a.Mean)/a.Scale, a.DF)) }
		place(overall, post.Of([]float64{1, 0, 0, 0, 0}), truth[0])
		x := []float64{1, 0, 1, 0, 0}
		place(one, post.Of(x), Dot(x, truth))
		place(next, post.Next(x, 1), Dot(x, truth)+sigma*rng.NormFloat64())
	}
	overall.check(t, "overall ratio")
	one.check(t, "ratio of a trade")
	next.check(t, "ratio of the next build")
}

// The counts of a risk, without findings and with findings of every strength.
func TestCalibrationOfChances(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 1))
	prior := Chance{A: 3, B: 11}
	for _, informed := range []bool{false, true} {
		ranks := make(histogram, 10)
		for range sbcRuns {
			p := betaDraw(rng, prior.A, prior.B)
			var looks []Look
			for range rng.IntN(25) {
				l := Look{Weight: 1, Ratio: 1}
				if informed {
					l.Ratio = math.Exp(1.2 * rng.NormFloat64())
				}
				l.There = rng.Float64() < p*l.Ratio/(p*l.Ratio+1-p)
				looks = append(looks, l)
			}
			post := prior.Update(looks)
			ranks.add(prob.BetaCDF(p, post.A, post.B))
		}
		ranks.check(t, "chance of a risk")
	}
}

// The loading, from builds of two to six ratios that lean on the factor each in its own way.
func TestCalibrationOfTheLoading(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 1))
	before := NewLoading(0.3, nil)
	ranks := make(histogram, 10)
	for range sbcRuns {
		truth := before.Quantile(rng.Float64())
		var all []Scores
		for range rng.IntN(20) {
			s := Scores{Weight: 1}
			shared := rng.NormFloat64()
			for range 2 + rng.IntN(5) {
				items := float64(1 + rng.IntN(4))
				l := Lean{Sum: items, Squares: items}
				r := l.At(truth)
				s.Lean = append(s.Lean, l)
				s.Z = append(s.Z, r*shared+math.Sqrt(1-r*r)*rng.NormFloat64())
			}
			all = append(all, s)
		}
		ranks.add(NewLoading(0.3, all).below(truth))
	}
	ranks.check(t, "loading")
}

// below returns the chance of a loading below x.
func (b Loading) below(x float64) float64 {
	sum := 0.0
	for i, s := range b.share {
		left := b.at[i] - MostLoading/loadingSteps/2
		sum += s * math.Min(math.Max((x-left)/(MostLoading/loadingSteps), 0), 1)
	}
	return sum
}

// A histogram that is not uniform is found: a belief twice too sure.
func TestCalibrationCanFail(t *testing.T) {
	rng := rand.New(rand.NewPCG(15, 1))
	ranks := make(histogram, 10)
	for range sbcRuns {
		ranks.add(prob.NormCDF(2 * rng.NormFloat64()))
	}
	if unevenness(ranks) > sbcLimit {
		t.Error("a belief that is twice too sure passes")
	}
}
