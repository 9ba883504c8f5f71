package prob

import (
	"errors"
	"fmt"
	"math"
)

// RatioStudy sums up how estimates compare with the prices that came: the ratio of each estimate to its price.
//
// Source: IAAO, Standard on Ratio Studies, for the measures and, beside the checks, its worked tables (read as fixtures of a
// public implementation, not in the standard itself). The standard's ranges are those of property assessment (COD 5 to 15,
// PRD 0.98 to 1.03, PRB -0.05 to 0.05): a yardstick for vehicles, no rule.
type RatioStudy struct {
	N            int     `json:"n"`
	Median       float64 `json:"median"`        // of the ratios
	Mean         float64 `json:"mean"`          // of the ratios
	WeightedMean float64 `json:"weighted_mean"` // sum of the estimates over the sum of the prices
	COD          float64 `json:"cod"`           // coefficient of dispersion, in percent: mean distance from the median ratio, over it
	PRD          float64 `json:"prd"`           // price-related differential: above 1, dear vehicles are estimated lower than cheap ones
	// price-related bias: change of the ratio, over the median, as the value doubles; NaN when untold
	PRB float64 `json:"prb"`
}

var errRatios = errors.New("a ratio study needs as many estimates as prices, at least one, all above zero")

// NewRatioStudy returns the study of estimates against prices, both in one unit. PRB is NaN for fewer than three pairs or
// where all values are alike.
// Errors: lengths that differ or are zero; a figure that is not above zero and finite.
func NewRatioStudy(estimates, prices []float64) (RatioStudy, error) {
	n := len(estimates)
	if n == 0 || n != len(prices) {
		return RatioStudy{}, errRatios
	}
	s := RatioStudy{N: n, PRB: math.NaN()}
	ratios := make([]float64, n)
	sums := [2]float64{}
	for i, a := range estimates {
		if !(a > 0 && prices[i] > 0) || math.IsInf(a, 0) || math.IsInf(prices[i], 0) {
			return RatioStudy{}, fmt.Errorf("%w: estimate %g, price %g", errRatios, a, prices[i])
		}
		ratios[i] = a / prices[i]
		sums[0], sums[1] = sums[0]+a, sums[1]+prices[i]
	}
	s.Median, s.Mean, s.WeightedMean = middle(ratios), Mean(ratios), sums[0]/sums[1]
	for _, r := range ratios {
		s.COD += 100 * math.Abs(r-s.Median) / s.Median / float64(n)
	}
	s.PRD = s.Mean / s.WeightedMean
	if b, err := priceRelatedBias(estimates, prices, ratios, s.Median); err == nil {
		s.PRB = b
	}
	return s, nil
}

// priceRelatedBias returns the slope of the ratios' relative distance from their median over the binary logarithm of the
// value, for which the mean of the price and of the estimate brought to the price's level stands.
func priceRelatedBias(estimates, prices, ratios []float64, median float64) (float64, error) {
	x, y := make([][]float64, len(ratios)), make([]float64, len(ratios))
	for i, r := range ratios {
		x[i] = []float64{1, math.Log2((estimates[i]/median + prices[i]) / 2)}
		y[i] = (r - median) / median
	}
	if len(x) < 3 {
		return 0, errShape
	}
	fit, err := LeastSquares(x, y)
	if err != nil {
		return 0, err
	}
	return fit.Coef[1], nil
}
