package prob_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"walkline/valuation/prob"
)

// Source: testdata/reference/normal_order_stats.csv, moments of the largest and second largest of n standard normals,
// against an integral of the order statistic's density over the package's own density and distribution function.
func TestNormalOrderStatistics(t *testing.T) {
	for _, row := range table(t, "normal_order_stats.csv") {
		n := row["n"]
		var first, square, second float64
		const steps = 4000
		for i := range steps {
			x := -9 + 18*(float64(i)+.5)/steps
			f, c := prob.NormPDF(x)*18/steps, prob.NormCDF(x)
			top := n * math.Pow(c, n-1) * f
			first += top * x
			square += top * x * x
			if n > 1 {
				second += n * (n - 1) * math.Pow(c, n-2) * (1 - c) * f * x
			}
		}
		near(t, "E max", first, row["E_max"], 1e-9)
		near(t, "Var max", square-first*first, row["Var_max"], 1e-9)
		if n > 1 {
			near(t, "E second", second, row["E_second"], 1e-9)
		}
	}
}

// Source: density proportional to phi(t)^2 Phi(t)^(n-2) (Milgrom and Weber 1982), its variance as worked out by quadrature outside this
// project; its mean by a midpoint rule of another width here.
func TestWinnersVariance(t *testing.T) {
	published := map[int]float64{2: .5, 3: .393897, 5: .299755, 10: .216613, 20: .164068, 50: .120705}
	for n, want := range published {
		near(t, "winner's variance", prob.WinnersVariance(n), want, 5e-7)
		var weight, sum, square float64
		for i := range 3001 {
			x := -8 + 16*(float64(i)+.5)/3001
			w := math.Exp(-x*x) * math.Pow(.5*math.Erfc(-x/math.Sqrt2), float64(n-2))
			weight, sum, square = weight+w, sum+w*x, square+w*x*x
		}
		near(t, "winner's variance by midpoints", prob.WinnersVariance(n), square/weight-sum*sum/weight/weight, 1e-9)
		if n > 2 {
			near(t, "winner's constant by midpoints", prob.WinnersConstant(n), sum/weight, 1e-9)
		}
	}
	near(t, "one bidder", prob.WinnersVariance(1), 1, 0)
}

// Source: Milgrom and Weber 1982: a bidder of a symmetric common-value auction drops out at what the lot is worth if the
// highest rival ties with him. With signals v + e and a flat prior of v that is his signal less c(n), c(n) being the mean
// of the error on which the top two of n tie. Played out: the largest of n-1 errors, weighted by the density with which
// the n-th falls on it.
func TestWinnersConstantAgainstATieForTheTop(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 7))
	const draws = 200000
	for _, n := range []int{3, 5, 10} {
		var weight, sum, square float64
		for range draws {
			top := math.Inf(-1)
			for range n - 1 {
				top = max(top, rng.NormFloat64())
			}
			w := math.Exp(-top * top / 2)
			weight, sum, square = weight+w, sum+w*top, square+w*w*top*top
		}
		se := math.Sqrt(square) / weight // of a weighted mean, from above
		near(t, "winner's constant", prob.WinnersConstant(n), sum/weight, 4*se)
		if se > .01 {
			t.Errorf("%d bidders: standard error %.4f tells nothing", n, se)
		}
	}
}
