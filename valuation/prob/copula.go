package prob

import "math"

// Loaded mixes a column of scores of its own with a common factor: rho*factor + sqrt(1-rho^2)*own, in place. Both being
// standard normal, so is the mix: a one-factor Gaussian copula in which two columns of loadings a and b have the
// correlation a*b. Shape: own and factor have one length. Limits: rho in 0..1.
func Loaded(own, factor []float64, rho float64) {
	if rho == 0 {
		return
	}
	rest := math.Sqrt(1 - rho*rho)
	for i, z := range own {
		own[i] = rho*factor[i] + rest*z
	}
}

// Edge returns the score above which an event of chance p lies: a high common factor brings it about.
func Edge(p float64) float64 { return NormQuantile(1 - p) }
