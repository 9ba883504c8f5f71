package main

import (
	"math"

	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// references are the methods that the model is held against, each computed on the same comparables in the same run.
var references = []method{
	{"median of the comparables", medianPrice},
	{"log least squares, mileage and year", plainRegression},
	{"log bisquare regression, mileage and year", robustRegression},
	{"ridge, all columns", ridge},
	{"random forest on the comparables", forest},
	{"pooling: mileage, year, trim, Student-t", pooling},
}

// medianPrice is the plainest forecast: the median asking price of the comparables.
func medianPrice(t task) float64 {
	var xs []float64
	for _, r := range t.comps {
		xs = append(xs, t.set.currency.Major(r.Price))
	}
	return mid(xs)
}

// fewForRegression is the number of comparables below which three coefficients can't sensibly be fitted.
const fewForRegression = 5

// plainRegression forecasts by least squares of the log price on model year and mileage, and falls back on the median
// where that can't be fitted.
func plainRegression(t task) float64 {
	return regression(t, func(x [][]float64, y []float64) ([]float64, error) {
		fit, err := prob.LeastSquares(x, y)
		return fit.Coef, err
	})
}

// bisquareTuning loses 5 % against least squares where errors are normal.
const bisquareTuning = 4.685

// robustRegression forecasts as plainRegression does, but by a regression that gross errors hardly sway.
func robustRegression(t task) float64 {
	return regression(t, func(x [][]float64, y []float64) ([]float64, error) {
		fit, err := prob.Robust(x, y, prob.Bisquare(bisquareTuning))
		return fit.Coef, err
	})
}

func regression(t task, fit func(x [][]float64, y []float64) ([]float64, error)) float64 {
	var x [][]float64
	var y []float64
	for _, r := range t.comps {
		if r.Mileage != nil {
			x = append(x, plain(r))
			y = append(y, math.Log(t.set.currency.Major(r.Price)))
		}
	}
	if t.subject.Mileage == nil || len(x) < fewForRegression {
		return medianPrice(t)
	}
	coef, err := fit(x, y)
	if err != nil {
		return medianPrice(t)
	}
	return math.Exp(dot(plain(t.subject), coef))
}

func plain(r resale.Row) []float64 {
	return []float64{1, float64(r.ModelYear - 2000), tenThousands(r)}
}

// tenThousands returns the mileage of a row in 10,000 miles.
func tenThousands(r resale.Row) float64 {
	miles := *r.Mileage
	if r.Unit == "km" {
		miles /= lot.KilometresPerMile
	}
	return miles / 10_000
}

// The reference by pooling: usual choices, none of them tuned.
const (
	poolDF       = 4    // degrees of freedom of the errors
	poolWorth    = 4    // observations that the prior of a spread is worth
	poolTrimSD   = 0.06 // spread of trims on the log of the price
	poolSteps    = 40
	leastError   = 0.01 // the errors' scale is never below
	leastSlopeSD = 0.1  // of a slope among models, as a share of it
)

// pooling forecasts by a plain partial pooling: level, year and mileage with the means and spreads of the other models' own
// least-squares slopes as priors, trims with one spread, Student-t errors.
func pooling(t task) float64 {
	p := t.slopes
	m := &prob.Mixed{DF: poolDF, Residual: prob.Scale{SD: p.residual, Worth: poolWorth}, Least: leastError,
		Terms:  []prob.Term{{SD: 10, Group: -1}, {Mean: p.year.Mean, SD: p.year.SD, Group: -1}, {Mean: p.miles.Mean, SD: p.miles.SD, Group: -1}},
		Groups: []prob.Scale{{SD: poolTrimSD, Worth: poolWorth}}}
	trims := map[string]int{}
	for _, r := range t.comps {
		if _, ok := trims[r.Trim]; !ok && r.Trim != "" {
			trims[r.Trim] = len(m.Terms)
			m.Terms = append(m.Terms, prob.Term{Group: 0})
		}
	}
	for _, r := range t.comps {
		m.Rows, m.Unknown = append(m.Rows, poolEntries(t, r, trims)), append(m.Unknown, nil)
		m.Y, m.Like = append(m.Y, math.Log(t.set.currency.Major(r.Price))), append(m.Like, 1)
	}
	m.Target = poolEntries(t, t.subject, trims)
	m.Prepare()
	return math.Exp(prob.Dot(m.Target, m.Solve(m.Start(), poolSteps).Coef))
}

// poolEntries returns what a vehicle has of each effect, measured from the subject.
func poolEntries(t task, r resale.Row, trims map[string]int) []prob.Entry {
	out := []prob.Entry{{Term: 0, X: 1}, {Term: 1, X: float64(r.ModelYear - t.subject.ModelYear)}}
	if r.Mileage != nil && t.subject.Mileage != nil {
		out = append(out, prob.Entry{Term: 2, X: tenThousands(r) - tenThousands(t.subject)})
	}
	if at, ok := trims[r.Trim]; ok {
		out = append(out, prob.Entry{Term: at, X: 1})
	}
	return out
}

// slopes are the plain slopes of other models: means and spreads, and the usual residual.
type slopes struct {
	year, miles resale.Effect
	residual    float64
}

// otherSlopes returns what the slopes of each other model's own least-squares fit have in common: of the models of the same set, or where
// that holds a single one, of the other sets'.
func otherSlopes(sets []set, at int, without string) slopes {
	var years, miles, residuals []float64
	take := func(s set, without string) {
		groups, names := byModel(s.rows)
		for _, name := range names {
			if fit, err := modelFit(groups[name], s); err == nil && name != without {
				years, miles, residuals = append(years, fit.Coef[1]), append(miles, fit.Coef[2]), append(residuals, fit.ResidualSD)
			}
		}
	}
	take(sets[at], without)
	if len(years) == 0 {
		for i, s := range sets {
			if i != at {
				take(s, "")
			}
		}
	}
	wide := func(xs []float64) resale.Effect {
		return resale.Effect{Mean: mid(xs), SD: math.Max(deviation(xs), leastSlopeSD*math.Abs(mid(xs)))}
	}
	return slopes{wide(years), wide(miles), mid(residuals)}
}

func modelFit(rows []resale.Row, s set) (prob.Regression, error) {
	var x [][]float64
	var y []float64
	for _, r := range rows {
		if r.Mileage != nil {
			x, y = append(x, plain(r)), append(y, math.Log(s.currency.Major(r.Price)))
		}
	}
	return prob.LeastSquares(x, y)
}
