package main

import (
	"math"

	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// medianPrice is the plainest forecast: the median asking price of the comparables.
func medianPrice(rows []resale.Row, s set) float64 {
	var xs []float64
	for _, r := range rows {
		xs = append(xs, s.currency.Major(r.Price))
	}
	return mid(xs)
}

// fewForRegression is the number of comparables below which three coefficients can't sensibly be fitted.
const fewForRegression = 5

// plainRegression forecasts by least squares of the log price on model year and mileage, and falls back on the median
// where that can't be fitted.
func plainRegression(sub resale.Row, rows []resale.Row, s set) float64 {
	var x [][]float64
	var y []float64
	for _, r := range rows {
		if r.Mileage != nil {
			x = append(x, plain(r))
			y = append(y, math.Log(s.currency.Major(r.Price)))
		}
	}
	fit, err := prob.LeastSquares(x, y)
	if err != nil || sub.Mileage == nil || len(x) < fewForRegression {
		return medianPrice(rows, s)
	}
	sum := 0.0
	for j, v := range plain(sub) {
		sum += v * fit.Coef[j]
	}
	return math.Exp(sum)
}

func plain(r resale.Row) []float64 {
	miles := *r.Mileage
	if r.Unit == "km" {
		miles /= lot.KilometresPerMile
	}
	return []float64{1, float64(r.ModelYear - 2000), miles / 10_000}
}
