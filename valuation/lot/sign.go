package lot

import (
	"slices"
	"strconv"
)

// Sign is one reason to think of a job or a risk. Every list that is not empty must be met; the damage lists (areas,
// extents, depths) must be met by one and the same cell of the survey. What is not known meets nothing.
type Sign struct {
	Areas   []string `json:"areas"`
	Extents []string `json:"extents"`
	Depths  []string `json:"depths"`
	Loss    []string `json:"loss"`
	Airbags []string `json:"airbags_deployed"`
	State   []string `json:"condition"`
	Keys    []string `json:"keys"` // there | missing; met by neither where it is not known

	Kinds       []string `json:"kinds"`
	Powertrains []string `json:"powertrains"`
	Driven      []string `json:"driven"`
	Levels      []string `json:"levels"`
	Regions     []string `json:"regions"`
	Doors       []string `json:"doors"`
	Missing     []string `json:"missing"`
	Water       []string `json:"water"`
	WaterKinds  []string `json:"water_kinds"`
	Hail        []string `json:"hail"`
	HailSizes   []string `json:"hail_sizes"`
	HailPanels  []string `json:"hail_panels"`
	HailState   []string `json:"hail_state"` // left | glass
	Fire        []string `json:"fire"`
	FirePlaces  []string `json:"fire_places"`
	Causes      []string `json:"mechanical"`
	MinAge      int      `json:"min_age"`   // years on the day of the sale
	MinMiles    int      `json:"min_miles"` // of the odometer reading
}

// HailStates are what a sign may ask of hail beside its dents.
var HailStates = []string{"left", "glass"}

// Asked is one list of a sign: its key, what it asks for, the words that there are, and what the lot has.
type Asked struct {
	Key               string
	Want, Words, Have []string
}

// Lists returns the lists of the sign that a lot meets without its damage, with what that lot has.
func (s Sign) Lists(l Lot) []Asked {
	v := l.Survey
	if v == nil {
		v = &Survey{}
	}
	h, f := v.hail(), v.fire()
	var water Water
	if v.Water != nil {
		water = *v.Water
	}
	doors := ""
	if v.Doors > 0 {
		doors = strconv.Itoa(v.Doors)
	}
	return []Asked{
		{"loss", s.Loss, Losses, l.Loss}, {"airbags_deployed", s.Airbags, AirbagPositions, l.Airbags},
		{"condition", s.State, Conditions, []string{l.Condition}}, {"keys", s.Keys, KeyStates, l.keys()},
		{"kinds", s.Kinds, Kinds, []string{v.Kind}}, {"powertrains", s.Powertrains, Powertrains, []string{v.Powertrain}},
		{"driven", s.Driven, DrivenAxles, []string{v.Driven}}, {"levels", s.Levels, PartsLevels, []string{v.PartsLevel}},
		{"regions", s.Regions, Regions, []string{v.Region}}, {"doors", s.Doors, DoorCounts, []string{doors}},
		{"missing", s.Missing, MissingKeys, v.Missing}, {"water", s.Water, WaterHeights, []string{water.Height}},
		{"water_kinds", s.WaterKinds, WaterKinds, []string{water.Kind}}, {"hail", s.Hail, HailCounts, []string{h.Count}},
		{"hail_sizes", s.HailSizes, HailSizes, []string{h.Size}}, {"hail_panels", s.HailPanels, HailPanels, h.Panels},
		{"hail_state", s.HailState, HailStates, h.states()}, {"fire", s.Fire, FireReaches, []string{f.Reach}},
		{"fire_places", s.FirePlaces, FirePlaces, f.Where}, {"mechanical", s.Causes, Causes, v.Causes},
	}
}

func (s *Survey) fire() Fire {
	if s.Fire == nil {
		return Fire{}
	}
	return *s.Fire
}

// hail returns the hail with its panels named.
func (s *Survey) hail() Hail {
	if s.Hail == nil {
		return Hail{}
	}
	h := *s.Hail
	if len(h.Panels) == 0 {
		h.Panels = HailPanels
	}
	return h
}

func (h Hail) states() []string {
	var is []string
	for i, yes := range []bool{h.Left, h.Glass} {
		if yes {
			is = append(is, HailStates[i])
		}
	}
	return is
}

// Empty reports whether s asks for nothing at all; an empty sign never matches.
func (s Sign) Empty() bool {
	if len(s.Areas)+len(s.Extents)+len(s.Depths)+s.MinAge+s.MinMiles > 0 {
		return false
	}
	return !slices.ContainsFunc(s.Lists(Lot{}), func(a Asked) bool { return len(a.Want) > 0 })
}

// Match returns the cells of the survey that meet s (nil when s asks for no damage) and whether s is met.
func (s Sign) Match(l Lot, survey []Damage) ([]Damage, bool) {
	if s.Empty() || !s.old(l) || slices.ContainsFunc(s.Lists(l), func(a Asked) bool { return !meets(a.Want, a.Have) }) {
		return nil, false
	}
	if len(s.Areas)+len(s.Extents)+len(s.Depths) == 0 {
		return nil, true
	}
	var cells []Damage
	for _, d := range survey {
		if meets(s.Areas, []string{d.Area}) && meets(s.Extents, []string{d.Extent}) && meets(s.Depths, []string{d.Depth}) {
			cells = append(cells, d)
		}
	}
	return cells, len(cells) > 0
}

// Any reports whether one of the signs at least is met.
func Any(signs []Sign, l Lot, survey []Damage) bool {
	return slices.ContainsFunc(signs, func(s Sign) bool { _, ok := s.Match(l, survey); return ok })
}

// old reports whether the lot is as old, and has run as far, as the sign asks.
func (s Sign) old(l Lot) bool {
	age, knownAge := l.age()
	miles, knownMiles := l.Miles()
	return (s.MinAge == 0 || knownAge && age >= s.MinAge) && (s.MinMiles == 0 || knownMiles && miles >= float64(s.MinMiles))
}

// keys says whether the keys are there, nothing where it is not known.
func (l Lot) keys() []string {
	switch {
	case l.Keys == nil:
		return nil
	case *l.Keys:
		return KeyStates[:1]
	}
	return KeyStates[1:]
}

// meets reports whether have holds one of want, or want is empty.
func meets(want, have []string) bool {
	return len(want) == 0 || slices.ContainsFunc(have, func(h string) bool { return slices.Contains(want, h) })
}
