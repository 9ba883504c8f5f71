package prob

import "math"

// auctionSpan and auctionSteps set the integrals over the winner's error, exact to about 1e-12 for a smooth integrand that
// vanishes at both ends.
const (
	auctionSpan  = 10.0
	auctionSteps = 400
)

// pivotal returns the mean and variance of the winner's error, in its own standard deviations, at the price where the last of
// n - 1 rivals stops: t under a density proportional to phi(t)^2 Phi(t)^(n-2). Limits: n >= 2.
// Source: Milgrom and Weber 1982; the integrals by the trapezoid rule.
func pivotal(n int) (mean, variance float64) {
	var weight, sum, square float64
	for i := 0; i <= auctionSteps; i++ {
		t := -auctionSpan + 2*auctionSpan*float64(i)/auctionSteps
		w := NormPDF(t) * NormPDF(t) * math.Pow(NormCDF(t), float64(n-2))
		weight, sum, square = weight+w, sum+w*t, square+w*t*t
	}
	mean = sum / weight
	return mean, square/weight - mean*mean
}

// WinnersConstant returns c(n): by how many standard deviations of its own error the winner of a symmetric common-value ascending
// auction with n bidders overrates a lot, so that bidding lower by s*c(n) breaks even; 0 below three bidders.
// Source: Milgrom and Weber 1982, see pivotal.
func WinnersConstant(n int) float64 {
	if n < 3 {
		return 0
	}
	mean, _ := pivotal(n)
	return mean
}

// WinnersVariance returns v(n): the variance of the winner's error as a share of what it was before it was known who won; 1 for
// one bidder, who learns nothing. Source: Milgrom and Weber 1982, see pivotal.
func WinnersVariance(n int) float64 {
	if n < 2 {
		return 1
	}
	_, variance := pivotal(n)
	return variance
}
