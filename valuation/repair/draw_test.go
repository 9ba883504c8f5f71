package repair_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

const scenarios = 4000

// drawn plays a line out and spreads its columns over all scenarios.
func drawn(l repair.Line, s repair.Setting) repair.Outcome {
	out := l.Draw(s)
	full := func(column []float64) []float64 {
		all := make([]float64, s.Draws.Len())
		for k, x := range column {
			if out.At == nil {
				all[k] = x
			} else {
				all[out.At[k]] = x
			}
		}
		return all
	}
	return repair.Outcome{Cash: full(out.Cash), Labour: full(out.Labour), Hours: full(out.Hours), Lead: full(out.Lead)}
}

func setting(rate, holding float64) repair.Setting {
	s := repair.Setting{Draws: prob.NewDraws(scenarios, 5), Factor: make([]float64, scenarios), Rates: map[string]float64{"body": rate},
		HoldingPerDay: holding}
	s.Draws.Column("lot/factor", s.Factor)
	return s
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if math.Abs(got-want) > tol {
		t.Errorf("%s = %.6g, want %.6g", what, got, want)
	}
}

// Cost by hand: used 200 + 50 freight + 2 h x rate + 4 d x holding; new 300 + 10 d x holding; made 150 + 5 h x rate;
// core 320 - 80 deposit.
func TestOptionOrder(t *testing.T) {
	p := repair.Part{Options: []repair.Option{
		{Source: "used", Price: prob.Certain(200), Freight: prob.Certain(50), ExtraHours: prob.Certain(2), LeadDays: prob.Certain(4)},
		{Source: "new", Price: prob.Certain(300), LeadDays: prob.Certain(10)},
		{Source: "made", Price: prob.Certain(150), ExtraHours: prob.Certain(5)},
		{Source: "core", Price: prob.Certain(320), CoreBack: prob.Certain(80)},
	}}
	for _, c := range []struct {
		rate, holding float64
		want          []int
	}{
		{0, 0, []int{2, 3, 0, 1}},  // 250 300 150 240
		{40, 0, []int{3, 1, 0, 2}}, // 330 300 350 240
		{40, 8, []int{3, 2, 0, 1}}, // 362 380 350 240
	} {
		if got := p.Order(c.rate, c.holding); !slices.Equal(got, c.want) {
			t.Errorf("rate %g, holding %g: %v, want %v", c.rate, c.holding, got, c.want)
		}
	}
	same := repair.Part{Options: []repair.Option{{Source: "a"}, {Source: "b"}, {Source: "c"}}}
	if got := same.Order(40, 8); !slices.Equal(got, []int{0, 1, 2}) {
		t.Errorf("equals do not keep their order: %v", got)
	}
}

// meanOf is what a part costs on average when its sources are tried in that order, the fallback after them.
func meanOf(p repair.Part, order []int, rate, holding float64) float64 {
	if p.Critical != nil && !*p.Critical {
		holding = 0
	}
	mean, left := 0.0, 1.0
	for _, i := range order {
		o := p.Options[i]
		mean += left * *o.Chance * (o.Price.Mean() + o.Freight.Mean() + rate*o.ExtraHours.Mean() + holding*o.LeadDays.Mean())
		left *= 1 - *o.Chance
	}
	return mean + left*(p.Fallback.Price.Mean()+rate*p.Fallback.Hours.Mean()+holding*p.Fallback.LeadDays.Mean())
}

// orders returns every way to try some of n sources.
func orders(n int, taken ...int) [][]int {
	all := [][]int{taken}
	for i := range n {
		if !slices.Contains(taken, i) {
			all = append(all, orders(n, append(slices.Clone(taken), i)...)...)
		}
	}
	return all
}

// Of all ways to try up to four sources, or some of them, the order costs least in the mean; and a source that is likelier to be
// had, or sooner, never makes the part dearer.
func TestOrderCostsLeastInTheMean(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 3))
	between := func(lo, hi float64) prob.Three { return prob.Certain(lo + (hi-lo)*rng.Float64()) }
	for range 300 {
		critical := rng.Float64() < .7
		p := repair.Part{Critical: &critical, Fallback: &repair.Fallback{Price: between(100, 900), LeadDays: between(5, 60),
			Hours: between(0, 6)}}
		for range 4 {
			p.Options = append(p.Options, repair.Option{Price: between(50, 900), Freight: between(0, 80), LeadDays: between(1, 40),
				ExtraHours: between(0, 5), Chance: chance(rng.Float64())})
		}
		const rate, holding = 35, 6
		got := meanOf(p, p.Order(rate, holding), rate, holding)
		for _, other := range orders(4) {
			if mean := meanOf(p, other, rate, holding); mean < got-1e-9 {
				t.Fatalf("order %v costs %.2f, %v costs %.2f", p.Order(rate, holding), got, other, mean)
			}
		}
		for i := range p.Options {
			better := p
			better.Options = slices.Clone(p.Options)
			better.Options[i].Chance, better.Options[i].LeadDays = chance(min(1, *p.Options[i].Chance+.2)),
				prob.Certain(.5*p.Options[i].LeadDays.Mean())
			if mean := meanOf(better, better.Order(rate, holding), rate, holding); mean > got+1e-9 {
				t.Fatalf("a better source makes the part dearer: %.2f, then %.2f", got, mean)
			}
		}
	}
}

