package learn

import (
	"walkline/valuation/belief"
	"walkline/valuation/lot"
)

// look is one build's answer on one risk: whether it was there, and the odds that the findings gave to it before the buy.
type look struct {
	belief.Look
	build  Build
	chance float64 // foretold after the findings, at the starter chance
	pooled float64 // what it counts among the similar risks
}

// said returns what the looks say.
func said(looks []look) []belief.Look {
	out := make([]belief.Look, len(looks))
	for i, l := range looks {
		out[i] = l.Look
	}
	return out
}

// risks gathers the looks by risk. A risk that nobody looked at after the buy says nothing.
func risks(builds []Build, today lot.Date, halfLife float64, start Starter) map[string][]look {
	base := map[string]float64{}
	for _, r := range start.Risks {
		base[r.ID] = r.A / (r.A + r.B)
	}
	out := map[string][]look{}
	for _, b := range builds {
		weight := faded(b.day(), today, halfLife)
		if !b.ours() || weight == 0 {
			continue
		}
		for id, seen := range b.Came.Risks {
			p, known := base[id]
			if !known || seen != Found && seen != NotThere {
				continue
			}
			l := look{belief.Look{Weight: weight, There: seen == Found, Ratio: b.findings(id)}, b, 0, 0}
			l.chance = p * l.Ratio / (p*l.Ratio + 1 - p)
			out[id] = append(out[id], l)
		}
	}
	pool(out)
	return out
}

// commonSpread is the relative variance that a lot's common factor puts on how many of its risks are there: at a loading of 0.3 two risks
// with a chance of 0.17 are there together 1.2 times as often as by chance (one-factor Gaussian copula). Worked out from those figures.
const commonSpread = 0.2

// pool sets what each look counts among the similar risks. The risks of one build go together, so that many of them say little more than a
// few: of m expected cases with a variance of m + s m^2 a build counts for m / (1 + s m) (quasi-likelihood, McCullagh and Nelder,
// Generalized Linear Models, 2nd ed., ch. 9, from memory).
func pool(looks map[string][]look) {
	foretold := map[int64]float64{}
	for _, all := range looks {
		for _, l := range all {
			foretold[l.build.ID] += l.chance
		}
	}
	for _, all := range looks {
		for i, l := range all {
			all[i].pooled = l.Weight / (1 + commonSpread*foretold[l.build.ID])
		}
	}
}

// findings returns the likelihood ratio that the findings before the buy put on a risk: the odds after over the odds
// before. 1 where nothing was foretold, or where the findings made it certain.
func (b Build) findings(id string) float64 {
	if b.Foretold == nil {
		return 1
	}
	for _, r := range b.Foretold.Risks {
		if r.ID == id && r.Base > 0 && r.Base < 1 && r.Chance > 0 && r.Chance < 1 {
			return r.Chance / (1 - r.Chance) * (1 - r.Base) / r.Base
		}
	}
	return 1
}

// poolRisks is how many expected cases the starter chances of similar risks count for, against what was found of them: one shop in
// three has chances that are a quarter or more off the catalogue's as a whole (a gamma of that shape). Starter value, from memory.
const poolRisks = 16

// similar returns by how much the odds of the risks similar to one of them run above their starter values: what was found
// of them over what was foretold, with a gamma prior of mean 1; the risks of no kind in common count in its prior. The
// risk's own looks are left out: they count in its own update.
func similar(of StarterRisk, start Starter, looks map[string][]look) float64 {
	var found, foretold, foundAll, foretoldAll float64
	for _, r := range start.Risks {
		if r.ID == of.ID {
			continue
		}
		for _, l := range looks[r.ID] {
			hit := 0.0
			if l.There {
				hit = l.pooled
			}
			foundAll += hit
			foretoldAll += l.pooled * l.chance
			if r.Kind == of.Kind {
				found += hit
				foretold += l.pooled * l.chance
			}
		}
	}
	all := (poolRisks + foundAll) / (poolRisks + foretoldAll)
	return (poolRisks*all + found) / (poolRisks + foretold)
}
