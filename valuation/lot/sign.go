package lot

import "slices"

// Sign is one reason to think of a job or a risk. Every list that is not empty must be met; the damage lists (areas,
// extents, depths) must be met by one and the same cell of the survey.
type Sign struct {
	Areas   []string `json:"areas"`
	Extents []string `json:"extents"`
	Depths  []string `json:"depths"`
	Loss    []string `json:"loss"`
	Airbags []string `json:"airbags_deployed"`
	State   []string `json:"condition"`
	Keys    []string `json:"keys"` // there | missing; met by neither where it is not known
}

// Empty reports whether s asks for nothing at all; an empty sign never matches.
func (s Sign) Empty() bool {
	return len(s.Areas)+len(s.Extents)+len(s.Depths)+len(s.Loss)+len(s.Airbags)+len(s.State)+len(s.Keys) == 0
}

// Match returns the cells of the survey that meet s (nil when s asks for no damage) and whether s is met.
func (s Sign) Match(l Lot, survey []Damage) ([]Damage, bool) {
	if s.Empty() || !meets(s.Loss, l.Loss) || !meets(s.Airbags, l.Airbags) || !meets(s.State, []string{l.Condition}) || !meets(s.Keys, l.keys()) {
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
