package resale

import (
	"math"
	"testing"
)

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
