package hidden

import (
	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// Posterior returns the chance of the risk after the answers (finding -> yes | no; absent = not looked).
// Source: posterior odds = prior odds x product of likelihood ratios.
func (r Risk) Posterior(answers map[string]string) float64 {
	p := r.Chance.Mean()
	there, not := p, 1-p
	for _, e := range r.Findings {
		switch answers[e.Finding] {
		case "yes":
			there, not = there*e.IfPresent, not*e.IfAbsent
		case "no":
			there, not = there*(1-e.IfPresent), not*(1-e.IfAbsent)
		}
	}
	if there+not == 0 {
		return p // the answers contradict each other outright: Contradicted says so
	}
	return there / (there + not)
}

// Contradicted reports whether the answers cannot all be true of this risk.
func (r Risk) Contradicted(answers map[string]string) bool {
	always, never := false, false
	for _, e := range r.Findings {
		a := answers[e.Finding]
		always = always || a == "yes" && e.IfAbsent == 0 || a == "no" && e.IfAbsent == 1
		never = never || a == "yes" && e.IfPresent == 0 || a == "no" && e.IfPresent == 1
	}
	return always && never
}

// Setting is what all risks of a case share when they are played out.
type Setting struct {
	Draws   *prob.Draws
	Factor  []float64 // the lot's common factor, one score a scenario
	Loading float64   // of risks that name none
	Rates   map[string]float64
}

// Outcome is one risk over all scenarios. Shape: each column has one value a scenario, 0 where the damage is not there.
type Outcome struct {
	Cash, Labour, Hours, Days []float64
	Present                   int // scenarios in which it is there
}

// Draw plays the risk out at that chance. Random: streams named by the risk's id. Limits: r has passed the case's checks.
func (r Risk) Draw(chance float64, s Setting) Outcome {
	n := s.Draws.Len()
	out := Outcome{Cash: make([]float64, n), Labour: make([]float64, n), Hours: make([]float64, n), Days: make([]float64, n)}
	loading := s.Loading
	if r.Loading != nil {
		loading = *r.Loading
	}
	col, there := make([]float64, n), make([]bool, n)
	score := func(name string) {
		s.Draws.Column("risk/"+r.ID+"/"+name, col)
		prob.Loaded(col, s.Factor, loading)
	}
	score("there")
	edge := prob.Edge(chance)
	for i, z := range col {
		if z > edge {
			there[i] = true
			out.Present++
		}
	}
	add := func(name string, t prob.Three, f func(i int, x float64)) {
		if t.Zero() || out.Present == 0 {
			return
		}
		score(name)
		table := t.Score()
		for i, z := range col {
			if there[i] {
				f(i, table.At(z))
			}
		}
	}
	add("cost", r.Cost, func(i int, x float64) { out.Cash[i] += x })
	add("days", r.Days, func(i int, x float64) { out.Days[i] += x })
	for _, trade := range lot.Trades {
		rate := s.Rates[trade]
		add("hours/"+trade, r.Hours[trade], func(i int, x float64) {
			out.Hours[i] += x
			out.Labour[i] += x * rate
		})
	}
	return out
}

// Raise returns the user's risks followed by those of the catalogue that the survey brings up, each once. A risk of the
// user with a catalogue id stands in its place.
func Raise(own []Risk, c Catalogue, l lot.Lot, survey []lot.Damage) []Risk {
	taken := map[string]bool{}
	var risks []Risk
	for _, r := range own {
		taken[r.ID] = true
		if !r.Removed {
			risks = append(risks, r)
		}
	}
	for _, e := range c.Risks {
		if !taken[e.ID] && raised(e, l, survey) {
			risks = append(risks, e.Risk)
		}
	}
	return risks
}

// raised reports whether any trigger of the entry is met.
func raised(e Entry, l lot.Lot, survey []lot.Damage) bool {
	for _, t := range e.Triggers {
		if _, ok := t.Match(l, survey); ok {
			return true
		}
	}
	return false
}
