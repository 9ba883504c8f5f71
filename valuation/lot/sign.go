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
	MinSoak     int      `json:"min_soak"`  // hours under water
	Only        []string `json:"only"`      // the lot was lost by nothing else than these
	Paints      []string `json:"paints"`
}

// HailStates are what a sign may ask of hail beside its dents.
var HailStates = []string{"left", "glass"}

// Asked is one list of a sign: its key, what it asks for, the words that there are, and what the lot has.
type Asked struct {
	Key               string
	Want, Words, Have []string
}

// Lists returns the lists of the sign that a lot meets without its damage, with what that lot has.
func (s *Sign) Lists(l *Lot) []Asked {
	v := l.Survey
	if v == nil {
		v = &Survey{}
	}
	h, f := v.hail(), v.fire()
	counts, sizes := h.dents()
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
		{"water_kinds", s.WaterKinds, WaterKinds, []string{water.Kind}}, {"hail", s.Hail, HailCounts, counts},
		{"hail_sizes", s.HailSizes, HailSizes, sizes}, {"hail_panels", s.HailPanels, HailPanels, h.Hit()},
		{"hail_state", s.HailState, HailStates, h.states()}, {"fire", s.Fire, FireReaches, []string{f.Reach}},
		{"fire_places", s.FirePlaces, FirePlaces, f.Where}, {"mechanical", s.Causes, Causes, l.causes()},
		{"paints", s.Paints, Paints, []string{v.Paint}}, {"only", s.Only, Losses, l.Loss},
	}
}

func (s *Survey) fire() Fire {
	if s.Fire == nil {
		return Fire{}
	}
	return *s.Fire
}

func (s *Survey) hail() Hail {
	if s.Hail == nil {
		return Hail{}
	}
	return *s.Hail
}

// dents returns the counts and the sizes of all panels that were hit.
func (h Hail) dents() (counts, sizes []string) {
	for _, panel := range h.Hit() {
		d := h.On(panel)
		counts, sizes = append(counts, d.Count), append(sizes, d.Size)
	}
	return counts, sizes
}

