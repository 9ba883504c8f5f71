package sale_test

import (
	"math"
	"testing"

	"walkline/valuation/invoice"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/sale"
)

// uniform is the law of prices spread evenly over 0..High.
type uniform struct{ high float64 }

func (u uniform) CDF(x float64) float64 { return min(1, max(0, x/u.high)) }

var usd, _ = money.Lookup("USD")

func amount(a money.Amount) *money.Amount { return &a }

// unit is how many legal bids stand for a price of 1 in the instances of the literature, one a minor unit.
const unit = 4000

// priced returns n lots whose prices follow the law, that are worth so much and can be bid on up to the unit.
func priced(n int, law sale.Law, worth money.Amount) []sale.Lot {
	lots := make([]sale.Lot, n)
	for i := range lots {
		lots[i] = sale.Lot{ID: string(rune('a' + i)), Worth: worth, WalkAway: amount(unit), Hammer: law,
			Steps: []invoice.Step{{Step: 1}}, Terms: invoice.Terms{Tax: invoice.Tax{Base: "hammer"}}}
	}
	return lots
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.7f, want %.7f (within %g)", what, got, want, tol)
	}
}

// share returns the plan's value and first bid in units of 1.
func share(t *testing.T, s sale.Sale) (value, bid float64) {
	t.Helper()
	s.Currency = usd
	if faults := s.Check(); len(faults) > 0 {
		t.Fatal(faults)
	}
	p := sale.New(s)
	a := p.Answer()
	if !a.Exact {
		t.Fatal("not worked out exactly")
	}
	near(t, "value by following the plan", p.Follow(p), a.Expected, 1e-9+1e-12*a.Expected)
	if b := a.Lots[0].Bid; b != nil {
		bid = float64(*b) / unit
	}
	return a.Expected * 100 / unit, bid
}

// One bay, even prices: v' = (1 + v^2) / 2 with the first bid 1 - v. Source: Cayley 1875 and Moser 1956, from memory; the values
// found again by the recursion.
func TestOneBayOfEvenPrices(t *testing.T) {
	before := 0.0
	for n, want := range []float64{.5, .625, .6953125, .7417297, .7750815} {
		near(t, "the recursion", (1+before*before)/2, want, 5e-8)
		value, bid := share(t, sale.Sale{Purse: sale.Purse{Cash: 10 * unit, Bays: 1}, Lots: priced(n+1, uniform{unit / 100.}, unit)})
		near(t, "value", value, want, 1.0/unit)
		near(t, "first bid", bid, 1-before, 1.5/unit)
		before = want
	}
}

// One bay, PERT prices from 0 to the worth. Likely at the high end the chance of a price up to x is x^5: v' = v + (1-v)^6/6; likely
// at the low end it is 1 - (1-x)^5: v' = (5 + v^6)/6. Source: the integral of v against the density, by hand.
func TestOneBayOfPERTPrices(t *testing.T) {
	for likely, next := range map[float64]func(v float64) float64{
		unit / 100.: func(v float64) float64 { return v + math.Pow(1-v, 6)/6 },
		0:           func(v float64) float64 { return (5 + math.Pow(v, 6)) / 6 },
	} {
		v := 0.0
		for n := range 5 {
			v = next(v)
			law := prob.Three{Likely: likely, High: unit / 100.}
			value, _ := share(t, sale.Sale{Purse: sale.Purse{Cash: 10 * unit, Bays: 1}, Lots: priced(n+1, law, unit)})
			near(t, "value", value, v, 1.0/unit)
		}
	}
}

