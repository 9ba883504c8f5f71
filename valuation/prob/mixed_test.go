package prob

import (
	"math"
	"math/rand/v2"
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
		without.Y = append(append([]float64(nil), d.Y[:i]...), d.Y[i+1:]...)
		without.Like = append(append([]float64(nil), d.Like[:i]...), d.Like[i+1:]...)
		held := MixedFit{Coef: make([]float64, 4), Sigma: s.Sigma, Weight: make([]float64, len(without.Rows)),
			Robust: append(append([]float64(nil), s.Robust[:i]...), s.Robust[i+1:]...)}
		without.Terms = append([]Term(nil), d.Terms...)
		without.Prepare()
		without.estimate(&held)
		if want := d.Y[i] - Dot(d.Rows[i], held.Coef); math.Abs(s.Left[i]-want) > 1e-8 {
			t.Errorf("row %d: left-out residual %.10f, refit %.10f", i, s.Left[i], want)
		}
		v := without.variance(d.Rows[i])
		if want := math.Sqrt(s.Sigma*s.Sigma + v); math.Abs(s.Spread[i]-want) > 1e-8 {
			t.Errorf("row %d: left-out spread %.10f, refit %.10f", i, s.Spread[i], want)
		}
	}
}

// walks returns a table of four years, once with a chain of levels and once with a step between each two years, which is the
// same model: the level of a year is the sum of the steps up to it.
func walks() (chained, stepped *Mixed) {
	y := []float64{1.0, 1.3, 0.9, 2.1, 2.2, 1.9, 4.0}
	year := []int{0, 0, 1, 1, 3, 3, 4}
	chained = &Mixed{DF: 5, Residual: Scale{0.3, 2}, Groups: []Scale{{0.5, 3}}, Y: y, Target: []Entry{{0, 1}}}
	stepped = &Mixed{DF: 5, Residual: Scale{0.3, 2}, Groups: []Scale{{0.5, 3}}, Y: y, Target: []Entry{{0, 1}}}
	level := Term{SD: 1e5, Group: -1}
	chained.Terms = []Term{level, level, level, level}
	stepped.Terms = []Term{level, {Group: 0}, {Group: 0}, {Group: 0}, {Group: 0}}
	// Years 1, 3 and 4 are terms 1 to 3; nobody has year 2, so that the step from 1 to 3 is two years long.
	chained.Links = []Link{{From: -1, To: 1, Gap: 1}, {From: 1, To: 2, Gap: 2}, {From: 2, To: 3, Gap: 1}}
	for i := range y {
		row, steps := []Entry{{0, 1}}, []Entry{{0, 1}}
		if at := map[int]int{1: 1, 3: 2, 4: 3}[year[i]]; at > 0 {
			row = append(row, Entry{at, 1})
		}
		for k := range year[i] {
			steps = append(steps, Entry{1 + k, 1})
		}
		chained.Rows, stepped.Rows = append(chained.Rows, row), append(stepped.Rows, steps)
	}
	for _, m := range []*Mixed{chained, stepped} {
		m.Unknown, m.Like = make([][]int, len(y)), []float64{1, 1, 1, 1, 1, 1, 1}
		m.Prepare()
	}
	return chained, stepped
}

// variance returns the variance of a row's expectation at the last estimate.
func (m *Mixed) variance(row []Entry) float64 { return Covariance{m.order, m.room}.Variance(row) }

func TestAChainIsASumOfSteps(t *testing.T) {
	chained, stepped := walks()
	a, b := chained.Start(), stepped.Start()
	chained.estimate(&a)
	stepped.estimate(&b)
	for i := range chained.Rows {
		if x, y := Dot(chained.Rows[i], a.Coef), Dot(stepped.Rows[i], b.Coef); math.Abs(x-y) > 1e-6 {
			t.Errorf("row %d: chain %.8f, steps %.8f", i, x, y)
		}
		if x, y := chained.variance(chained.Rows[i]), stepped.variance(stepped.Rows[i]); math.Abs(x-y) > 1e-6 {
			t.Errorf("row %d: variance by the chain %.8f, by steps %.8f", i, x, y)
		}
	}
	before := a.Tau[0]
	chained.spreads(&a)
	sum := 0.0 // of the expected squares of the chain's steps over their gaps, with the steps' own figures
	for _, d := range [][]Entry{{{1, 1}}, {{2, 1}, {3, 1}}, {{4, 1}}} {
		e := Dot(d, b.Coef)
		sum += (e*e + stepped.variance(d)) / float64(len(d))
	}
	if want := math.Sqrt((3*before*before + sum) / 6); math.Abs(a.Tau[0]-want) > 1e-6 {
		t.Errorf("spread %.8f, by steps %.8f", a.Tau[0], want)
	}
}

// The error of a Student-t's location is sqrt((DF+3)/(DF+1)) times what weights of one would make it: 400 samples of 200 draws.
func TestDoubtIsTheErrorOfTheLocation(t *testing.T) {
	const df, n, samples = 4.0, 200, 400
	rng := rand.New(rand.NewPCG(5, 5))
	square, doubt, held := 0.0, 0.0, 0.0
	for range samples {
		m := &Mixed{DF: df, Residual: Scale{1, 1}, Terms: []Term{{SD: 1e3, Group: -1}}, Target: []Entry{{0, 1}}, Unknown: make([][]int, n)}
		for range n {
			m.Rows, m.Like = append(m.Rows, []Entry{{0, 1}}), append(m.Like, 1)
			m.Y = append(m.Y, TQuantile(rng.Float64(), df))
		}
		m.Prepare()
		s := m.Solve(m.Start(), 40)
		square, doubt, held = square+s.Coef[0]*s.Coef[0], doubt+s.Doubt.Variance(m.Target), held+s.Cov.Variance(m.Target)
	}
	if ratio := square / doubt; ratio < 0.8 || ratio > 1.2 { // the standard error of the ratio is 7 %
		t.Errorf("the location's variance is %.2f of what is stated", ratio)
	}
	if square < 1.1*held {
		t.Errorf("the held weights alone state %.5f, the variance is %.5f", held/samples, square/samples)
	}
}