// dented reports whether one and the same panel meets all that the sign asks of hail.
func (s *Sign) dented(h Hail) bool {
	return slices.ContainsFunc(h.Hit(), func(panel string) bool {
		d := h.On(panel)
		return has(s.HailPanels, panel) && has(s.Hail, d.Count) && has(s.HailSizes, d.Size)
	})
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
func (s *Sign) Empty() bool {
	return len(s.Areas)+len(s.Extents)+len(s.Depths)+len(s.Loss)+len(s.Airbags)+len(s.State)+len(s.Keys)+s.MinAge+s.MinMiles+s.MinSoak == 0 &&
		!s.surveyed()
}

// surveyed reports whether the sign asks for a word of the survey.
func (s *Sign) surveyed() bool {
	return len(s.Kinds)+len(s.Powertrains)+len(s.Driven)+len(s.Levels)+len(s.Regions)+len(s.Doors)+len(s.Paints)+len(s.Only) > 0 ||
		len(s.Missing)+len(s.Water)+len(s.WaterKinds)+len(s.Hail)+len(s.HailSizes)+len(s.HailPanels)+len(s.HailState) > 0 ||
		len(s.Fire)+len(s.FirePlaces)+len(s.Causes) > 0
}

// Match returns the cells of the survey that meet s (nil when s asks for no damage) and whether s is met.
func (s *Sign) Match(l *Lot, survey []Damage) ([]Damage, bool) {
	cells := len(s.Areas)+len(s.Extents)+len(s.Depths) > 0
	if !cells && s.Empty() || !s.met(l) {
		return nil, false
	}
	if !cells {
		return nil, true
	}
	return s.hit(survey)
}

// hit returns the cells that meet the damage lists, and whether there are any.
func (s *Sign) hit(survey []Damage) ([]Damage, bool) {
	var cells []Damage
	for _, d := range survey {
		if has(s.Areas, d.Area) && has(s.Extents, d.Extent) && has(s.Depths, d.Depth) {
			cells = append(cells, d)
		}
	}
	return cells, len(cells) > 0
}

// met reports whether a lot meets all that the sign asks for beside damage. Most signs ask for nothing of the survey.
func (s *Sign) met(l *Lot) bool {
	if !meets(s.Loss, l.Loss) || !meets(s.Airbags, l.Airbags) || !has(s.State, l.Condition) || !meets(s.Keys, l.keys()) || !s.old(l) {
		return false
	}
	if !s.surveyed() {
		return true
	}
	if !s.plain(l) || s.special() && slices.ContainsFunc(s.Lists(l), func(a Asked) bool { return !meets(a.Want, a.Have) }) {
		return false
	}
	return l.Survey == nil || l.Survey.Hail == nil || len(l.Survey.Hail.Each) == 0 || s.dented(*l.Survey.Hail)
}

// plain reports whether the lot meets what the sign asks for of its kind, and has what it asks more about: cheap to say, and most often no.
func (s *Sign) plain(l *Lot) bool {
	v := l.Survey
	if v == nil {
		v = &Survey{}
	}
	absent := len(s.Missing) > 0 && len(v.Missing) == 0 || len(s.Water)+len(s.WaterKinds) > 0 && v.Water == nil ||
		len(s.Hail)+len(s.HailSizes)+len(s.HailState) > 0 && v.Hail == nil || len(s.Fire)+len(s.FirePlaces) > 0 && v.Fire == nil
	return !absent && has(s.Kinds, v.Kind) && has(s.Powertrains, v.Powertrain) && has(s.Driven, v.Driven) && has(s.Levels, v.PartsLevel) &&
		has(s.Regions, v.Region) && has(s.Paints, v.Paint) && meets(s.Only, l.Loss) && (len(s.Causes) == 0 || meets(s.Causes, l.causes()))
}

// special reports whether the sign asks for more of the survey than what plain looks at.
func (s *Sign) special() bool {
	return len(s.Doors)+len(s.Missing)+len(s.Water)+len(s.WaterKinds)+len(s.Hail)+len(s.HailSizes)+len(s.HailPanels)+len(s.HailState) > 0 ||
		len(s.Fire)+len(s.FirePlaces) > 0
}

// Any reports whether one of the signs at least is met.
func Any(signs []Sign, l Lot, survey []Damage) bool {
	for i := range signs {
		if _, ok := signs[i].Match(&l, survey); ok {
			return true
		}
	}
	return false
}

// old reports whether the lot is as old, has run as far and lay in water as long as the sign asks, and was lost by nothing else.
func (s *Sign) old(l *Lot) bool {
	if len(s.Only) > 0 && slices.ContainsFunc(l.Loss, func(x string) bool { return !slices.Contains(s.Only, x) }) {
		return false
	}
	if soak := l.soak(); s.MinSoak > 0 && (soak == nil || *soak < float64(s.MinSoak)) {
		return false
	}
	if s.MinAge > 0 {
		if age, known := l.Age(); !known || age < s.MinAge {
			return false
		}
	}
	if s.MinMiles > 0 {
		if miles, known := l.Miles(); !known || miles < float64(s.MinMiles) {
			return false
		}
	}
	return true
}

// soak returns the hours under water, nil where they are not known.
func (l Lot) soak() *float64 {
	if l.Survey == nil || l.Survey.Water == nil {
		return nil
	}
	return l.Survey.Water.Hours
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

func has(want []string, word string) bool { return len(want) == 0 || slices.Contains(want, word) }

// meets reports whether have holds one of want, or want is empty.
func meets(want, have []string) bool {
	return len(want) == 0 || slices.ContainsFunc(have, func(h string) bool { return slices.Contains(want, h) })
}
