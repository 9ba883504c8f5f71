package lot

// Move is how a sign changes a chance: its odds are multiplied. Starter values, from memory.
type Move struct {
	When Sign    `json:"when"`
	Odds float64 `json:"odds"` // above 0; 1 changes nothing
}

// Moved returns a chance after every move whose sign is met, each multiplying the odds. Units: 0..1; a chance of 0 or 1 stays.
// Source: posterior odds are prior odds times likelihood ratios.
func Moved(chance float64, moves []Move, l Lot, survey []Damage) float64 {
	odds := 1.0
	for i := range moves {
		if _, ok := moves[i].When.Match(&l, survey); ok {
			odds *= moves[i].Odds
		}
	}
	return odds * chance / (1 - chance + odds*chance)
}

// Scale is how a sign changes what catalogue entries cost: money for parts and bought-in work, for materials, and own hours. A
// factor left out, or 0, changes nothing. Starter values, from memory.
type Scale struct {
	When      Sign    `json:"when"`
	Parts     float64 `json:"parts"`
	Materials float64 `json:"materials"`
	Hours     float64 `json:"hours"`
}

// Factors are what parts and bought-in work, materials and own hours are multiplied with.
type Factors struct{ Parts, Materials, Hours float64 }

// Scaled returns the product of the factors of every scale whose sign is met.
func Scaled(scales []Scale, l Lot, survey []Damage) Factors {
	f := Factors{1, 1, 1}
	for i := range scales {
		s := &scales[i]
		if _, ok := s.When.Match(&l, survey); !ok {
			continue
		}
		for to, x := range map[*float64]float64{&f.Parts: s.Parts, &f.Materials: s.Materials, &f.Hours: s.Hours} {
			if x > 0 {
				*to *= x
			}
		}
	}
	return f
}

// Times returns the product of two sets of factors.
func (f Factors) Times(g Factors) Factors {
	return Factors{f.Parts * g.Parts, f.Materials * g.Materials, f.Hours * g.Hours}
}
