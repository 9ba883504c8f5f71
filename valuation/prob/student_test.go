package prob

import (
	"math"
	"testing"
)

// Upper quantiles of Student's t from handbook tables (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2; values
// from memory, three decimals), and the Cauchy and two-degree closed forms.
func TestStudentMatchesTables(t *testing.T) {
	for _, c := range []struct{ u, df, want float64 }{
		{0.9, 1, 3.078}, {0.95, 1, 6.314}, {0.975, 2, 4.303}, {0.9, 4, 1.533}, {0.975, 4, 2.776}, {0.95, 5, 2.015},
		{0.99, 10, 2.764}, {0.975, 30, 2.042}, {0.95, 100, 1.660},
	} {
		if got := TQuantile(c.u, c.df); math.Abs(got-c.want) > 0.0006 {
			t.Errorf("t quantile %g at %g df = %.4f, table %.3f", c.u, c.df, got, c.want)
		}
	}
	for _, x := range []float64{-7, -1, 0, 0.3, 2, 40} {
		cauchy := 0.5 + math.Atan(x)/math.Pi
		two := 0.5 + x/(2*math.Sqrt(2+x*x))
		if math.Abs(TCDF(x, 1)-cauchy) > 1e-12 || math.Abs(TCDF(x, 2)-two) > 1e-12 {
			t.Errorf("cdf at %g: %g and %g, closed forms %g and %g", x, TCDF(x, 1), TCDF(x, 2), cauchy, two)
		}
		if d := math.Exp(TLogPDF(x, 1)); math.Abs(d-1/(math.Pi*(1+x*x))) > 1e-12 {
			t.Errorf("density at %g = %g", x, d)
		}
	}
}

func TestStudentQuantileInvertsCDF(t *testing.T) {
	for _, df := range []float64{1, 2.5, 4, 12, 80} {
		for _, u := range []float64{0.001, 0.1, 0.4, 0.5, 0.77, 0.999} {
			if got := TCDF(TQuantile(u, df), df); math.Abs(got-u) > 1e-9 {
				t.Errorf("cdf(quantile(%g)) at %g df = %g", u, df, got)
			}
		}
	}
}
