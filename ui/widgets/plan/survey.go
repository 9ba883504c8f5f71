package plan

import (
	"slices"

	"walkline/ui/damage"
	"walkline/valuation/lot"
)

// clockPoints is how many of lot.Areas lie on the ring; they come first.
const clockPoints = damage.ClockPoints

// survey is the state behind the plan: what each of lot.Areas has, and which is selected.
type survey struct {
	cells    []lot.Damage // one for each of lot.Areas, in that order
	selected int
	lastTile int
	lastRing int
}

const frontCell = 11 // "12"

func newSurvey() *survey {
	s := &survey{selected: frontCell, lastTile: clockPoints, lastRing: 2}
	s.set(nil)
	return s
}

// set takes over the damage; areas, extents and depths that the case file does not know are left out.
func (s *survey) set(damage []lot.Damage) {
	s.cells = make([]lot.Damage, len(lot.Areas))
	for i, area := range lot.Areas {
		s.cells[i].Area = area
	}
	for _, d := range damage {
		i := slices.Index(lot.Areas, d.Area)
		if i < 0 || !slices.Contains(lot.Extents, d.Extent) {
			continue
		}
		if !slices.Contains(lot.Depths, d.Depth) {
			d.Depth = ""
		}
		s.cells[i] = d
	}
}

// damage returns the damaged cells in the order of lot.Areas.
func (s *survey) damage() []lot.Damage {
	var out []lot.Damage
	for _, d := range s.cells {
		if d.Extent != "" {
			out = append(out, d)
		}
	}
	return out
}

// setExtent gives the selected cell its extent by number, 0 for none; a cell that was whole starts at the skin. It
// reports whether anything changed.
func (s *survey) setExtent(n int) bool {
	d := &s.cells[s.selected]
	before := *d
	if n == 0 {
		d.Extent, d.Depth = "", ""
		return *d != before
	}
	d.Extent = lot.Extents[n-1]
	if d.Depth == "" {
		d.Depth = lot.Depths[0]
	}
	return *d != before
}

// stepExtent goes on to the next extent, and from the last to none.
func (s *survey) stepExtent() bool {
	n := slices.Index(lot.Extents, s.cells[s.selected].Extent) + 2
	return s.setExtent(n % (len(lot.Extents) + 1))
}

// setDepth gives the selected cell its depth; a cell without damage has none.
func (s *survey) setDepth(depth string) bool {
	d := &s.cells[s.selected]
	if d.Extent == "" || d.Depth == depth {
		return false
	}
	d.Depth = depth
	return true
}

func (s *survey) stepDepth() bool {
	n := slices.Index(lot.Depths, s.cells[s.selected].Depth) + 1
	return s.setDepth(lot.Depths[n%len(lot.Depths)])
}

// choose selects a cell.
func (s *survey) choose(i int) {
	s.selected = i
	if i < clockPoints {
		s.lastRing = i
	} else {
		s.lastTile = i
	}
}

// move goes to the neighbor in a direction (dx, dy of -1, 0, 1; down is positive). Round the ring that is the clock
// point whose way lies nearest to the direction, or the one across; the tiles stand in a column on the right.
func (s *survey) move(dx, dy int) {
	if s.selected >= clockPoints {
		s.moveInTiles(dx, dy)
		return
	}
	hour := s.selected + 1
	if dx > 0 && hour == 3 {
		s.choose(s.lastTile)
		return
	}
	next, previous := hour%12+1, (hour+10)%12+1
	a, b := toward(hour, next, dx, dy), toward(hour, previous, dx, dy)
	switch {
	case a > b && a > 0:
		s.choose(next - 1)
	case b > a && b > 0:
		s.choose(previous - 1)
	case a > 0:
		s.choose((hour+5)%12 + 1 - 1)
	}
}

func (s *survey) moveInTiles(dx, dy int) {
	switch to := s.selected + dy; {
	case dx < 0:
		s.choose(s.lastRing)
	case dy != 0 && to >= clockPoints && to < len(s.cells):
		s.choose(to)
	}
}

// hourX and hourY are the places of the clock points on a circle of radius 1,000, in whole numbers so that two ways of the
// same length compare equal.
var (
	hourX = [13]int{0, 500, 866, 1000, 866, 500, 0, -500, -866, -1000, -866, -500, 0}
	hourY = [13]int{-1000, -866, -500, 0, 500, 866, 1000, 866, 500, 0, -500, -866, -1000}
)

func toward(from, to, dx, dy int) int {
	return (hourX[to]-hourX[from])*dx + (hourY[to]-hourY[from])*dy
}
