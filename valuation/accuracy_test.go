package valuation_test

import (
	"fmt"
	"math"
	"testing"

	"walkline/valuation"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// seeds is how many seeds the accuracy is read from.
const seeds = 20

// acrossSeeds values the case with each seed: the profit's mean, tenth percentile and worst tenth at one bid, and the
// walk-away bid where bids rise by one unit of money, so that its movement shows however small.
func acrossSeeds(t testing.TB, c valuation.Case, k valuation.Knowledge, at money.Amount) [][4]float64 {
	c = c.Clone()
	c.Buying.BidSteps = []invoice.Step{{Step: 100}}
	var all [][4]float64
	for seed := range int64(seeds) {
		c.Run.Seed = seed + 1
		a, o, err := valuation.NewMemory().Weigh(t.Context(), c, k)
		if err != nil || a.WalkAway == nil {
			t.Fatal(err, a.Reasons)
		}
		p := o.At(at).Profit
		all = append(all, [4]float64{p.Mean, p.P10, p.WorstTenth, float64(*a.WalkAway) / 100})
	}
	return all
}

// spread is the standard deviation and the range of one figure between seeds.
func spreadOf(all [][4]float64, k int) (sd, reach float64) {
	var xs []float64
	for _, row := range all {
		xs = append(xs, row[k])
	}
	sorted := prob.Sorted(xs)
	return math.Sqrt(prob.Variance(xs) * float64(len(xs)) / float64(len(xs)-1)), sorted[len(xs)-1] - sorted[0]
}

// printSpreads prints how far the figures move between seeds, beside plain random draws of the same size.
func printSpreads(c valuation.Case, a valuation.Answer, engine, plain [][4]float64) {
	fmt.Printf("Between %d seeds, %d scenarios, standard deviation (range); bids by one unit here, by one step of the sale there:\n", seeds,
		c.Run.Scenarios)
	for k, name := range []string{"mean profit", "profit, 10th", "profit, worst tenth", "walk-away bid"} {
		sd, reach := spreadOf(engine, k)
		line := fmt.Sprintf("  %-20s engine %7.2f (%7.2f)", name, sd, reach)
		if len(plain) > 1 {
			theirs, wide := spreadOf(plain, k)
			line += fmt.Sprintf("   plain Monte Carlo %7.2f (%7.2f)   ratio %5.1f", theirs, wide, theirs/sd)
		}
		fmt.Println(line)
	}
}

// The walk-away bid moves by less than one bid step between seeds at the default size, however many lines there are.
func TestSeedsMoveTheBidByLessThanAStep(t *testing.T) {
	k := shipped(t)
	for name, c := range map[string]valuation.Case{"a large case": large(), "a small one": uncertain(1, lossRule())} {
		c.Run.Scenarios = valuation.Defaults().Run.Scenarios
		all := acrossSeeds(t, c, k, 100000)
		sd, reach := spreadOf(all, 3)
		step := invoice.Next(c.Buying.BidSteps, money.Amount(100*all[0][3])) - money.Amount(100*all[0][3])
		t.Logf("%s: the bid moves by %.2f (sd %.2f) about %.0f, a step is %d", name, reach, sd, all[0][3], step/100)
		if reach >= float64(step)/100 {
			t.Errorf("%s: the bid moves by %.2f between seeds, a step is %d", name, reach, step/100)
		}
	}
}
