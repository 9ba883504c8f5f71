package scenario_test

import (
	"math"
	"slices"
	"sort"
	"testing"

	"walkline/valuation/hidden"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
	"walkline/valuation/scenario"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if math.Abs(got-want) > tol {
		t.Errorf("%s = %.6g, want %.6g", what, got, want)
	}
}

// lot is an uncertain lot. Invented.
func lot() scenario.Lot {
	third, load := .3, .6
	return scenario.Lot{
		Lines: []repair.Line{
			{ID: "a", Job: "front", Hours: map[string]prob.Three{"body": {Low: 6, Likely: 10, High: 24}},
				Materials: prob.Three{Low: 80, Likely: 120, High: 400},
				Parts: []repair.Part{{Options: []repair.Option{{Price: prob.Three{Low: 100, Likely: 200, High: 300},
					LeadDays: prob.Three{Low: 2, Likely: 9, High: 40}}}}}},
			{ID: "b", Job: "rail", Chance: &third, Outside: prob.Three{Low: 200, Likely: 400, High: 1500}},
		},
		Risks: []hidden.Risk{{ID: "h", Name: "mount", Cost: prob.Three{Low: 100, Likely: 300, High: 900}, Days: prob.Certain(3),
			Loading: &load}}, Chances: []float64{.25},
		Loading: .3, Rates: map[string]float64{"body": 30}, Freight: prob.Three{Low: 100, Likely: 150, High: 300},
		Storage: scenario.Storage{PerDay: 25, FreeDays: 3, Days: prob.Three{Low: 1, Likely: 4, High: 9}},
		Time: scenario.Time{HoursPerWeek: 20, HoldingPerDay: 5, InspectionQueue: prob.Three{Low: 5, Likely: 10, High: 30},
			DaysToSell: prob.Three{Low: 5, Likely: 20, High: 60}},
		N: 2048, Seed: 9,
	}
}

func TestSharesAddUpToOne(t *testing.T) {
	o := scenario.NewMemory(0).Play(lot())
	for _, c := range [][2]float64{{0, 0}, {250000, 0}, {250000, 1.7}} {
		sum := 0.0
		shares := o.Shares(c[0], c[1])
		for _, s := range shares {
			sum += s.Part
		}
		near(t, "sum of the shares", sum, 1, 1e-9)
		if !sort.SliceIsSorted(shares, func(a, b int) bool { return shares[a].Part > shares[b].Part }) {
			t.Errorf("the shares do not fall: %v", shares)
		}
		if want := c[0] > 0; slices.ContainsFunc(shares, func(s scenario.Share) bool { return s.Name == "Resale price" && s.Part > 0 }) != want {
			t.Errorf("resale variance %g: %v", c[0], shares)
		}
	}
}

// What is certain has no causes of its spread: the rounding of its sums is none.
func TestACertainLotHasNoShares(t *testing.T) {
	l := scenario.Lot{Lines: []repair.Line{{ID: "a", Job: "a", Hours: map[string]prob.Three{"body": prob.Certain(10.1)},
		Materials: prob.Certain(100.1)}},
		Rates: map[string]float64{"body": 35.7}, Freight: prob.Certain(99.9),
		Time: scenario.Time{HoursPerWeek: 30, HoldingPerDay: 6, DaysToSell: prob.Certain(10)}, N: 16384, Seed: 1}
	for _, aDay := range []float64{0, 2.007671} {
		if shares := scenario.NewMemory(0).Play(l).Shares(0, aDay); len(shares) > 0 {
			t.Errorf("a day costs %g: %v", aDay, shares)
		}
	}
}

