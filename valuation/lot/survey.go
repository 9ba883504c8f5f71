package lot

import (
	"cmp"
	"slices"

	"walkline/valuation/prob"
)

// Survey is what a walk round the vehicle says beside the damaged areas. Every key may be left out: what is left out is not
// known, never "none". JSON keys are those of the case file.
type Survey struct {
	Kind       string   `json:"kind"`
	Powertrain string   `json:"powertrain"`
	Driven     string   `json:"driven"`      // wheels
	PartsLevel string   `json:"parts_level"` // price level of its parts
	Region     string   `json:"region"`      // of its life: how much salt lay on the roads
	Paint      string   `json:"paint"`       // kind of color: how far it must be blended
	Doors      int      `json:"doors"`       // 2 to 5, lids of a hatch or tailgate counted; 0: not known
	Missing    []string `json:"missing"`     // what is not there, apart from damage
	Water      *Water   `json:"water"`
	Hail       *Hail    `json:"hail"`
	Fire       *Fire    `json:"fire"`
	Causes     []string `json:"mechanical"` // of a mechanical loss
}

// Water is how high it stood, what it was, and how long.
type Water struct {
	Height string   `json:"height"`
	Kind   string   `json:"kind"`
	Hours  *float64 `json:"hours"` // under water; nil: not known
}

// Hail is how many dents a panel has on average and how large they are.
type Hail struct {
	Count  string   `json:"count"`  // a panel: few (to about 15), many (to about 75), beaten (more)
	Size   string   `json:"size"`   // across: small (to 15 mm), medium (to 35 mm), large
	Panels []string `json:"panels"` // empty: all that face up or out
	Glass  bool     `json:"glass"`  // glass or lamps are broken
	Left   bool     `json:"left"`   // the dents stay and the price gives way

	// Each holds the dents of panels that have others than the rest, by panel; what it leaves out is as on the rest.
	Each map[string]Dents `json:"each"`

	// Discount is the fraction that dents which stay take off the price; nil: a starter value by their count.
	Discount *prob.Three `json:"discount"`
}

// Dents are those of one panel that hail has hit, by count and size as in [Hail].
type Dents struct {
	Count string `json:"count"`
	Size  string `json:"size"`
}

// On returns the dents of a panel.
func (h Hail) On(panel string) Dents {
	d := h.Each[panel]
	return Dents{cmp.Or(d.Count, h.Count), cmp.Or(d.Size, h.Size)}
}

// Hit returns the panels that the hail has hit: all, where none are named.
func (h Hail) Hit() []string {
	if len(h.Panels) == 0 {
		return HailPanels
	}
	return h.Panels
}

// Fire is where it was and how far it went; smoke alone is a state of its own.
type Fire struct {
	Where []string `json:"where"`
	Reach string   `json:"reach"`
}

// The words of the survey, ours but for the trade's own names of things; each list from the least to the worst where it has
// an order.
var (
	Kinds       = []string{"car", "pickup", "van", "utility", "motorcycle"}
	Powertrains = []string{"combustion", "hybrid", "electric"}
	DrivenAxles = []string{"front", "rear", "all"}
	PartsLevels = []string{"low", "usual", "high"}
	Paints      = []string{"solid", "metallic", "pearl"}
	Regions     = []string{"dry", "usual", "salted"}
	DoorCounts  = []string{"2", "3", "4", "5"}
	MissingKeys = []string{"wheels", "seats", "headlamps", "tail_lamps", "catalytic_converter", "airbags", "dash_electronics", "engine",
		"transmission", "battery", "front_bumper", "rear_bumper", "hood", "mirrors", "charging_cable"}
	WaterHeights = []string{"carpet", "seat", "dash", "roof"}
	WaterKinds   = []string{"fresh", "sewage", "salt"}
	HailCounts   = []string{"few", "many", "beaten"}
	HailSizes    = []string{"small", "medium", "large"}
	HailPanels   = []string{"hood", "roof", "trunk_lid", "left_side", "right_side"}
	FireReaches  = []string{"smoke", "scorched", "burned"}
	FirePlaces   = []string{"engine_bay", "interior", "rear", "undercarriage"}
	Causes       = []string{"overheated", "oil_starved", "transmission", "timing", "unknown"}
)

