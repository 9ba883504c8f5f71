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
			l := look{belief.Look{Weight: weight, There: seen == Found, Ratio: b.findings(id)}, b, 0}
			l.chance = p * l.Ratio / (p*l.Ratio + 1 - p)
			out[id] = append(out[id], l)
		}
	}
	return out
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

// poolRisks is how many expected cases the starter chances of similar risks count for, against what was found of them.
// Starter value, from memory.
const poolRisks = 4

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
				hit = l.Weight
			}
			foundAll += hit
			foretoldAll += l.Weight * l.chance
			if r.Kind == of.Kind {
				found += hit
				foretold += l.Weight * l.chance
			}
		}
	}
	all := (poolRisks + foundAll) / (poolRisks + foretoldAll)
	return (poolRisks*all + found) / (poolRisks + foretold)
}