// Two lots of even prices, worth 1 each, and cash 1: the first bid is sqrt(3) - 1 and the value sqrt(3) - 5/6. Source: with x the
// first price and v(c) = c - c^2/2, the first bid solves 1 - b + v(1-b) = v(1); by hand, and found again by the sum below.
func TestTwoLotsAndCashForOne(t *testing.T) {
	v := func(c float64) float64 { return c - c*c/2 }
	sum := 0.0
	for i := range 100_000 {
		x := (float64(i) + .5) / 100_000
		sum += max(v(1), 1-x+v(1-x)) / 100_000
	}
	near(t, "the sum", sum, math.Sqrt(3)-5./6, 1e-6)
	value, bid := share(t, sale.Sale{Purse: sale.Purse{Cash: unit, Bays: 2}, Lots: priced(2, uniform{unit / 100.}, unit)})
	near(t, "value", value, math.Sqrt(3)-5./6, 1.5/unit)
	near(t, "first bid", bid, math.Sqrt(3)-1, 1.5/unit)
}

// As many lots as cash 1 buys when each price is even on 0..1: 1, 1.5, 1.898717 of one, two, three. Source: Coffman, Flatto and
// Weber, Advances in Applied Probability 19 (1987) 454-473, from memory; found again by the sums below. The worth is so great
// that the price itself does not tell.
func TestAsManyAsTheCashBuys(t *testing.T) {
	const worth = money.Amount(unit) * 100_000
	after := func(c float64) float64 { return c }
	for n, want := range []float64{1, 1.5, 1.898717} {
		if n > 0 {
			before := after
			after = func(c float64) float64 { return fill(before, c) }
		}
		near(t, "the sum", after(1), want, 2e-4)
		lots := priced(n+1, uniform{unit / 400.}, worth)
		for i := range lots {
			lots[i].WalkAway = amount(unit / 4)
		}
		value, _ := share(t, sale.Sale{Purse: sale.Purse{Cash: unit / 4, Bays: n + 1}, Lots: lots})
		near(t, "lots won", value/100_000, want, 8.0/unit)
	}
}

// fill returns the mean of the better of taking a price that fits c and leaving it, over even prices.
func fill(before func(float64) float64, c float64) float64 {
	const parts = 1000
	sum, lost := 0.0, before(c)
	for i := range parts {
		x := (float64(i) + .5) / parts
		v := lost
		if x <= c {
			v = max(v, 1+before(c-x))
		}
		sum += v / parts
	}
	return sum
}

// With certain prices the plan is the 0-1 knapsack. Source: the instances P01 and P07 of Burkardt's collection after Kreher and Stinson,
// with their optima 309 and 1458, from memory; the optima found again by enumeration.
func TestKnapsacks(t *testing.T) {
	for _, c := range []struct {
		weights, profits []int
		cash, best       int
	}{
		{[]int{23, 31, 29, 44, 53, 38, 63, 85, 89, 82}, []int{92, 57, 49, 68, 60, 43, 67, 84, 87, 72}, 165, 309},
		{[]int{70, 73, 77, 80, 82, 87, 90, 94, 98, 106, 110, 113, 115, 118, 120},
			[]int{135, 139, 149, 150, 156, 163, 173, 184, 192, 201, 210, 214, 221, 229, 240}, 750, 1458},
	} {
		best := 0
		for set := range 1 << len(c.weights) {
			weight, profit := 0, 0
			for i := range c.weights {
				if set>>i&1 == 1 {
					weight += c.weights[i]
					profit += c.profits[i]
				}
			}
			if weight <= c.cash {
				best = max(best, profit)
			}
		}
		if best != c.best {
			t.Errorf("enumeration finds %d, remembered %d", best, c.best)
		}
		lots := priced(len(c.weights), nil, 0)
		for i := range lots {
			lots[i].Hammer = prob.Certain(float64(c.weights[i]) / 100)
			lots[i].Worth = money.Amount(c.weights[i] + c.profits[i])
		}
		value, _ := share(t, sale.Sale{Purse: sale.Purse{Cash: money.Amount(c.cash), Bays: len(lots)}, Lots: lots})
		near(t, "profit", value*unit, float64(best), 1e-6)
	}
}
