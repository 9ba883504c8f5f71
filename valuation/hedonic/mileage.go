package hedonic

import "math"

// Form is a curve of the price over the mileage; each is scaled so that its slope at 50,000 miles is 1 per
// 10,000 miles.
type Form string

// Forms are the curves that a fit tries, the simplest first.
var Forms = []Form{"linear", "root", "log"}

func (f Form) effect() string { return "mileage/" + string(f) }

// The mileages in miles that set the forms' scale: slopes are quoted at the pivot; the logarithm starts bending at its offset.
const (
	pivot     = 50_000
	perUnit   = 10_000
	logOffset = 15_000
)

// At returns the curve at a mileage in miles.
func (f Form) At(miles float64) float64 {
	switch f {
	case "root":
		return 2 * math.Sqrt(pivot*miles) / perUnit
	case "log":
		return math.Log((miles+logOffset)/logOffset) * (pivot + logOffset) / perUnit
	}
	return miles / perUnit
}
