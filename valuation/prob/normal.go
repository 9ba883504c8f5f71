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
