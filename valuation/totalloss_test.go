package valuation_test

import (
	"math"
	"testing"

	"walkline/valuation/prob"
)

// The value before the damage comes from the guess by way of the brand's discount, 0.28 likely: 10,800 / 0.72 = 15,000.
// Alabama calls it a total loss from 75 % of that on (Code of Ala. 32-8-87).
func TestTotalLossOfALot(t *testing.T) {
	k := shipped(t)
	c := small(1)
	c.Resale.Rows, c.Resale.Guess = nil, &prob.Three{Low: 10800, Likely: 10800, High: 10800}
	c.Lot.Title.IssuedIn, c.Lot.Title.RegisterIn = "US-MI", "US-AL"
	a := value(t, c, k)
	if a.TotalLoss == nil || a.TotalLoss.Value != *usd(15000) {
		t.Fatalf("%+v", a.TotalLoss)
	}
	if want := a.Repair.Mean + a.Hidden.Mean; math.Abs(float64(a.TotalLoss.Repair)/100-want) > .01 {
		t.Errorf("repair %d, want %g", a.TotalLoss.Repair, want)
	}
	var where []string
	for _, call := range a.TotalLoss.Callings {
		where = append(where, call.Where)
		if call.Where == "Alabama" && call.Applies != (a.TotalLoss.Repair*4 >= a.TotalLoss.Value*3) {
			t.Errorf("%+v", call)
		}
	}
	if len(where) != 4 || where[0] != "Alabama" || where[1] != "United States (federal)" || where[2] != "Michigan" {
		t.Errorf("%v", where)
	}
	for likely, want := range map[float64]bool{100: false, 14900: true} { // 49 U.S.C. 30501: salvage value + repair > value
		c.Market.HammerGuess = &prob.Three{Low: likely, Likely: likely, High: likely}
		if call := value(t, c, k).TotalLoss.Callings[1]; call.Unknown || call.Applies != want {
			t.Errorf("hammer at %g: %+v", likely, call)
		}
	}
	c.Lot.Title.IssuedIn, c.Lot.Title.RegisterIn = "", ""
	if a := value(t, c, k); a.TotalLoss != nil {
		t.Errorf("no place, yet %+v", a.TotalLoss)
	}
}