// Two independent certain-variance causes: a line of variance v and a resale of 3 v share 1 to 3.
func TestSharesOfTwoIndependentCauses(t *testing.T) {
	l := scenario.Lot{Lines: []repair.Line{{ID: "a", Job: "front", Materials: prob.Three{Low: 0, Likely: 300, High: 600}}},
		Time: scenario.Time{HoursPerWeek: 40}, N: 4096, Seed: 2}
	o := scenario.NewMemory(0).Play(l)
	parts := map[string]float64{}
	for _, s := range o.Shares(3*prob.Variance(o.Cost), 0) {
		parts[s.Name] = s.Part
	}
	near(t, "resale", parts["Resale price"], .75, 1e-9)
	near(t, "front", parts["front"]+parts["Worse than it looks"], .25, 1e-9)
	near(t, "common factor", parts["Worse than it looks"], 0, .01) // nothing leans on it: what is left is chance, 64 slices of 4096
}

func TestDaysAndMoneyByHand(t *testing.T) {
	for _, c := range []struct{ lead, want float64 }{
		{10, 37.8 + 4 + 12 + 20}, // 108 h at 20 a week are 37.8 days, longer than the part's 10
		{50, 50 + 4 + 12 + 20},
	} {
		l := scenario.Lot{
			Lines: []repair.Line{
				{ID: "a", Job: "a", Hours: map[string]prob.Three{"body": prob.Certain(60)},
					Parts: []repair.Part{{Options: []repair.Option{{Price: prob.Certain(100), LeadDays: prob.Certain(c.lead)}}}}},
				{ID: "b", Job: "b", Hours: map[string]prob.Three{"paint": prob.Certain(40)},
					Parts: []repair.Part{{Options: []repair.Option{{LeadDays: prob.Certain(7)}}}}},
			},
			Risks: []hidden.Risk{{ID: "h", Name: "h", Cost: prob.Certain(70), Hours: map[string]prob.Three{"body": prob.Certain(8)},
				Days: prob.Certain(4)}}, Chances: []float64{1},
			Rates: map[string]float64{"body": 30, "paint": 40}, Freight: prob.Certain(200),
			Storage: scenario.Storage{PerDay: 25, FreeDays: 3, Days: prob.Certain(5)},
			Time:    scenario.Time{HoursPerWeek: 20, HoldingPerDay: 2, InspectionQueue: prob.Certain(12), DaysToSell: prob.Certain(20)}, N: 16,
			Seed: 1,
		}
		o := scenario.NewMemory(0).Play(l)
		for i := range o.Days {
			near(t, "days", o.Days[i], c.want, 1e-9)
			near(t, "hours", o.Hours[i], 108, 1e-9) // those of hidden damage take days like the others
			near(t, "labour", o.Labour[i], 60*30+40*40+8*30, 1e-9)
			near(t, "storage", o.Storage[i], 50, 1e-9)
			near(t, "holding", o.Holding[i], 2*c.want, 1e-9)
			near(t, "cash", o.Cash[i], 100+70+200+50+2*c.want, 1e-9)
			near(t, "cost", o.Cost[i], 100+1800+1600+70+240+200+50+2*c.want, 1e-9)
		}
	}
}

func TestStorageWithinTheFreeDaysCostsNothing(t *testing.T) {
	l := scenario.Lot{Storage: scenario.Storage{PerDay: 25, FreeDays: 3, Days: prob.Certain(2)}, Time: scenario.Time{HoursPerWeek: 40}, N: 4,
		Seed: 1}
	if o := scenario.NewMemory(0).Play(l); slices.Max(o.Storage) != 0 || slices.Min(o.Storage) != 0 {
		t.Errorf("storage %v", o.Storage)
	}
}

// ranks returns the rank of each value.
func ranks(xs []float64) []float64 {
	at := make([]int, len(xs))
	for i := range at {
		at[i] = i
	}
	sort.Slice(at, func(a, b int) bool { return xs[at[a]] < xs[at[b]] })
	r := make([]float64, len(xs))
	for rank, i := range at {
		r[i] = float64(rank)
	}
	return r
}

func correlation(x, y []float64) float64 {
	mx, my, s := prob.Mean(x), prob.Mean(y), 0.0
	for i := range x {
		s += (x[i] - mx) * (y[i] - my)
	}
	return s / float64(len(x)) / math.Sqrt(prob.Variance(x)*prob.Variance(y))
}

