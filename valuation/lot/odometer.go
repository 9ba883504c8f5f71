package lot

import "fmt"

// Federal odometer disclosure ends for a vehicle a number of years after 1 January of the calendar year of its model
// year: ten for model years to 2010, twenty from 2011 on. Source: 49 CFR 580.17(a)(3).
const (
	lastShortYear = 2010
	shortYears    = 10
	longYears     = 20
)

// ExemptFrom returns the day from which a vehicle of that model year needs no federal odometer disclosure; not known
// without a model year. It is also exempt above a gross weight rating of 16,000 lb, or when it has no drive of its own.
func ExemptFrom(modelYear int) Date {
	switch {
	case modelYear <= 0:
		return ""
	case modelYear <= lastShortYear:
		return Date(fmt.Sprintf("%04d-01-01", modelYear+shortYears))
	}
	return Date(fmt.Sprintf("%04d-01-01", modelYear+longYears))
}

// OdometerExempt reports whether a vehicle of that model year is exempt by its age on a day, and whether that is known.
func OdometerExempt(modelYear int, on Date) (exempt, known bool) {
	days, known := ExemptFrom(modelYear).Days(on)
	return known && days >= 0, known
}
