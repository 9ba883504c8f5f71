package prob

import "gonum.org/v1/gonum/mathext"

// BetaCDF returns the chance that a beta variable with shapes a and b lies at or below x. Limits: a, b > 0.
func BetaCDF(x, a, b float64) float64 {
	switch {
	case x <= 0:
		return 0
	case x >= 1:
		return 1
	}
	return mathext.RegIncBeta(a, b, x)
}

// ChanceRange returns the range of chances that k successes in n trials leave, with the given confidence: never too
// narrow (Clopper and Pearson, Biometrika 26 (1934) 404-413, from memory). Limits: 0 <= k <= n, n >= 1.
func ChanceRange(k, n int, confidence float64) (low, high float64) {
	tail := (1 - confidence) / 2
	low, high = 0, 1
	if k > 0 {
		low = BetaQuantile(float64(k), float64(n-k+1), tail)
	}
	if k < n {
		high = BetaQuantile(float64(k+1), float64(n-k), 1-tail)
	}
	return low, high
}

// ChiSquaredTail returns the chance that a chi-squared variable with df degrees of freedom exceeds x. Limits: df > 0.
func ChiSquaredTail(x, df float64) float64 {
	if x <= 0 {
		return 1
	}
	return mathext.GammaIncRegComp(df/2, x/2)
}