// Source: Gaussian copula of correlation .5 in closed form: Spearman 6/pi asin(rho/2) = .482584, P(both above the median)
// = 1/4 + asin(rho)/(2 pi) = 1/3. Two lines of loading sqrt(.5) have that correlation. The tolerance is three standard
// errors at this number of scenarios.
func TestTwoLinesOnOneFactor(t *testing.T) {
	load := math.Sqrt(.5)
	line := func(id string) repair.Line {
		return repair.Line{ID: id, Job: id, Materials: prob.Three{Low: 100, Likely: 150, High: 700}, Loading: &load}
	}
	o := scenario.NewMemory(0).Play(scenario.Lot{Lines: []repair.Line{line("a"), line("b")}, Time: scenario.Time{HoursPerWeek: 40}, N: 40000,
		Seed: 4})
	a, b := o.Lines[0].Costs(len(o.Cost)), o.Lines[1].Costs(len(o.Cost))
	near(t, "Spearman", correlation(ranks(a), ranks(b)), .482584, .012)
	ma, mb, both := prob.Quantile(prob.Sorted(a), .5), prob.Quantile(prob.Sorted(b), .5), 0.0
	for i := range a {
		if a[i] > ma && b[i] > mb {
			both++
		}
	}
	near(t, "P(both above the median)", both/float64(len(a)), 1./3, .007)
	near(t, "mean", prob.Mean(a), (100+4*150+700)/6., 1.5)
}

func TestSameLotTwiceAndAnotherLineLeavesTheRest(t *testing.T) {
	a, b := scenario.NewMemory(0).Play(lot()), scenario.NewMemory(0).Play(lot())
	if !slices.Equal(a.Cost, b.Cost) || !slices.Equal(a.Days, b.Days) {
		t.Error("the same lot twice differs")
	}
	more := lot()
	more.Lines = append(more.Lines, repair.Line{ID: "c", Job: "c", Materials: prob.Three{Low: 1, Likely: 2, High: 9}})
	if c := scenario.NewMemory(0).Play(more); !slices.Equal(a.Lines[0].Costs(len(a.Cost)), c.Lines[0].Costs(len(a.Cost))) ||
		!slices.Equal(a.Hidden, c.Hidden) || !slices.Equal(a.Freight, c.Freight) {
		t.Error("one more line changed the draws of the others")
	}
}

// A lot of many lines lets the columns of most of them go and draws them anew: to the last bit what one that holds on to them has.
func TestWhatIsNotHeldIsDrawnTheSame(t *testing.T) {
	l := lot()
	for _, room := range []int{0, 60_000, 100_000} {
		m, n := scenario.NewMemory(0), scenario.NewMemory(0).Holding(room)
		a, b := m.Play(l), n.Play(l)
		if !slices.Equal(a.Shares(1e4, 2), b.Shares(1e4, 2)) || !slices.Equal(m.Strip(l, a).Money, n.Strip(l, b).Money) ||
			!slices.Equal(m.Strip(l, a).Days, n.Strip(l, b).Days) {
			t.Errorf("with room for %d bytes another outcome", room)
		}
		for k := range a.Lines {
			if !slices.Equal(a.Lines[k].Costs(l.N), b.Lines[k].Costs(l.N)) {
				t.Errorf("with room for %d bytes line %d costs something else", room, k)
			}
		}
	}
}

// Var(E[cost | factor]) of a line that leans on the factor is the squared loading of its variance; of one that does not, none.
func TestSharedVariance(t *testing.T) {
	for _, c := range []struct{ loading, share float64 }{{0, 0}, {.9, .81}} {
		l := repair.Line{ID: "a", Job: "a", Materials: prob.Three{Low: 0, Likely: 500, High: 1000}, Loading: &c.loading}
		o := scenario.NewMemory(0).Play(scenario.Lot{Lines: []repair.Line{l}, Time: scenario.Time{HoursPerWeek: 40}, N: 16384, Seed: 6})
		shared, _ := o.Shared(o.Cost)
		// a symmetric PERT is near normal
		near(t, "share of the variance", shared/prob.Variance(o.Cost), c.share, .02)
	}
}
