package prob_test

import (
	"math"
	"testing"

	"walkline/valuation/prob"
)

// scores returns k columns of n stratified normal scores on one factor with the loading sqrt(rho): each pair correlates by rho.
func scores(n, k int, rho float64) [][]float64 {
	d := prob.NewDraws(n, 21)
	factor := make([]float64, n)
	d.Column("factor", factor)
	var all [][]float64
	for i := range k {
		c := make([]float64, n)
		d.Column(string(rune('a'+i)), c)
		prob.Loaded(c, factor, math.Sqrt(rho))
		all = append(all, c)
	}
	return all
}

// Source: closed forms of lognormals (mu 0, .5, 1; sigma .3, .5, .4): mean 5.858953, variance 2.598926 apart and 4.441446 at a
// correlation of .5 between the logarithms, where the Fenton-Wilkinson approximation has the logarithm at 1.707134 with sd .348817.
func TestSumsOfLognormals(t *testing.T) {
	const n = 1 << 17
	mu, sigma := []float64{0, .5, 1}, []float64{.3, .5, .4}
	for _, c := range []struct{ rho, variance float64 }{{0, 2.598926}, {.5, 4.441446}} {
		total := make([]float64, n)
		for k, column := range scores(n, 3, c.rho) {
			for i, z := range column {
				total[i] += math.Exp(mu[k] + sigma[k]*z)
			}
		}
		near(t, "mean", prob.Mean(total), 5.858953, .004)
		near(t, "variance", prob.Variance(total), c.variance, .02*c.variance)
		if c.rho > 0 { // matched in its first two moments, so near in the middle
			near(t, "median", prob.Quantiles(total, .5)[0], math.Exp(1.707134), .05)
		}
	}
}

// Source: closed form, the Pearson correlation of two lognormals of sigma .5 whose logarithms correlate by .5 is .468791.
func TestCorrelationOfALognormalPair(t *testing.T) {
	const n = 1 << 16
	pair := scores(n, 2, .5)
	for _, column := range pair {
		for i, z := range column {
			column[i] = math.Exp(.5 * z)
		}
	}
	a, b := prob.Mean(pair[0]), prob.Mean(pair[1])
	product := 0.0
	for i := range pair[0] {
		product += (pair[0][i] - a) * (pair[1][i] - b) / n
	}
	near(t, "Pearson", product/math.Sqrt(prob.Variance(pair[0])*prob.Variance(pair[1])), .468791, .012)
}

// Source: Rockafellar and Uryasev 2000, tables 1 to 4, as read in three transcriptions: a normal loss with the mean -.011 and the
// variance .00378529 has the value at risk .067847, .090200, .132128 and the expected shortfall .096975, .115908, .152977 at
// 90, 95 and 99 %.
func TestExpectedShortfallOfRockafellarAndUryasev(t *testing.T) {
	const n = 1 << 17
	profit := make([]float64, n)
	prob.NewDraws(n, 3).Column("profit", profit)
	for i, z := range profit {
		profit[i] = .011 + math.Sqrt(.00378529)*z
	}
	sorted := prob.Sorted(profit)
	for _, c := range []struct{ level, at, beyond float64 }{{.9, .067847, .096975}, {.95, .090200, .115908}, {.99, .132128, .152977}} {
		near(t, "value at risk", -prob.Quantile(sorted, 1-c.level), c.at, 3e-5)
		near(t, "expected shortfall", -prob.WorstMean(sorted, 1-c.level), c.beyond, 6e-5)
	}
}

// Source: closed form, a lognormal cost of m 7 and s .4 has at 95 % the value at risk 2117.394179 and the shortfall 2532.577333.
func TestExpectedShortfallOfALognormalCost(t *testing.T) {
	const n = 1 << 17
	profit := make([]float64, n)
	prob.NewDraws(n, 3).Column("cost", profit)
	for i, z := range profit {
		profit[i] = -math.Exp(7 + .4*z)
	}
	sorted := prob.Sorted(profit)
	near(t, "value at risk", -prob.Quantile(sorted, .05), 2117.394179, .5)
	near(t, "expected shortfall", -prob.WorstMean(sorted, .05), 2532.577333, 1)
}

