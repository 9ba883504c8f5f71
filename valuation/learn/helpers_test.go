package learn

import (
	"math"
	"testing"

	"walkline/valuation/prob"
	"walkline/valuation/score"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.9g, want %.9g", what, got, want)
	}
}

// normalFigure is the figure of a normal distribution.
func normalFigure(mean, sd float64) Figure {
	f := Figure{Mean: mean}
	for _, u := range score.Chances {
		f.Q = append(f.Q, mean+sd*prob.NormQuantile(u))
	}
	return f
}
