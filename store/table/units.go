package table

import (
	"fmt"
	"maps"
	"slices"
)

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
