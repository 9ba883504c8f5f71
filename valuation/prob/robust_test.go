package prob

import (
	"math"
	"testing"
)

func stackLossDesign() (x [][]float64, y []float64) {
	for _, r := range stackLoss {
		x, y = append(x, []float64{1, r[1], r[2], r[3]}), append(y, r[0])
	}
	return x, y
}

// R 4.2.2, MASS::rlm run to convergence on Brownlee's stack loss data, Huber k = 1.345 and bisquare c = 4.685; the Huber fit is
// also among the published results of another statistics library's tests.
func TestRobustMatchesR(t *testing.T) {
	x, y := stackLossDesign()
	for name, c := range map[string]struct {
		weight func(float64) float64
		coef   []float64
		scale  float64
	}{
		"Huber":    {huber(1.345), []float64{-41.026485373, 0.829385770, 0.926059416, -0.127846318}, 2.440489046},
		"bisquare": {Bisquare(4.685), []float64{-42.285321536, 0.927558993, 0.650711198, -0.112333123}, 2.281853315},
	} {
		f, err := Robust(x, y, c.weight)
		if err != nil {
			t.Fatal(err)
		}
		for j, want := range c.coef {
			digits(t, name+" coefficient", f.Coef[j], want, 8)
		}
		digits(t, name+" scale", f.Scale, c.scale, 8)
	}
}

// R 4.2.2, the same fit: Huber's weights of observations 3, 4 and 21 are .785797, .504856 and .368084, of the others 1.
func TestHuberWeightsMatchR(t *testing.T) {
	x, y := stackLossDesign()
	f, err := Robust(x, y, huber(1.345))
	if err != nil {
		t.Fatal(err)
	}
	want := map[int]float64{2: 0.785797, 3: 0.504856, 20: 0.368084}
	for i, w := range f.Weight {
		expected, ok := want[i]
		if !ok {
			expected = 1
		}
		if math.Abs(w-expected) > 5e-7 {
			t.Errorf("observation %d weighs %.6f, R has %.6f", i+1, w, expected)
		}
	}
}

func TestRobustOnAPlaneIsExact(t *testing.T) {
	x, y := [][]float64{{1, 0}, {1, 1}, {1, 2}, {1, 3}, {1, 4}}, []float64{1, 3, 5, 7, 9}
	f, err := Robust(x, y, Bisquare(4.685))
	if err != nil || math.Abs(f.Coef[0]-1) > 1e-12 || math.Abs(f.Coef[1]-2) > 1e-12 {
		t.Errorf("%+v, %v", f, err)
	}
	if _, err := Robust(x[:1], y[:1], huber(1.345)); err == nil {
		t.Error("one row for two columns: no error")
	}
}

// huber returns the weights that leave rows within k scales whole and take from those beyond what they have too much; 1.345
// loses 5 % against least squares where errors are normal.
//
// Source: Huber, Robust estimation of a location parameter, Ann. Math. Statist. 35 (1964) 73-101 (from memory).
func huber(k float64) func(u float64) float64 {
	return func(u float64) float64 { return math.Min(1, k/math.Abs(u)) }
}
