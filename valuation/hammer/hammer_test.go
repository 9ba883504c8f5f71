package hammer_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"walkline/valuation/hammer"
	"walkline/valuation/lot"
	"walkline/valuation/sale"
	"walkline/valuation/score"
)

// The law serves a plan.
var _ sale.Law = hammer.Law{}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.6g, want %.6g (within %g)", what, got, want, tol)
	}
}

func law(t *testing.T, m hammer.Model, k hammer.Kind, finished, work float64) hammer.Law {
	t.Helper()
	l, err := m.Law(k, finished, work)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

var (
	front = hammer.Kind{Loss: []string{"collision"}, Condition: "starts"}
	flood = hammer.Kind{Loss: []string{"flood"}, Condition: "dead"}
)

// market draws results whose true log shares have those terms.
type market struct {
	rng            *rand.Rand
	level, sigma   float64
	causes, states []float64
}

// drawn draws a market from the starter belief itself: the spreads of its terms and the scatter as model.go has them.
func drawn(rng *rand.Rand) market {
	gamma := 0.0
	for range 4 { // a gamma draw of shape 4 is the sum of four exponential ones
		gamma += rng.ExpFloat64()
	}
	m := market{rng: rng, sigma: math.Sqrt(.35 * .35 * 3 / gamma)}
	m.level = math.Log(.65) + m.sigma*rng.NormFloat64()
	middle := map[string]float64{"flood": -0.25, "fire": -0.3, "theft": 0.1, "hail": 0.15, "mechanical": -0.1,
		"drives": 0.1, "turns_over": -0.1, "dead": -0.15, "unknown": -0.1}
	for _, c := range lot.Losses {
		m.causes = append(m.causes, middle[c]+.5*m.sigma*rng.NormFloat64())
	}
	for _, s := range lot.Conditions {
		m.states = append(m.states, middle[s]+.4*m.sigma*rng.NormFloat64())
	}
	return m
}

func (m market) result() hammer.Result {
	c, s := m.rng.IntN(len(lot.Losses)), m.rng.IntN(len(lot.Conditions))
	work := 500 + 3000*m.rng.Float64()
	worth := 2000 + 9000*m.rng.Float64()
	return hammer.Result{Kind: hammer.Kind{Loss: []string{lot.Losses[c]}, Condition: lot.Conditions[s]}, Finished: worth + work, Work: work,
		Price: worth * math.Exp(m.level+m.causes[c]+m.states[s]+m.sigma*m.rng.NormFloat64())}
}

// A truth drawn from the starter belief, results drawn from the truth: the place of the next price in what was foretold is even, with few
// results and with many. Source: Dawid 1984, and simulation-based calibration, Talts et al. 2018 (from memory).
func TestForecastsAreCalibrated(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for _, before := range []int{0, 3, 40} {
		tenths := make([]int, 10)
		for range 1500 {
			m := drawn(rng)
			var past []hammer.Result
			for range before {
				past = append(past, m.result())
			}
			model, _ := hammer.Starter().Learn(past)
			next := m.result()
			u := law(t, model, next.Kind, next.Finished, next.Work).CDF(next.Price)
			tenths[min(9, int(10*u))]++
		}
		if p := score.Uneven(tenths); p < .001 {
			t.Errorf("after %d results: %v (chance %.2g)", before, tenths, p)
		}
	}
}

// Many results of one kind speak for themselves; one result of another is drawn towards the level; what is known narrows.
func TestFewResultsAreDrawnTowardsTheLevel(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	var past []hammer.Result
	for range 400 {
		past = append(past, hammer.Result{Kind: front, Finished: 9000, Work: 3000, Price: 6000 * .5 * math.Exp(.2*rng.NormFloat64())})
	}
	start := hammer.Starter()
	many, _ := start.Learn(past)
	near(t, "middle share of the many", law(t, many, front, 9000, 3000).Quantile(.5)/6000, .5, .02)
	one, _ := many.Learn([]hammer.Result{{Kind: flood, Finished: 9000, Work: 3000, Price: 6000 * .1}})
	before, after := law(t, many, flood, 9000, 3000).Quantile(.5)/6000, law(t, one, flood, 9000, 3000).Quantile(.5)/6000
	if !(after < before && after > .1+.2*(before-.1)) {
		t.Errorf("one result of a tenth moves the share from %.3f to %.3f", before, after)
	}
	width := func(m hammer.Model) float64 {
		l := law(t, m, front, 9000, 3000)
		return math.Log(l.Quantile(.9) / l.Quantile(.1))
	}
	if !(width(many) < .6*width(start)) {
		t.Errorf("400 results narrow %.3f to %.3f", width(start), width(many))
	}
	near(t, "80 % range of a lognormal of 0.2", width(many), 2*1.2816*.2, .05)
}

// Shares have no currency: a hundred times the money gives a hundred times the price.
func TestNoCurrency(t *testing.T) {
	m := drawn(rand.New(rand.NewPCG(5, 6)))
	var small, large []hammer.Result
	for range 30 {
		r := m.result()
		small = append(small, r)
		r.Finished, r.Work, r.Price = 100*r.Finished, 100*r.Work, 100*r.Price
		large = append(large, r)
	}
	a, _ := hammer.Starter().Learn(small)
	b, _ := hammer.Starter().Learn(large)
	la, lb := law(t, a, flood, 8000, 1000), law(t, b, flood, 800_000, 100_000)
	near(t, "a hundred times", lb.Quantile(.3), 100*la.Quantile(.3), 1e-6)
	near(t, "back again", la.CDF(la.Quantile(.3)), .3, 1e-9)
	near(t, "nothing", la.CDF(0), 0, 0)
}

// One result at a time or all at once is the same belief.
func TestOrderDoesNotTell(t *testing.T) {
	m := drawn(rand.New(rand.NewPCG(7, 8)))
	one := hammer.Starter()
	var all []hammer.Result
	for range 25 {
		all = append(all, m.result())
		one, _ = one.Learn(all[len(all)-1:])
	}
	at, _ := hammer.Starter().Learn(all)
	near(t, "middle", law(t, one, front, 9000, 0).Quantile(.5), law(t, at, front, 9000, 0).Quantile(.5), 1e-6)
	near(t, "tail", law(t, one, flood, 9000, 0).Quantile(.95), law(t, at, flood, 9000, 0).Quantile(.95), 1e-6)
}

func TestStudyCountsWhatCame(t *testing.T) {
	m := drawn(rand.New(rand.NewPCG(9, 10)))
	var past []hammer.Result
	for range 300 {
		past = append(past, m.result())
	}
	past = append(past, hammer.Result{Kind: front, Finished: 2000, Work: 2500, Price: 100})
	s := hammer.NewStudy(past)
	if s.N != 300 || s.Refused != 1 || s.Uneven < .001 || !s.Coverage.Holds() || len(s.PIT) != 300 {
		t.Errorf("%+v", s)
	}
	for i := range past { // a market that is three times as dear as the results say is found out
		if i >= 150 {
			past[i].Price *= 3
		}
	}
	if s := hammer.NewStudy(past); s.Uneven > .01 {
		t.Errorf("a market that turned is taken for calibrated: %v", s.Tenths)
	}
	if s := hammer.NewStudy(nil); s.N != 0 || s.Uneven != 1 {
		t.Errorf("%+v", s)
	}
}

func TestWhatHasNoShareIsRefused(t *testing.T) {
	for _, r := range []hammer.Result{
		{Kind: front, Finished: 2000, Work: 2000, Price: 100},
		{Kind: front, Finished: 2000, Work: math.NaN(), Price: 100},
		{Kind: front, Finished: 2000, Work: 100},
		{Kind: hammer.Kind{Loss: []string{"rust"}}, Finished: 2000, Work: 100, Price: 100},
		{Kind: hammer.Kind{Condition: "flies"}, Finished: 2000, Work: 100, Price: 100},
	} {
		if _, refused := hammer.Starter().Learn([]hammer.Result{r}); len(refused) != 1 {
			t.Errorf("%+v is learned from", r)
		}
	}
	if _, err := hammer.Starter().Law(front, 1000, 1500); err != hammer.ErrNoShare {
		t.Errorf("%v", err)
	}
	if _, err := hammer.Starter().Law(hammer.Kind{}, 1000, 500); err != nil {
		t.Errorf("a lot of no known cause or state: %v", err)
	}
}
