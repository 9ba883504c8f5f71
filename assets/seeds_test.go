package assets_test

import (
	"cmp"
	"fmt"
	"strings"
	"testing"

	"walkline/valuation"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
)

// The lots and seeds of the benchmark.
const (
	seededLots = 20
	seedsEach  = 20
)

// BenchmarkCeilingsBetweenSeeds prints how many steps of the sale the walk-away bid and each rule's ceiling move between seeds, lot by
// lot, for the best plan and, where that is another, for the rebuild with its stops: at most one is wanted. It measures no time.
func BenchmarkCeilingsBetweenSeeds(b *testing.B) {
	for b.Loop() {
		worst, names := reach{}, wreckNames(b)
		for i := range seededLots {
			name := names[i*len(names)/seededLots]
			plans := [][]string{nil}
			if wrecks(b)[name].Plan != valuation.Rebuild {
				plans = append(plans, []string{valuation.Rebuild})
			}
			for _, only := range plans {
				r := betweenSeeds(b, name, only)
				fmt.Printf("%-30s %-8s %s\n", name, strings.Join(only, ""), r)
				if max(r.steps, r.bid) > max(worst.steps, worst.bid) {
					worst = r
				}
			}
		}
		fmt.Printf("widest: %s, between %d seeds of %d lots\n", worst, seedsEach, seededLots)
	}
}

// reach is the widest movement of a ceiling of a lot, and that of its bid, in steps of the sale.
type reach struct {
	rule       string
	low, high  money.Amount
	steps, bid int64
}

func (r reach) String() string {
	return fmt.Sprintf("bid %d steps; widest ceiling %-22s %d steps (%d to %d)", r.bid, cmp.Or(r.rule, "none"), r.steps, r.low/100, r.high/100)
}

func betweenSeeds(t testing.TB, name string, plans []string) reach {
	c, k := wreck(t, name), starter(t)
	ways, err := valuation.ProposeWays(c, k, false)
	if err != nil {
		t.Fatal(err)
	}
	c.WaysOut = ways.WaysOut
	c.WaysOut.Plans = plans
	spans := map[string][2]money.Amount{}
	note := func(rule string, b *money.Amount) {
		at := money.Amount(0)
		if b != nil {
			at = *b
		}
		if span, known := spans[rule]; known {
			spans[rule] = [2]money.Amount{min(span[0], at), max(span[1], at)}
			return
		}
		spans[rule] = [2]money.Amount{at, at}
	}
	for seed := range int64(seedsEach) {
		c.Run.Seed = seed + 1
		a, err := valuation.Value(c, k)
		if err != nil {
			t.Fatal(name, err)
		}
		note("", a.WalkAway)
		for _, x := range a.Ceilings {
			if !x.Any {
				note(x.Rule, x.Bid)
			}
		}
	}
	r := reach{}
	for rule, span := range spans {
		_, low := invoice.Stand(c.Buying.BidSteps, span[0])
		_, high := invoice.Stand(c.Buying.BidSteps, span[1])
		switch {
		case rule == "":
			r.bid = high - low
		case high-low > r.steps:
			r.rule, r.low, r.high, r.steps = rule, span[0], span[1], high-low
		}
	}
	return r
}
