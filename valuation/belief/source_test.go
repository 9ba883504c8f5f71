package belief

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
	looks := make([]Look, 14)
	for i := range looks {
		looks[i] = Look{1, i < 4, 1}
	}
	c := Chance{A: 1.4, B: 8.6}.Update(looks)
	near(t, "a", c.A, 5.4, 1e-12)
	near(t, "b", c.B, 18.6, 1e-12)
	near(t, "mean", c.Mean(), 0.225, 1e-12)
	near(t, "2.5 %", prob.BetaQuantile(c.A, c.B, 0.025), 0.085396, 1e-6)
	near(t, "97.5 %", prob.BetaQuantile(c.A, c.B, 0.975), 0.407789, 1e-6)
}

// The summed posterior with findings that say nothing is that of the counts: two ways to one number.
func TestChanceTwoWays(t *testing.T) {
	looks := []Look{{1, true, 1}, {0.5, false, 1}, {1, false, 1}}
	exact := Chance{A: 3, B: 11}.Update(looks)
	mean, variance := Chance{A: 3, B: 11}.posterior(looks)
	n := exact.A + exact.B
	near(t, "mean", mean, exact.Mean(), 1e-6)
	near(t, "variance", variance, exact.Mean()*(1-exact.Mean())/(n+1), 1e-6)
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
	tau := Between(y, v, 0, 0)
	c := tau * tau / (tau*tau + v[0])
	near(t, "grand mean", grand, 0.265432, 1e-6)
	near(t, "c", c, 0.211653, 2e-6)
	samples := make([]Sample, len(y))
	sd := []float64{1e4} // the grand mean is not known beforehand
	for range y {
		sd = append(sd, tau)
	}
	for i := range y {
		x := make([]float64, len(sd))
		x[0], x[1+i] = 1, 1
		samples[i] = Sample{X: [][]float64{x}, Y: []float64{y[i]}, Scale: []float64{math.Sqrt(v[i])}, Weight: 1}
	}
	p := knownSpread(sd).Update(samples)
	near(t, "Clemente", p.Mean[0]+p.Mean[1], 0.293914, 2e-6)
	near(t, "Alvis", p.Mean[0]+p.Mean[18], 0.242176, 2e-6)
}

// knownSpread is the belief with sigma known to be 1.
func knownSpread(sd []float64) Linear {
	const sure = 1e13
	p := Independent(sd, 1, sure)
	p.B = sure
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
	var samples []Sample
	for i := range y {
		x := make([]float64, 9)
		x[0], x[1+i] = 1, 1
		samples = append(samples, Sample{X: [][]float64{x}, Y: y[i : i+1], Scale: se[i : i+1], Weight: 1})
	}
	a := knownSpread(sd).Update(samples).Of([]float64{1, 1, 0, 0, 0, 0, 0, 0, 0})
	near(t, "theta A", a.Mean, 14.2414, 5e-5)
	near(t, "sd", a.Scale, 9.1561, 5e-5)
	near(t, "spread that chance explains", tau2(y, []float64{225, 100, 256, 121, 81, 121, 100, 324}), 0, 0)
}

// The normal with known spread, and the normal-inverse-gamma, by hand. Figures: conjugate updating, computed.
func TestConjugateFigures(t *testing.T) {
	p := knownSpread([]float64{2})
	p.Mean[0] = 10
	ones := func(y ...float64) []Sample {
		var s []Sample
		for i := range y {
			s = append(s, Sample{X: [][]float64{{1}}, Y: y[i : i+1], Scale: []float64{3}, Weight: 1})
		}
		return s
	}
	a := p.Update(ones(12.4, 12.4, 12.4, 12.4, 12.4)).Of([]float64{1})
	near(t, "normal mean", a.Mean, 11.655172, 1e-6)
	near(t, "normal variance", a.Scale*a.Scale, 1.241379, 1e-6)

	q := Linear{Mean: []float64{0}, Precision: []float64{1}, A: 2, B: 2}
	data := ones(1, 2, 4, 5)
	for i := range data {
		data[i].Scale = nil
	}
	q = q.Update(data)
	near(t, "k", q.Precision[0], 5, 1e-12)
	near(t, "mu", q.Mean[0], 2.4, 1e-12)
	near(t, "a", q.A, 4, 1e-12)
	near(t, "b", q.B, 10.6, 1e-12)
	n := q.Next([]float64{1}, 1)
	near(t, "degrees of freedom", n.DF, 8, 1e-12)
	near(t, "scale squared", n.Scale*n.Scale, 3.18, 1e-12)
}

// Two values of one build that go together: whitening against the plain formula for two correlated normals.
func TestCorrelatedPairByHand(t *testing.T) {
	const rho = 0.6
	y := []float64{1, 3}
	p := knownSpread([]float64{1e6}).Update([]Sample{{X: [][]float64{{1}, {1}}, Y: y, Weight: 1, Rho: rho}})
	near(t, "mean", p.Mean[0], 2, 1e-6)
	near(t, "variance", 1/p.Precision[0], (1+rho)/2, 1e-6) // of the mean of two values of correlation rho
}

// A find that the findings had all but promised moves the chance less than a surprise.
func TestFindingsAreTakenIntoAccount(t *testing.T) {
	c := Chance{A: 3, B: 11}
	expected, surprise := c.Update([]Look{{1, true, 30}}), c.Update([]Look{{1, true, 0.1}})
	if !(c.Mean() < expected.Mean() && expected.Mean() < surprise.Mean()) {
		t.Errorf("from %.3f to %.3f (expected) and %.3f (surprise)", c.Mean(), expected.Mean(), surprise.Mean())
	}
}
