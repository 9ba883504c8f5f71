package prob_test

import (
	"math"
	"testing"

	"walkline/valuation/prob"
)

// Source: Clopper and Pearson's limits for 8 of 10 at 95 % (0.4439, 0.9748), as printed in tables of exact binomial limits
// (from memory); the ends by hand: 1 - 0.025^(1/n).
func TestExactRangeOfAChance(t *testing.T) {
	low, high := prob.ChanceRange(8, 10, 0.95)
	if math.Abs(low-0.4439) > 5e-5 || math.Abs(high-0.9748) > 5e-5 {
		t.Errorf("8 of 10: %g to %g", low, high)
	}
	low, high = prob.ChanceRange(0, 20, 0.95)
	if low != 0 || math.Abs(high-(1-math.Pow(0.025, 1.0/20))) > 1e-9 {
		t.Errorf("0 of 20: %g to %g", low, high)
	}
	if low, high = prob.ChanceRange(20, 20, 0.95); high != 1 || math.Abs(low-math.Pow(0.025, 1.0/20)) > 1e-9 {
		t.Errorf("20 of 20: %g to %g", low, high)
	}
}

// Source: chi-squared tables (from memory): 3.841 at 5 % with 1 degree of freedom, 16.919 with 9.
func TestChiSquaredTail(t *testing.T) {
	for df, x := range map[float64]float64{1: 3.841459, 9: 16.918978} {
		if p := prob.ChiSquaredTail(x, df); math.Abs(p-0.05) > 1e-6 {
			t.Errorf("%g with %g degrees: %g", x, df, p)
		}
	}
}

// The distribution function and the quantile take each other back. Beta(2, 3) by hand: 6x^2 - 8x^3 + 3x^4.
func TestBetaBothWays(t *testing.T) {
	for _, x := range []float64{0.1, 0.35, 0.8} {
		want := 6*x*x - 8*x*x*x + 3*x*x*x*x
		if p := prob.BetaCDF(x, 2, 3); math.Abs(p-want) > 1e-12 || math.Abs(prob.BetaQuantile(2, 3, p)-x) > 1e-9 {
			t.Errorf("at %g: %g, want %g", x, p, want)
		}
	}
}
