package valuation_test

import (
	"reflect"
	"runtime"
	"slices"
	"testing"

	"walkline/valuation"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// bar returns a bar of the waterfall.
func bar(t *testing.T, a valuation.Answer, name string) money.Amount {
	t.Helper()
	at := slices.IndexFunc(a.Waterfall, func(b valuation.Bar) bool { return b.Name == name })
	if at < 0 {
		t.Fatalf("no bar %q", name)
	}
	return a.Waterfall[at].Amount
}

// Without a line the other lines and risks cost what they did, to the bit, and the bar of repair is shorter by that line.
func TestARemovedLineTakesItsOwnCostAndNoOther(t *testing.T) {
	k := shipped(t)
	whole := large()
	whole.Run.Scenarios = 2048
	whole.Resale.YearlyChange = &prob.Three{} // days move the price otherwise
	a := value(t, whole, k)
	for _, i := range []int{0, 7, 59} {
		c := whole.Clone()
		c.Repair.Lines[i].Removed = true
		b := value(t, c, k)
		if want := slices.Delete(slices.Clone(a.Repair.Lines), i, i+1); !reflect.DeepEqual(b.Repair.Lines, want) {
			t.Errorf("line %d: the other lines are not what they were", i)
		}
		if !reflect.DeepEqual(b.Hidden, a.Hidden) {
			t.Errorf("line %d: hidden damage is not what it was", i)
		}
		for _, name := range []string{"Resale", "Selling", "Hidden damage", "Freight", "Storage"} {
			if bar(t, a, name) != bar(t, b, name) {
				t.Errorf("line %d: %s was %d and is %d", i, name, bar(t, a, name), bar(t, b, name))
			}
		}
		gone := float64(bar(t, b, "Repair")-bar(t, a, "Repair")) / 100
		if d := gone - a.Repair.Lines[i].Mean; d > .011 || d < -.011 {
			t.Errorf("line %d cost %.4f, the bar of repair is shorter by %.2f", i, a.Repair.Lines[i].Mean, gone)
		}
	}
}

// The answer does not depend on how many cores there are.
func TestTwoCoresAndOneGiveTheSameCents(t *testing.T) {
	k := shipped(t)
	c := large()
	c.Run.Scenarios = 4096
	cores := runtime.GOMAXPROCS(1)
	defer runtime.GOMAXPROCS(cores)
	one := value(t, c, k)
	runtime.GOMAXPROCS(max(2, cores))
	if two := value(t, c, k); !reflect.DeepEqual(one, two) {
		t.Errorf("one core %v, more %v", most(one), most(two))
	}
}

// Worse in every respect at once never raises the bid of the large case, nor does each rate of labour by itself.
func TestWorseNeverRaisesTheBidOfALargeCase(t *testing.T) {
	k := shipped(t)
	c := large()
	c.Run.Scenarios = 2048
	before := most(value(t, c, k))
	for _, change := range []func(*valuation.Case){
		func(c *valuation.Case) { c.Labour.Rates["body"] *= 1.3 },
		func(c *valuation.Case) { c.Labour.Rates["mechanical"] *= 1.3 },
		func(c *valuation.Case) { dearer(&c.Repair.Lines[5].Parts[0].Options[0].Price) },
		func(c *valuation.Case) { *c.Repair.Lines[3].Chance = 1 },
		func(c *valuation.Case) { c.Hidden.Risks[4].Chance.A += 3 },
		func(c *valuation.Case) { dearer(&c.Hidden.Risks[9].Cost) },
		func(c *valuation.Case) { c.Buying.Fees[0].Rows[0].Flat += 9000; c.Buying.Fees[0].Rows[1].Flat += 9000 },
		func(c *valuation.Case) { c.Time.CapitalRate += .2 },
	} {
		d := c.Clone()
		change(&d)
		if after := most(value(t, d, k)); after > before {
			t.Errorf("worse raised the bid from %d to %d", before, after)
		}
	}
}
