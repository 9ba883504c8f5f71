package prob

import (
	"math"
)

// RobustFit is a regression that rows far off hardly sway.
type RobustFit struct {
	Coef   []float64 // one per column of x
	Scale  float64   // of the residuals: their median absolute value over that of a standard normal
	Weight []float64 // of each row, 0..1
}

// Bisquare returns the weights that fall smoothly to nothing at c scales; 4.685 loses 5 % where errors are normal.
//
// Source: Beaton and Tukey, Technometrics 16 (1974) 147-185 (from memory).
func Bisquare(c float64) func(u float64) float64 {
	return func(u float64) float64 {
		v := 1 - (u/c)*(u/c)
		return math.Max(0, v) * math.Max(0, v)
	}
}

// Limits of the iteration of [Robust].
const (
	robustSteps   = 500
	robustSettled = 1e-12
	normalMedian  = 0.6745 // of the absolute value of a standard normal, to the digits that are usual for this scale
)

// Robust returns the regression of y on the columns of x whose rows are weighted by their residual over the scale: from least
// squares by least squares with new weights, the scale found anew at every step.
//
// Shape and errors: those of [LeastSquares]; where the scale comes to nothing, rows that lie on one plane, the fit is exact.
func Robust(x [][]float64, y []float64, weight func(u float64) float64) (RobustFit, error) {
	plain, err := LeastSquares(x, y)
	if err != nil {
		return RobustFit{}, err
	}
	f := RobustFit{Coef: plain.Coef, Weight: make([]float64, len(y))}
	for range robustSteps {
		residuals := f.weigh(x, y, weight)
		if f.Scale == 0 {
			return f, nil
		}
		next, err := LeastSquares(weighted(x, y, f.Weight))
		if err != nil {
			return RobustFit{}, err
		}
		moved := 0.0
		for i, row := range x {
			r := y[i] - inner(row, next.Coef)
			moved = math.Max(moved, math.Abs(r-residuals[i]))
		}
		f.Coef = next.Coef
		if moved < robustSettled*f.Scale {
			break
		}
	}
	f.weigh(x, y, weight)
	return f, nil
}

// weigh sets the scale and the weights by the residuals, which it returns.
func (f *RobustFit) weigh(x [][]float64, y []float64, weight func(u float64) float64) []float64 {
	residuals, sizes := make([]float64, len(y)), make([]float64, len(y))
	for i, row := range x {
		residuals[i] = y[i] - inner(row, f.Coef)
		sizes[i] = math.Abs(residuals[i])
	}
	f.Scale = middle(sizes) / normalMedian
	for i, r := range residuals {
		f.Weight[i] = 1
		if f.Scale > 0 && r != 0 {
			f.Weight[i] = weight(r / f.Scale)
		}
	}
	return residuals
}

// weighted returns the rows and values times the roots of their weights.
func weighted(x [][]float64, y, w []float64) ([][]float64, []float64) {
	a, b := make([][]float64, len(x)), make([]float64, len(y))
	for i, row := range x {
		root := math.Sqrt(w[i])
		a[i], b[i] = make([]float64, len(row)), root*y[i]
		for j, v := range row {
			a[i][j] = root * v
		}
	}
	return a, b
}

func inner(a, b []float64) float64 {
	sum := 0.0
	for i, v := range a {
		sum += v * b[i]
	}
	return sum
}
