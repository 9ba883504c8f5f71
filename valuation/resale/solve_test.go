package resale

import (
	"math"
	"testing"
)

// stackLoss is Brownlee's data (public, R datasets): loss, air flow, water temperature, acid concentration.
var stackLoss = [][4]float64{{42, 80, 27, 89}, {37, 80, 27, 88}, {37, 75, 25, 90}, {28, 62, 24, 87}, {18, 62, 22, 87}, {18, 62, 23, 87},
	{19, 62, 24, 93}, {20, 62, 24, 93}, {15, 58, 23, 87}, {14, 58, 18, 80}, {14, 58, 18, 89}, {13, 58, 17, 88}, {11, 58, 18, 82},
	{12, 58, 19, 93}, {8, 50, 18, 89}, {7, 50, 18, 86}, {8, 50, 19, 72}, {8, 50, 19, 79}, {9, 50, 20, 80}, {15, 56, 20, 82}, {15, 70, 20, 91}}

// flat returns the stack loss data with priors that say nothing.
func flat(df, residualSD, worth float64) *data {
	d := &data{market: Market{DF: df, Residual: Scale{residualSD, worth}}}
	for range 4 {
		d.terms = append(d.terms, term{sd: 1e6, group: -1})
	}
	for _, r := range stackLoss {
		row := []entry{{0, 1}, {1, r[1] - 60}, {2, r[2] - 21}, {3, r[3] - 86}}
		d.rows, d.extra = append(d.rows, row), append(d.extra, nil)
		d.y, d.off, d.like = append(d.y, r[0]), append(d.off, r[0]), append(d.like, 1)
	}
	d.subject = d.rows[0]
	return d
}

// With nearly normal errors and priors that say nothing, the fit is least squares: slopes by R 4.2.2, lm.
func TestSolveIsLeastSquaresWithoutPriors(t *testing.T) {
	d := flat(1e9, 3, 1e-9)
	s := d.solve(d.start(), mostSteps)
	for j, want := range []float64{0, 0.715640200, 1.295286124, -0.152122519} {
		if j > 0 && math.Abs(s.coef[j]-want) > 1e-6 {
			t.Errorf("slope %d = %.9f, R has %.9f", j, s.coef[j], want)
		}
	}
}

// Huber's weights by R's MASS::rlm (k = 1.345) are below 1 for observations 21, 4 and 3 alone, in this order (.368, .505,
// .786). Student-t errors weigh on a different scale; the order of the worst is the same, and the fit moves the same way.
func TestSolveDistrustsTheSameRowsAsHuber(t *testing.T) {
	d := flat(3, 2.5, 1)
	s := d.solve(d.start(), mostSteps)
	for i := range stackLoss {
		if i == 20 || i == 3 || i == 2 {
			continue
		}
		for _, worst := range []int{20, 3, 2} {
			if s.robust[worst] >= s.robust[i] {
				t.Errorf("observation %d weighs %.3f, no less than observation %d at %.3f", worst+1, s.robust[worst], i+1, s.robust[i])
			}
		}
	}
	if !(s.robust[20] < s.robust[3] && s.robust[3] < s.robust[2]) {
		t.Errorf("weights of 21, 4, 3: %.3f %.3f %.3f don't rise", s.robust[20], s.robust[3], s.robust[2])
	}
	if huber := 0.829385770; !(s.coef[1] > 0.7157 && math.Abs(s.coef[1]-huber) < 0.06) {
		t.Errorf("air flow slope %.4f: least squares .7156, Huber %.4f", s.coef[1], huber)
	}
}

