package learn

import (
	"math"
	"testing"

	"walkline/valuation/prob"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.9g, want %.9g", what, got, want)
	}
}

// Rats with a tumour, 4 of 14 in the last group, after Beta(1.4, 8.6) from the groups before it. Source: Gelman et al.,
// Bayesian Data Analysis, section 5.1 (figures computed from the stated beta; the book was not read).
func TestChanceOfTheRatTumours(t *testing.T) {
	looks := make([]look, 14)
	for i := range looks {
		looks[i] = look{weight: 1, there: i < 4, ratio: 1}
	}
	c := Chance{A: 1.4, B: 8.6}.update(looks)
	near(t, "a", c.A, 5.4, 1e-12)
	near(t, "b", c.B, 18.6, 1e-12)
	near(t, "mean", c.mean(), 0.225, 1e-12)
	near(t, "2.5 %", prob.BetaQuantile(c.A, c.B, 0.025), 0.085396, 1e-6)
	near(t, "97.5 %", prob.BetaQuantile(c.A, c.B, 0.975), 0.407789, 1e-6)
}

// The summed posterior with findings that say nothing is that of the counts: two ways to one number.
func TestChanceTwoWays(t *testing.T) {
	looks := []look{{weight: 1, there: true, ratio: 1}, {weight: 0.5, ratio: 1}, {weight: 1, ratio: 1}}
	exact := Chance{A: 3, B: 11}.update(looks)
	mean, variance := Chance{A: 3, B: 11}.posterior(looks)
	n := exact.A + exact.B
	near(t, "mean", mean, exact.mean(), 1e-6)
	near(t, "variance", variance, exact.mean()*(1-exact.mean())/(n+1), 1e-6)
}

// Batting averages of 1970: the shrinkage toward the grand mean. Source: Efron and Morris, JASA 70 (1975) 311-319, data
// as in stan-dev/example-models; published c 0.212 and Clemente 0.294 from memory, the digits here computed from the data.
func TestShrinkageOfTheBattingAverages(t *testing.T) {
	hits := []float64{18, 17, 16, 15, 14, 14, 13, 12, 11, 11, 10, 10, 10, 10, 10, 9, 8, 7}
	y, v := make([]float64, len(hits)), make([]float64, len(hits))
	for i, h := range hits {
		y[i] = h / 45
	}
	grand := prob.Mean(y)
	for i := range v {
		v[i] = grand * (1 - grand) / 45
	}
	tau := between(y, v, 0, 0)
	c := tau * tau / (tau*tau + v[0])
	near(t, "grand mean", grand, 0.265432, 1e-6)
	near(t, "c", c, 0.211653, 2e-6)
	samples := make([]sample, len(y))
	sd := []float64{1e4} // the grand mean is not known beforehand
	for range y {
		sd = append(sd, tau)
	}
	for i := range y {
		x := make([]float64, len(sd))
		x[0], x[1+i] = 1, 1
		samples[i] = sample{x: [][]float64{x}, y: []float64{y[i]}, scale: []float64{math.Sqrt(v[i])}, weight: 1}
	}
	p := knownSpread(sd).update(samples)
	near(t, "Clemente", p.mean[0]+p.mean[1], 0.293914, 2e-6)
	near(t, "Alvis", p.mean[0]+p.mean[18], 0.242176, 2e-6)
}

// knownSpread is the belief with sigma known to be 1.
func knownSpread(sd []float64) belief {
	const sure = 1e13
	p := independent(sd, 1, sure)
	p.b = sure
	return p
}

// Eight schools, the effect of school A at a spread between schools of 10. Source: Gelman et al., section 5.5; data from
// memory, figures computed from them.
func TestEightSchoolsAtAGivenSpread(t *testing.T) {
	y := []float64{28, 8, -3, 7, -1, 1, 18, 12}
	se := []float64{15, 10, 16, 11, 9, 11, 10, 18}
	sd := []float64{1e6}
	for range y {
		sd = append(sd, 10)
	}
	var samples []sample
	for i := range y {
		x := make([]float64, 9)
		x[0], x[1+i] = 1, 1
		samples = append(samples, sample{x: [][]float64{x}, y: y[i : i+1], scale: se[i : i+1], weight: 1})
	}
	a := knownSpread(sd).update(samples).of([]float64{1, 1, 0, 0, 0, 0, 0, 0, 0})
	near(t, "theta A", a.mean, 14.2414, 5e-5)
	near(t, "sd", a.sd, 9.1561, 5e-5)
	near(t, "spread that chance explains", tau2(y, []float64{225, 100, 256, 121, 81, 121, 100, 324}), 0, 0)
}

// The normal with known spread, and the normal-inverse-gamma, by hand. Figures: conjugate updating, computed.
func TestConjugateFigures(t *testing.T) {
	p := knownSpread([]float64{2})
	p.mean[0] = 10
	ones := func(y ...float64) []sample {
		var s []sample
		for i := range y {
			s = append(s, sample{x: [][]float64{{1}}, y: y[i : i+1], scale: []float64{3}, weight: 1})
		}
		return s
	}
	a := p.update(ones(12.4, 12.4, 12.4, 12.4, 12.4)).of([]float64{1})
	near(t, "normal mean", a.mean, 11.655172, 1e-6)
	near(t, "normal variance", a.sd*a.sd, 1.241379, 1e-6)

	q := belief{mean: []float64{0}, precision: []float64{1}, a: 2, b: 2}
	data := ones(1, 2, 4, 5)
	for i := range data {
		data[i].scale = nil
	}
	q = q.update(data)
	near(t, "k", q.precision[0], 5, 1e-12)
	near(t, "mu", q.mean[0], 2.4, 1e-12)
	near(t, "a", q.a, 4, 1e-12)
	near(t, "b", q.b, 10.6, 1e-12)
	n := q.next([]float64{1}, 1)
	near(t, "degrees of freedom", n.df, 8, 1e-12)
	near(t, "scale squared", n.sd*n.sd, 3.18, 1e-12)
}

// Two values of one build that go together: whitening against the plain formula for two correlated normals.
func TestCorrelatedPairByHand(t *testing.T) {
	const rho = 0.6
	y := []float64{1, 3}
	p := knownSpread([]float64{1e6}).update([]sample{{x: [][]float64{{1}, {1}}, y: y, weight: 1, rho: rho}})
	near(t, "mean", p.mean[0], 2, 1e-6)
	near(t, "variance", 1/p.precision[0], (1+rho)/2, 1e-6) // of the mean of two values of correlation rho
}