// Source: Samuelson and Bazerman, MIT Sloan WP 1513-84: a company is worth v, even on 0 to 100, to its seller and 1.5 v to the
// buyer, and the seller takes any bid of v or more: the buyer's mean profit is -b^2/400, -9 at 60 and -25 at 100; with twice
// the worth it is nothing everywhere.
func TestAcquiringACompany(t *testing.T) {
	even := prob.NewTable([]float64{0, .25, 1}, []float64{0, 25, 100})
	for _, c := range []struct{ worth, bid, want float64 }{{1.5, 60, -9}, {1.5, 100, -25}, {1.5, 20, -1}, {2, 70, 0}, {2.5, 60, 9}} {
		chance, partial := even.Lower(c.bid)
		near(t, "mean profit", c.worth*partial-c.bid*chance, c.want, 1e-12)
	}
}

// Source: testdata/reference/kagel_levin_uniform.csv (Kagel and Levin 1986, from memory): of n signals even within eps of the
// truth, the highest lies eps (n-1)/(n+1) above it.
func TestHighestOfEvenSignals(t *testing.T) {
	for _, row := range table(t, "kagel_levin_uniform.csv") {
		even := prob.NewTable([]float64{0, 1}, []float64{-row["eps"], row["eps"]})
		const steps = 20000
		n, mean := row["n"], 0.0
		for i := range steps {
			u := (float64(i) + .5) / steps
			mean += even.Quantile(u) * n * math.Pow(u, n-1) / steps
		}
		near(t, "highest signal", mean, row["cond_expectation_adjustment"], 1e-5)
	}
}

// Source: testdata/reference/winners_curse_normal_normal.csv: what a lot is worth when one's own signal is the highest of n.
func TestWorthGivenTheHighestSignal(t *testing.T) {
	for _, row := range table(t, "winners_curse_normal_normal.csv") {
		var weight, sum float64
		const steps = 4000
		for i := range steps {
			v := -9 + 18*(float64(i)+.5)/steps
			z := (row["signal"] - v) / row["sigma_e"]
			w := prob.NormPDF(v) * prob.NormPDF(z) * math.Pow(prob.NormCDF(z), row["n_bidders"]-1)
			weight, sum = weight+w, sum+w*v
		}
		near(t, "worth", sum/weight, row["E_V_given_highest"], 1e-6)
	}
}

// Bidders who stay to their signal less c(n) break even or better: the winner pays what the second stays to, and c(n) is no less than
// the mean of the second highest error. It is less than that of the highest, so the winner did overrate the lot.
// Source: testdata/reference/normal_order_stats.csv; Milgrom and Weber 1982.
func TestWinnersConstantLiesBetweenTheTopTwo(t *testing.T) {
	for _, row := range table(t, "normal_order_stats.csv") {
		n := int(row["n"])
		if n < 3 || n > 30 {
			continue
		}
		if c := prob.WinnersConstant(n); !(c > row["E_second"] && c < row["E_max"]) {
			t.Errorf("%d bidders: %g is not between %g and %g", n, c, row["E_second"], row["E_max"])
		}
	}
}

// The tabulated PERT, from which scenarios are drawn, against the published quantiles of the exact one, and apart from those of the
// triangular distribution of the same three points. Source: testdata/reference/pert_triangular.csv, computed with SciPy 1.10.1.
func TestTabulatedPERTAgainstPublishedQuantiles(t *testing.T) {
	for _, row := range table(t, "pert_triangular.csv") {
		three := prob.Three{Low: row["a"], Likely: row["m"], High: row["b"]}
		scored, width := three.Score(), three.High-three.Low
		for name, p := range map[string]float64{"q05": .05, "q10": .1, "q50": .5, "q80": .8, "q90": .9, "q95": .95} {
			got := scored.At(prob.NormQuantile(p))
			near(t, "quantile "+name, got, row["pert_"+name], 2e-3*width)
		}
		if own := scored.At(prob.NormQuantile(.95)) - scored.At(prob.NormQuantile(.05)); own >= row["tri_q95"]-row["tri_q05"] {
			t.Errorf("%+v: nine tenths lie within %g, as wide as the triangular", three, own)
		}
	}
}
