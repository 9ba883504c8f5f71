package score

import (
	"math"
	"math/rand/v2"
	"testing"

	"walkline/valuation/prob"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.9g, want %.9g", what, got, want)
	}
}

// normal returns the quantiles of a normal distribution.
func normal(mean, sd float64) []float64 {
	var q []float64
	for _, u := range Chances {
		q = append(q, mean+sd*prob.NormQuantile(u))
	}
	return q
}

// Ten forecasts of rain. Source: Brier, Monthly Weather Review 78 (1950), table 1 (from memory); the decomposition is
// Murphy's (1973). Brier's own score is twice today's.
func TestBrierTable(t *testing.T) {
	p := []float64{.7, .9, .8, .4, .2, 0, 0, 0, 0, .1}
	came := []bool{false, true, true, true, false, false, false, false, false, false}
	var calls []Call
	for i := range p {
		calls = append(calls, Call{p[i], came[i]})
	}
	r := NewReliability(calls)
	near(t, "Brier", r.Brier, .095, 1e-12)
	near(t, "calibration", r.Calibration, .095, 1e-12)
	near(t, "resolution", r.Resolution, .21, 1e-12)
	near(t, "uncertainty", r.Uncertainty, .21, 1e-12)
	near(t, "within", r.Within, 0, 1e-12)
	if r.N != 10 || r.Events != 3 || r.Bins[0].N != 4 {
		t.Errorf("counts: %+v", r)
	}
}

// The decomposition adds up where several chances share a tenth, too.
func TestReliabilityAddsUp(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	var calls []Call
	for range 500 {
		p := rng.Float64()
		calls = append(calls, Call{p, rng.Float64() < p})
	}
	r := NewReliability(calls)
	near(t, "sum", r.Calibration-r.Resolution+r.Uncertainty+r.Within, r.Brier, 1e-12)
	if r.Within < -0.01 || r.Within > 0.01 {
		t.Errorf("within-bin part %g: tenths are narrow", r.Within)
	}
}

// Source: closed form of the CRPS of a normal, Gneiting and Raftery 2007 (from memory; checked by integration).
func TestCRPSOfTheNormal(t *testing.T) {
	for _, c := range []struct{ mean, sd, y, want float64 }{
		{0, 1, 0, 0.233694977}, {0, 1, 1, 0.602441358}, {0, 1, 2, 1.452791822}, {10, 3, 14, 2.561801940}, {12000, 1500, 13250, 743.6302985},
	} {
		near(t, "crps", CRPS(normal(c.mean, c.sd), c.y), c.want, 2e-4*c.sd)
	}
}

// Ensemble {1, 2, 4, 7} scored at 3 is 0.75. Source: the same, by hand.
func TestNaiveBaseline(t *testing.T) {
	xs := []float64{1, 2, 4, 7, 3}
	want := 0.0
	for i, y := range xs {
		var near, apart float64
		for j, a := range xs {
			for k, b := range xs {
				if j != i && k != i {
					apart += math.Abs(a-b) / 16
				}
			}
			if j != i {
				near += math.Abs(a-y) / 4
			}
		}
		if i == 4 && math.Abs(near-apart/2-0.75) > 1e-12 {
			t.Errorf("ensemble score %g, want 0.75", near-apart/2)
		}
		want += (near - apart/2) / 5
	}
	near(t, "baseline", Naive(xs), want, 1e-12)
}

func TestPITOfTheNormal(t *testing.T) {
	f := normal(100, 10)
	for _, x := range []float64{60, 80, 93.7, 100, 108, 131} {
		near(t, "cdf", CDF(f, x), prob.NormCDF((x-100)/10), 1e-9)
	}
	if CDF(make([]float64, len(Chances)), 1) != 0.5 {
		t.Error("a certain figure has no distribution to fall in")
	}
}
