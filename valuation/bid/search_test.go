package bid

import (
	"math"
	"testing"
)

// By hand: where each function passes nothing.
func TestTurn(t *testing.T) {
	step := func(at float64) func(float64) float64 {
		return func(x float64) float64 {
			if x <= at {
				return -.2
			}
			return 5
		}
	}
	for name, c := range map[string]struct {
		f                func(float64) float64
		lo, hi, by, want float64
	}{
		"a line":             {func(x float64) float64 { return x - 12345.6 }, 0, 1e6, 1, 12345},
		"a line that ties":   {func(x float64) float64 { return x - 12345 }, 0, 1e6, 1, 12345},
		"a curve":            {func(x float64) float64 { return math.Exp(x/50) - 7 }, 0, 1000, 1, math.Floor(50 * math.Log(7))},
		"a steep curve":      {func(x float64) float64 { return math.Pow(x, 9) - math.Pow(700.5, 9) }, 0, 1e6, 1, 700},
		"a jump":             {step(777777), 0, 1e6, 1, 777777},
		"a jump at the end":  {step(999999), 0, 1e6, 1, 999999},
		"a jump at the foot": {step(0), 0, 1e6, 1, 0},
		"flat, then a line":  {func(x float64) float64 { return math.Max(-1, x-5000) }, 0, 1e6, 1, 5000},
		"no whole numbers":   {func(x float64) float64 { return x*x*x - 2 }, 0, 10, 1e-9, math.Cbrt(2)},
		"one step":           {step(4), 4, 5, 1, 4},
	} {
		asked := 0
		got := turn(c.lo, c.hi, c.by, func(x float64) float64 {
			asked++
			if c.by == 1 && x != math.Floor(x) {
				t.Errorf("%s: asked at %g", name, x)
			}
			return c.f(x)
		})
		if math.Abs(got-c.want) > c.by*.999 {
			t.Errorf("%s: %.9f, want %.9f", name, got, c.want)
		}
		if asked > 90 {
			t.Errorf("%s: asked %d times", name, asked)
		}
	}
}
