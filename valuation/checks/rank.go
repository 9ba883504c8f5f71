package checks

import "slices"

// Looks is what the open looks are worth as a whole.
type Looks struct {
	Basis   string   `json:"basis"`   // guess | stand_in | none: the hammer price that the worth rests on
	Perfect *float64 `json:"perfect"` // what knowing of every risk whether it is there would be worth; nil: not worked out
	Best    []Round  `json:"best"`
}

// The bases of a worth.
const (
	Guess   = "guess"    // the buyer's guess of the hammer price
	StandIn = "stand_in" // no guess: as if the hammer most likely fell at the walk-away bid
	NoBasis = "none"     // nothing to rest on: no guess and no bid, or a stop stands
)

// Round is the looks to take when there are so many minutes.
type Round struct {
	Minutes float64  `json:"minutes"`
	Spent   float64  `json:"spent"` // minutes that the looks take
	Worth   float64  `json:"worth"` // of all of them together, see JointWorth
	Looks   []string `json:"looks"`
}

// budgets are the minutes for which a round is put together.
var budgets = []float64{10, 20, 40}

// Rank fills in what each open look is worth, puts the looks in order and puts the rounds together: the open looks by
// worth less fee a minute, those that cannot change the bid after them, those already answered last. Equal ones keep the
// order of the walk. Everything that is no inspection stays where it is.
func Rank(items []Item, s Stakes) ([]Item, Looks) {
	worth := s.Worth()
	items = slices.Clone(items)
	for i, it := range items {
		if w, ok := worth[it.ID]; ok && it.Kind == "inspection" {
			items[i].Worth = &w
		}
	}
	slices.SortStableFunc(items, byPace)
	perfect := s.Perfect()
	looks := Looks{Perfect: &perfect}
	for _, minutes := range budgets {
		looks.Best = append(looks.Best, s.round(items, minutes, worth))
	}
	return items, looks
}

// byPace orders two items.
func byPace(a, b Item) int {
	if a.Kind != "inspection" || b.Kind != "inspection" {
		return order(a) - order(b)
	}
	x, y := pace(a), pace(b)
	switch {
	case x > y:
		return -1
	case x < y:
		return 1
	}
	return 0
}

// pace is the worth of a look less its fee, a minute; above every look for what does not agree, below every open one for
// one that is answered.
func pace(i Item) float64 {
	if i.Fixed {
		return 1e12
	}
	if i.Worth == nil {
		return -1e12
	}
	return (*i.Worth - i.Fee) / max(i.Minutes, leastMinutes)
}

// leastMinutes is what a look takes at least.
const leastMinutes = 0.5

// round takes the open looks in their order, each that still fits and is worth its fee.
func (s Stakes) round(ranked []Item, minutes float64, single map[string]float64) Round {
	r := Round{Minutes: minutes, Looks: []string{}}
	best := 0.0
	for _, i := range ranked {
		if i.Worth != nil && *i.Worth > i.Fee && r.Spent+i.Minutes <= minutes {
			r.Looks = append(r.Looks, i.ID)
			r.Spent += i.Minutes
			best = max(best, single[i.ID])
		}
	}
	r.Worth = max(best, s.JointWorth(r.Looks)) // together they are worth no less than the best of them
	return r
}
