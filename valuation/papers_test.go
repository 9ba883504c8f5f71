package valuation_test

import (
	"math"
	"strings"
	"testing"

	"walkline/valuation"
)

// Fees for title, inspection and registration that were entered take their amount off the profit, as the flat cost of selling does; those
// that nobody entered are named as not counted, and a zero that somebody entered is a figure. By definition.
func TestFeesForThePapersAreCountedOrNamed(t *testing.T) {
	worth := func(papers *float64, flat float64) (float64, bool) {
		c := sure()
		c.Selling.Papers, c.Selling.Flat = papers, c.Selling.Flat+flat
		a, err := valuation.Value(c, valuation.Knowledge{})
		if err != nil {
			t.Fatal(err)
		}
		selling := 0.0
		for _, b := range a.Waterfall {
			if b.Kind == valuation.BarSelling {
				selling = float64(b.Amount) / 100
			}
		}
		return selling, strings.Contains(strings.Join(a.Warnings, " "), "nothing is counted for them")
	}
	none, fees := 0.0, 340.0
	silent, said := worth(nil, 0)
	zero, saidOfZero := worth(&none, 0)
	full, saidOfFees := worth(&fees, 0)
	flat, _ := worth(nil, 340)
	if !said || saidOfZero || saidOfFees || silent != zero || math.Abs(silent-full-340) > .005 || full != flat {
		t.Errorf("selling %v, zero %v, fees %v, flat %v; named %v, %v, %v", silent, zero, full, flat, said, saidOfZero, saidOfFees)
	}
}
