package lot

// What no vehicle and no comparable exceeds: more is a slip of the pen. Every table that is read, every form and the check of a case hold
// to these, so that nothing is taken in that the valuation refuses. Starter values, ours.
const (
	MostMileage    = 2_000_000 // on the odometer, miles or kilometers
	MostDistance   = 20_000    // miles from the buyer
	FirstModelYear = 1900
	LastModelYear  = 2200 // where the day is not known, see LatestModelYear
)

// LatestModelYear returns the newest model year that may be for sale on a day: makers run ahead of the calendar by a year or two.
func LatestModelYear(on Date) int {
	if on.Known() {
		return on.Year() + 2
	}
	return LastModelYear
}
