package lot

import "slices"

// Survey is what a walk round the vehicle says beside the damaged areas. Every key may be left out: what is left out is not
// known, never "none". JSON keys are those of the case file.
type Survey struct {
	Kind       string   `json:"kind"`
	Powertrain string   `json:"powertrain"`
	Driven     string   `json:"driven"`      // wheels
	PartsLevel string   `json:"parts_level"` // price level of its parts
	Region     string   `json:"region"`      // of its life: how much salt lay on the roads
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
	Regions     = []string{"dry", "usual", "salted"}
	DoorCounts  = []string{"2", "3", "4", "5"}
	MissingKeys = []string{"wheels", "seats", "headlamps", "tail_lamps", "catalytic_converter", "airbags", "dash_electronics", "engine",
		"transmission", "battery", "front_bumper", "rear_bumper", "hood", "doors", "charging_cable"}
	WaterHeights = []string{"carpet", "seat", "dash", "roof"}
	WaterKinds   = []string{"fresh", "sewage", "salt"}
	HailCounts   = []string{"few", "many", "beaten"}
	HailSizes    = []string{"small", "medium", "large"}
	HailPanels   = []string{"hood", "roof", "trunk_lid", "left_side", "right_side"}
	FireReaches  = []string{"smoke", "scorched", "burned"}
	FirePlaces   = []string{"engine_bay", "interior", "rear", "undercarriage"}
	Causes       = []string{"overheated", "oil_starved", "transmission", "timing", "unknown"}
)

// wet is the damage that each height of water comes to: it wets all that lies below it.
var wet = map[string]string{"carpet": "minor", "seat": "functional", "dash": "disabling", "roof": "disabling"}

// cells returns the damage that the survey tells of beside the areas that are marked.
func (s *Survey) cells() []Damage {
	if s == nil || s.Water == nil {
		return nil
	}
	return []Damage{{Area: "water", Extent: wet[s.Water.Height], Depth: "skin"}}
}

// All returns the marked damage with what the survey adds to it: a height of water takes the place of marked water.
func (l Lot) All(marked []Damage) []Damage {
	more := l.Survey.cells()
	if len(more) == 0 {
		return marked
	}
	kept := slices.DeleteFunc(slices.Clone(marked), func(d Damage) bool { return d.Area == "water" })
	return append(kept, more...)
}

// Covered reports whether the starter catalogues speak of a vehicle of that kind.
func (l Lot) Covered() bool { return l.Survey == nil || l.Survey.Kind != "motorcycle" }

// age returns the vehicle's age in years on the day of the sale and whether it is known.
func (l Lot) age() (int, bool) {
	year := l.SaleDate.Year()
	return year - l.ModelYear, year > 0 && l.ModelYear > 0
}
