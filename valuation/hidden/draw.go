package hidden

import (
	"maps"
	"slices"

	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

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
	// Ratios are what the lot's money for hidden damage ("hidden") and hours of a trade ("hours/body") come to against its
	// risks: one factor a scenario. A kind that is missing comes to 1.
	Ratios map[string][]float64
}

// Outcome is one risk over the scenarios in which it is there. Shape: each column has one value for each of them, or is nil
// where it is nothing throughout.
type Outcome struct {
	At                        []int32 // the scenarios, rising
	Cash, Labour, Hours, Days []float64
}

// Draw plays the risk out. Random: streams named by the risk's id. Limits: r has passed the case's checks.
func (r Risk) Draw(chance There, s Setting) Outcome {
	lean := prob.Lean{Factor: s.Factor, Rho: r.rho(s.Loading)}
	out := Outcome{At: slices.Clone(chance.split(s.stream(r.ID, "there"), lean, s.Draws.Len()))}
	values := func(name, kind string, t prob.Three) []float64 {
		if t.Zero() || len(out.At) == 0 {
			return nil
		}
		column := make([]float64, len(out.At))
		stream := s.stream(r.ID, name)
		stream.Values(t.Score(), lean, out.At, column)
		if ratio := s.Ratios[kind]; ratio != nil {
			for k, i := range out.At {
				column[k] *= ratio[i]
			}
		}
		return column
	}
	out.Cash, out.Days = values("cost", "hidden", r.Cost), values("days", "", r.Days)
	for _, trade := range lot.Trades {
		hours := values("hours/"+trade, "hours/"+trade, r.Hours[trade])
		if hours == nil {
			continue
		}
		if out.Hours == nil {
			out.Hours, out.Labour = make([]float64, len(hours)), make([]float64, len(hours))
		}
		for k, x := range hours {
			out.Hours[k] += x
			out.Labour[k] += x * s.Rates[trade]
		}
	}
	return out
}

func (s Setting) stream(id, name string) prob.Stream {
	return s.Draws.Stream("risk/" + id + "/" + name)
}

// Raise returns the user's risks followed by those of the catalogue that the survey brings up, each once, at the chance and the
// price level of this lot. A risk of the user with a catalogue id stands in its place.
func Raise(own []Risk, c Catalogue, l lot.Lot, survey []lot.Damage) []Risk {
	survey = l.All(survey)
	taken := map[string]bool{}
	var risks []Risk
	for _, r := range own {
		taken[r.ID] = true
		if !r.Removed {
			risks = append(risks, r)
		}
	}
	level := lot.Scaled(c.Scales, l, survey)
	for _, e := range c.Risks {
		if taken[e.ID] || !lot.Any(e.Triggers, l, survey) || lot.Any(e.Never, l, survey) {
			continue
		}
		r := e.scaled(level.Times(lot.Scaled(e.Scales, l, survey)))
		seen := r.Chance.A + r.Chance.B
		if p := lot.Moved(r.Chance.Mean(), e.Moves, l, survey); p != r.Chance.Mean() {
			r.Chance = Beta{A: p * seen, B: (1 - p) * seen}
		}
		risks = append(risks, r)
	}
	return risks
}

// scaled returns the risk with its money and hours as the vehicle has them.
func (r Risk) scaled(f lot.Factors) Risk {
	r.Cost = r.Cost.Times(f.Parts)
	if f.Hours != 1 {
		r.Hours = maps.Clone(r.Hours)
		for trade, t := range r.Hours {
			r.Hours[trade] = t.Times(f.Hours)
		}
	}
	return r
}
