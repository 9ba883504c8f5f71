package resale

import "walkline/valuation/lot"

// MileageIn returns the row's mileage in mi or km (empty: mi), and whether it is known.
func (r Row) MileageIn(unit string) (float64, bool) {
	if r.Mileage == nil {
		return 0, false
	}
	x := *r.Mileage
	if r.Unit == "km" && unit != "km" {
		x /= lot.KilometresPerMile
	}
	if r.Unit != "km" && unit == "km" {
		x *= lot.KilometresPerMile
	}
	return x, true
}
