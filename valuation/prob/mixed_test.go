package prob

import (
	"math"
	"testing"
)

// stackLoss is Brownlee's data (public, R datasets): loss, air flow, water temperature, acid concentration.
var stackLoss = [][4]float64{{42, 80, 27, 89}, {37, 80, 27, 88}, {37, 75, 25, 90}, {28, 62, 24, 87}, {18, 62, 22, 87}, {18, 62, 23, 87},
	{19, 62, 24, 93}, {20, 62, 24, 93}, {15, 58, 23, 87}, {14, 58, 18, 80}, {14, 58, 18, 89}, {13, 58, 17, 88}, {11, 58, 18, 82},
	{12, 58, 19, 93}, {8, 50, 18, 89}, {7, 50, 18, 86}, {8, 50, 19, 72}, {8, 50, 19, 79}, {9, 50, 20, 80}, {15, 56, 20, 82}, {15, 70, 20, 91}}

// flat returns the stack loss data with priors that say nothing.
func flat(df, residualSD, worth float64) *Mixed {
	d := &Mixed{DF: df, Residual: Scale{residualSD, worth}}
	for range 4 {
		d.Terms = append(d.Terms, Term{SD: 1e6, Group: -1})
	}
	for _, r := range stackLoss {
		row := []Entry{{0, 1}, {1, r[1] - 60}, {2, r[2] - 21}, {3, r[3] - 86}}
		d.Rows, d.Unknown = append(d.Rows, row), append(d.Unknown, nil)
		d.Y, d.Like = append(d.Y, r[0]), append(d.Like, 1)
	}
	d.Target = d.Rows[0]
	d.Prepare()
	return d
}

// With nearly normal errors and priors that say nothing, the fit is least squares: slopes by R 4.2.2, lm.
func TestSolveIsLeastSquaresWithoutPriors(t *testing.T) {
	d := flat(1e9, 3, 1e-9)
	s := d.Solve(d.Start(), 40)
	for j, want := range []float64{0, 0.715640200, 1.295286124, -0.152122519} {
		if j > 0 && math.Abs(s.Coef[j]-want) > 1e-6 {
			t.Errorf("slope %d = %.9f, R has %.9f", j, s.Coef[j], want)
		}
	}
}

// Huber's weights by R's MASS::rlm (k = 1.345) are below 1 for observations 21, 4 and 3 alone, in this order (.368, .505,
// .786). Student-t errors weigh on a different scale; the order of the worst is the same, and the fit moves the same way.
func TestSolveDistrustsTheSameRowsAsHuber(t *testing.T) {
	d := flat(3, 2.5, 1)
	s := d.Solve(d.Start(), 40)
	for i := range stackLoss {
		if i == 20 || i == 3 || i == 2 {
			continue
		}
		for _, worst := range []int{20, 3, 2} {
			if s.Robust[worst] >= s.Robust[i] {
				t.Errorf("observation %d weighs %.3f, no less than observation %d at %.3f", worst+1, s.Robust[worst], i+1, s.Robust[i])
			}
		}
	}
	if !(s.Robust[20] < s.Robust[3] && s.Robust[3] < s.Robust[2]) {
		t.Errorf("weights of 21, 4, 3: %.3f %.3f %.3f don't rise", s.Robust[20], s.Robust[3], s.Robust[2])
	}
	if huber := 0.829385770; !(s.Coef[1] > 0.7157 && math.Abs(s.Coef[1]-huber) < 0.06) {
		t.Errorf("air flow slope %.4f: least squares .7156, Huber %.4f", s.Coef[1], huber)
	}
}

// The residual of a row that is left out, by the hat matrix, is that of a fit without it.
func TestLeaveOutAgreesWithRefit(t *testing.T) {
	d := flat(4, 2.5, 5)
	d.Terms[1].Mean, d.Terms[1].SD = 0.6, 0.1 // a prior that counts
	d.Prepare()
	s := d.Solve(d.Start(), 40)
	for i := range d.Rows {
		without := *d
		without.Rows = append(append([][]Entry(nil), d.Rows[:i]...), d.Rows[i+1:]...)
		without.Unknown = append(append([][]int(nil), d.Unknown[:i]...), d.Unknown[i+1:]...)
		without.off = append(append([]float64(nil), d.off[:i]...), d.off[i+1:]...)
		without.Like = append(append([]float64(nil), d.Like[:i]...), d.Like[i+1:]...)
		held := MixedFit{Coef: make([]float64, 4), Sigma: s.Sigma, Weight: make([]float64, len(without.Rows)),
			Robust: append(append([]float64(nil), s.Robust[:i]...), s.Robust[i+1:]...)}
		without.estimate(&held)
		if want := d.Y[i] - Dot(d.Rows[i], held.Coef); math.Abs(s.Left[i]-want) > 1e-8 {
			t.Errorf("row %d: left-out residual %.10f, refit %.10f", i, s.Left[i], want)
		}
		v := Quadratic(d.Rows[i], held.Cov, 4)
		if want := math.Sqrt(s.Sigma*s.Sigma + v); math.Abs(s.Spread[i]-want) > 1e-8 {
			t.Errorf("row %d: left-out spread %.10f, refit %.10f", i, s.Spread[i], want)
		}
	}
}
