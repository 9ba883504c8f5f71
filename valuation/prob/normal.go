package prob

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// NormPDF returns the standard normal density at z.
func NormPDF(z float64) float64 { return math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) }

// NormCDF returns the standard normal distribution function at z.
func NormCDF(z float64) float64 { return 0.5 * math.Erfc(-z/math.Sqrt2) }

// NormQuantile returns the z below which a standard normal lies with chance p; -Inf at 0, +Inf at 1.
// Limits: p outside 0..1 is a bug and panics.
func NormQuantile(p float64) float64 {
	switch {
	case p == 0:
		return math.Inf(-1)
	case p == 1:
		return math.Inf(1)
	}
	return distuv.UnitNormal.Quantile(p)
}

// WinnersConstant returns c(n): by how many standard deviations of the shared error the winner of a symmetric
// common-value ascending auction with n bidders overrates a lot, so that bidding lower by s*c(n) breaks even. It is the
// mean of t under a density proportional to phi(t)^2 Phi(t)^(n-2), and 0 below three bidders.
// Source: Milgrom and Weber 1982; the integral by the trapezoid rule on [-10, 10], exact to about 1e-12 for a smooth
// integrand that vanishes at both ends, as 4,000 steps are.
func WinnersConstant(n int) float64 {
	if n < 3 {
		return 0
	}
	const steps = 400
	var weight, sum float64
	for i := 0; i <= steps; i++ {
		t := -10 + 20*float64(i)/steps
		w := NormPDF(t) * NormPDF(t) * math.Pow(NormCDF(t), float64(n-2))
		weight += w
		sum += w * t
	}
	return sum / weight
}