// By hand: a fallback at 300 is taken before a source at 500 that is there one time in ten.
func TestACheapFallbackComesBeforeADearSource(t *testing.T) {
	p := repair.Part{Options: []repair.Option{{Source: "new", Price: prob.Certain(500), Chance: chance(.1)}, {Source: "used",
		Price: prob.Certain(200), Chance: chance(.5)}},
		Fallback: &repair.Fallback{Price: prob.Certain(300)}}
	if got := p.Order(30, 0); !slices.Equal(got, []int{1}) {
		t.Errorf("order %v, want the used part alone before the fallback", got)
	}
	out := drawn(repair.Line{ID: "f", Job: "f", Parts: []repair.Part{p}}, setting(30, 0))
	near(t, "mean", prob.Mean(out.Cash), 250, .1)
}

// Closed form: .6 at 100, of the rest .5 at 200, of the rest the fallback at 400:
// .6 x 100 + .4 x .5 x 200 + .4 x .5 x 400 = 180. Lead: never less than that of what was had.
func TestFirstOptionThatCanBeHadThenFallback(t *testing.T) {
	l := repair.Line{ID: "l", Job: "lamp", Hours: map[string]prob.Three{"body": prob.Certain(1)}, Parts: []repair.Part{{
		Options: []repair.Option{
			{Price: prob.Certain(200), LeadDays: prob.Certain(20), Chance: chance(.5)},
			{Price: prob.Certain(100), LeadDays: prob.Certain(10), Chance: chance(.6)},
		},
		Fallback: &repair.Fallback{Price: prob.Certain(400), LeadDays: prob.Certain(40), Hours: prob.Certain(6)}}}}
	out := drawn(l, setting(30, 0))
	count := map[float64]float64{}
	for i, cash := range out.Cash {
		count[cash]++
		if out.Lead[i] != cash/10 {
			t.Fatalf("a part at %g came after %g days", cash, out.Lead[i])
		}
		hours := 1.0
		if cash == 400 {
			hours = 7
		}
		if out.Hours[i] != hours || out.Labour[i] != 30*hours {
			t.Fatalf("a part at %g took %g hours, labor %g", cash, out.Hours[i], out.Labour[i])
		}
	}
	near(t, "mean cost", prob.Mean(out.Cash), 180, 4)
	near(t, "share of the first", count[100]/scenarios, .6, 1./scenarios) // its column is stratified
	near(t, "share of the second", count[200]/scenarios, .2, .02)
	near(t, "share of the fallback", count[400]/scenarios, .2, .02)
}

func TestChanceOfALineTakesAllOfIt(t *testing.T) {
	l := repair.Line{ID: "l", Job: "rail", Chance: chance(.3), Hours: map[string]prob.Three{"body": prob.Certain(2)},
		Materials: prob.Certain(10), Outside: prob.Certain(90),
		Parts: []repair.Part{{Options: []repair.Option{{Price: prob.Certain(50), LeadDays: prob.Certain(9)}}}}}
	out := drawn(l, setting(25, 0))
	needed := 0.0
	for i := range out.Cash {
		row := [4]float64{out.Cash[i], out.Labour[i], out.Hours[i], out.Lead[i]}
		switch row {
		case [4]float64{150, 50, 2, 9}:
			needed++
		case [4]float64{}:
		default:
			t.Fatalf("scenario %d: %v", i, row)
		}
	}
	near(t, "share in which it is needed", needed/scenarios, .3, 1./scenarios)
	for want, c := range map[float64]float64{0: 0, 150: 1} {
		l.Chance = chance(c)
		near(t, "mean at a sure chance", prob.Mean(drawn(l, setting(25, 0)).Cash), want, 1e-12)
	}
}

// Source: mean of the PERT, (low + 4 likely + high) / 6 (testdata/reference/pert_triangular.csv).
func TestMeansOfALine(t *testing.T) {
	l := repair.Line{ID: "l", Job: "paint", Hours: map[string]prob.Three{"body": {Low: 2, Likely: 5, High: 14}},
		Materials: prob.Three{Low: 30, Likely: 40, High: 110}}
	out := drawn(l, setting(20, 0))
	near(t, "hours", prob.Mean(out.Hours), 6, .01)
	near(t, "labour", prob.Mean(out.Labour), 120, .2)
	near(t, "materials", prob.Mean(out.Cash), 50, .1)
}

func TestAPartThatHoldsNothingUpHasNoLead(t *testing.T) {
	no := false
	l := repair.Line{ID: "l", Job: "badge", Parts: []repair.Part{{Critical: &no,
		Options: []repair.Option{{Price: prob.Certain(9), LeadDays: prob.Certain(60)}}}}}
	if out := drawn(l, setting(0, 0)); slices.Max(out.Lead) != 0 || slices.Min(out.Cash) != 9 {
		t.Errorf("lead up to %g, cash from %g", slices.Max(out.Lead), slices.Min(out.Cash))
	}
}

// A quote stands in place of the starter value of its source; other sources are still tried where they are expected to cost less.
func TestAQuoteBeatsTheStarterValueOfItsSource(t *testing.T) {
	p := repair.Part{Options: []repair.Option{
		{Source: "used", Price: prob.Certain(100)}, {Source: "new_maker", Price: prob.Certain(400)},
		{Source: "used", Price: prob.Certain(220), Quoted: "2026-11-02"}, {Source: "used", Price: prob.Certain(210), Quoted: "2026-11-03"},
	}}
	if got := p.Order(30, 5); !slices.Equal(got, []int{3, 2, 1}) {
		t.Errorf("order %v, want the two quotes, then the new part", got)
	}
	out := drawn(repair.Line{ID: "q", Job: "q", Parts: []repair.Part{p}}, setting(30, 5))
	if slices.Min(out.Cash) != 210 || slices.Max(out.Cash) != 210 {
		t.Errorf("the part costs %g to %g, want the quote of 210", slices.Min(out.Cash), slices.Max(out.Cash))
	}
}
