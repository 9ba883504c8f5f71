package valuation_test

import (
	"testing"

	"walkline/valuation/lot"
	"walkline/valuation/resale"
)

// The check of a case takes what the limits of package lot take, to the unit, and names what lies beyond.
func TestTheCheckHoldsToTheLimits(t *testing.T) {
	for _, over := range []int{0, 1} {
		c := demoLot(t)
		miles, far, read := float64(lot.MostMileage+over), float64(lot.MostDistance+over), lot.MostMileage+over
		c.Lot.Odometer, c.Lot.ModelYear = &read, lot.LatestModelYear(c.ValuedOn)+over
		c.Resale.Comparables, c.Resale.Rows = "", []resale.Row{{Price: 100, ModelYear: 2019, Mileage: &miles, DistanceMi: &far}}
		keys := map[string]bool{}
		for _, f := range c.Check() {
			keys[f.Key] = true
		}
		for _, key := range []string{"lot.odometer", "lot.model_year", "resale.rows[0].mileage", "resale.rows[0].distance"} {
			if keys[key] != (over > 0) {
				t.Errorf("%d over the limit: a fault at %s: %v", over, key, keys[key])
			}
		}
	}
}
