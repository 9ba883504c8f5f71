package table

import (
	"fmt"
	"maps"
	"slices"

	"walkline/store/cell"
	"walkline/valuation/lot"
)

// What is doubted of an odometer reading that its cell says no unit of: so few, on so old a vehicle, is likelier a count of thousands.
// Starter values, ours.
const (
	fewReading = 10 // below it the instrument shows nothing
	lowReading = 1000
	doubtedAge = 2 // years, of the model year
)

// Doubt returns why a reading whose row says no unit may be one of thousands, nil where it may not. The vehicle is as old as on a day.
func Doubt(reading float64, l cell.Length, modelYear int, on lot.Date) error {
	if l.Unit != "" || reading < fewReading || reading >= lowReading || modelYear == 0 || on == "" || on.Year()-modelYear < doubtedAge {
		return nil
	}
	if l.Status != "" && l.Status != "actual" {
		return nil
	}
	return fmt.Errorf("%v is little for a vehicle of %d: write %vk where thousands are meant, else its unit", reading, modelYear, reading)
}

// unitTally is how many cells of lengths say which unit, and how many say none.
type unitTally struct {
	said   map[string]int
	silent int
}

// settles returns the unit of the silent cells where half of all cells at least say one and none says another; empty: they don't settle it.
func (t unitTally) settles() string {
	for unit, n := range t.said {
		if len(t.said) == 1 && n >= t.silent {
			return unit
		}
	}
	return ""
}

// mixed says that some cells name a unit and others go by that of the column; nothing where they are the same.
func (t unitTally) mixed(heading, unit string) (notes []string) {
	for _, other := range slices.Sorted(maps.Keys(t.said)) {
		if t.silent > 0 && unit != "" && other != unit {
			notes = append(notes, fmt.Sprintf("%q: cells that say %s: %d. They stay so. Cells that say no unit: %d. They are read in %s.",
				heading, other, t.said[other], t.silent, unit))
		}
	}
	return notes
}