// wet is the damage that each height of water comes to: it wets all that lies below it. burnt is the same for a fire: smoke
// alone damages no area.
var (
	wet   = map[string]string{"carpet": "minor", "seat": "functional", "dash": "disabling", "roof": "disabling"}
	burnt = map[string]string{"scorched": "functional", "burned": "disabling"}
)

// All returns the marked damage with what the survey adds to it: a height of water takes the place of marked water, and a
// fire marks the places where it was.
func (l Lot) All(marked []Damage) []Damage {
	if l.Survey == nil {
		return marked
	}
	all := slices.Clone(marked)
	if w := l.Survey.Water; w != nil {
		all = slices.DeleteFunc(all, func(d Damage) bool { return d.Area == "water" })
		all = append(all, Damage{Area: "water", Extent: wet[w.Height], Depth: "skin"})
	}
	f := l.Survey.fire()
	for _, place := range f.Where {
		if place == "rear" {
			place = "06"
		}
		at := Damage{Area: place, Extent: burnt[f.Reach], Depth: "bolted"}
		if at.Extent != "" && !slices.ContainsFunc(all, func(d Damage) bool { return d.Area == place && d.Extent == at.Extent }) {
			all = append(all, at)
		}
	}
	return all
}

// With returns the lot with what the survey says of it, the losses that it tells of among them: who enters hail need not say twice
// that it hailed.
func (l Lot) With(s *Survey) Lot {
	l.Survey = s
	if s == nil {
		return l
	}
	for loss, told := range map[string]bool{"flood": s.Water != nil, "hail": s.Hail != nil, "fire": s.Fire != nil,
		"mechanical": len(s.Causes) > 0} {
		if told && !slices.Contains(l.Loss, loss) {
			l.Loss = append(slices.Clone(l.Loss), loss)
		}
	}
	return l
}

// Hurt reports whether the survey tells of damage or of something missing.
func (s *Survey) Hurt() bool {
	return s != nil && (s.Water != nil || s.Hail != nil || s.Fire != nil || len(s.Causes)+len(s.Missing) > 0)
}

// Covered reports whether the starter catalogues speak of a vehicle of that kind.
func (l Lot) Covered() bool { return l.Survey == nil || l.Survey.Kind != "motorcycle" }

// hailOff is what hail that stays takes off the price by its count, as a fraction. Starter values, from memory.
var hailOff = map[string]prob.Three{"few": {Low: .03, Likely: .06, High: .12}, "many": {Low: .1, Likely: .18, High: .28},
	"beaten": {Low: .18, Likely: .3, High: .45}}

// HailOff returns the fraction that dents which stay take off the price, nothing where none stay.
func (s *Survey) HailOff() prob.Three {
	switch {
	case s == nil || s.Hail == nil || !s.Hail.Left:
		return prob.Three{}
	case s.Hail.Discount != nil:
		return *s.Hail.Discount
	}
	var off prob.Three
	hit := s.Hail.Hit()
	for _, panel := range hit { // every panel counts alike
		x := hailOff[s.Hail.On(panel).Count]
		off = prob.Three{Low: off.Low + x.Low, Likely: off.Likely + x.Likely, High: off.High + x.High}
	}
	return off.Times(1 / float64(len(hit)))
}

// Known returns the survey, nothing where it says nothing.
func (s *Survey) Known() *Survey {
	if s == nil || s.Kind+s.Powertrain+s.Driven+s.PartsLevel+s.Region+s.Paint == "" && s.Doors == 0 && !s.Hurt() {
		return nil
	}
	return s
}

// causes returns the causes of a mechanical loss: unknown where none is said.
func (l Lot) causes() []string {
	switch {
	case l.Survey != nil && len(l.Survey.Causes) > 0:
		return l.Survey.Causes
	case slices.Contains(l.Loss, "mechanical"):
		return []string{"unknown"}
	}
	return nil
}

// Age returns the vehicle's age in years on the day of the sale and whether it is known.
func (l Lot) Age() (int, bool) {
	year := l.SaleDate.Year()
	return year - l.ModelYear, year > 0 && l.ModelYear > 0
}