// The residual of a row that is left out, by the hat matrix, is that of a fit without it.
func TestLeaveOutAgreesWithRefit(t *testing.T) {
	d := flat(4, 2.5, 5)
	d.terms[1].mean, d.terms[1].sd = 0.6, 0.1 // a prior that counts
	for j := range d.rows {
		d.off[j] = d.y[j] - d.prior(d.rows[j])
	}
	s := d.solve(d.start(), mostSteps)
	for i := range d.rows {
		without := *d
		without.rows = append(append([][]entry(nil), d.rows[:i]...), d.rows[i+1:]...)
		without.extra = append(append([][]int(nil), d.extra[:i]...), d.extra[i+1:]...)
		without.off = append(append([]float64(nil), d.off[:i]...), d.off[i+1:]...)
		without.like = append(append([]float64(nil), d.like[:i]...), d.like[i+1:]...)
		held := solution{coef: make([]float64, 4), sigma: s.sigma, weight: make([]float64, len(without.rows)),
			robust: append(append([]float64(nil), s.robust[:i]...), s.robust[i+1:]...)}
		without.estimate(&held)
		if want := d.y[i] - dot(d.rows[i], held.coef); math.Abs(s.left[i]-want) > 1e-8 {
			t.Errorf("row %d: left-out residual %.10f, refit %.10f", i, s.left[i], want)
		}
		v := quadratic(d.rows[i], held.cov, 4)
		if want := math.Sqrt(s.sigma*s.sigma + v); math.Abs(s.spread[i]-want) > 1e-8 {
			t.Errorf("row %d: left-out spread %.10f, refit %.10f", i, s.spread[i], want)
		}
	}
}

// Split conformal prediction: the k-th of n residuals, k = ceil((n+1)(1-a)), covers with chance exactly k/(n+1) (Lei et al.
// 2018). Rows of the exact coverages: n, k, coverage.
func TestSampleQuantileStandsAtConformalRank(t *testing.T) {
	for _, c := range []struct {
		n    int
		a    float64
		k    int
		want float64
	}{{9, 0.10, 9, 0.9}, {19, 0.10, 18, 0.9}, {20, 0.10, 19, 0.904761904761905}, {50, 0.10, 46, 0.901960784313726},
		{99, 0.05, 95, 0.95}, {100, 0.20, 81, 0.801980198019802}} {
		s := make([]float64, c.n)
		for i := range s {
			s[i] = float64(i + 1) // the k-th residual is k
		}
		if k := int(math.Ceil(float64(c.n+1)*(1-c.a) - 1e-9)); k != c.k {
			t.Errorf("n %d, a %g: k = %d, want %d", c.n, c.a, k, c.k)
		}
		if got := sampleQuantile(s, c.want, 0); math.Abs(got-float64(c.k)) > 1e-9 {
			t.Errorf("n %d: the quantile at %g is residual %g, want the %d-th", c.n, c.want, got, c.k)
		}
	}
	// n = 8 and a = 0.10 ask for the 9th of 8: the Student-t takes over, outside the outermost residual.
	if got := sampleQuantile([]float64{-4, -3, -2, -1, 1, 2, 3, 4}, 0.9, 6.5); got != 6.5 {
		t.Errorf("beyond the outermost residual: %g, want 6.5", got)
	}
	if got := sampleQuantile([]float64{-4, -3, -2, -1, 1, 2, 3, 4}, 0.9, 1.4); got != 4 {
		t.Errorf("the interval shrank inside the outermost residual: %g", got)
	}
}

func TestMileageFormsShareSlopeAtPivot(t *testing.T) {
	for _, f := range mileageForms {
		if slope := (f.at(pivot+1) - f.at(pivot-1)) / 2 * perUnit; math.Abs(slope-1) > 1e-6 {
			t.Errorf("%s rises by %g per 10,000 miles at 50,000, want 1", f, slope)
		}
	}
}

func TestRisingCurvePassesThroughAndNeverFalls(t *testing.T) {
	for _, y := range [][]float64{{0, 1, 2, 3, 4}, {0, 0, 0, 5, 10}, {-9, -1, 0, 0.01, 0.02}, {1, 1, 1, 1, 1}} {
		x := []float64{-3, -1.28, 0, 1.28, 3}
		c := newRising(x, y)
		last := math.Inf(-1)
		for i := range x {
			if math.Abs(c.at(x[i])-y[i]) > 1e-12 {
				t.Errorf("curve through %v is %g at %g", y, c.at(x[i]), x[i])
			}
		}
		for z := -3.0; z <= 3; z += 0.01 {
			if v := c.at(z); v < last-1e-12 {
				t.Fatalf("curve through %v falls at %g", y, z)
			} else {
				last = v
			}
		}
	}
}
