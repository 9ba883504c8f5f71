package learn

import (
	"math"

	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// look is one build's answer on one risk: whether it was there, and the odds that the findings gave to it before the buy.
type look struct {
	build  Build
	weight float64
	there  bool
	ratio  float64 // likelihood ratio of the findings, 1 for none
	chance float64 // foretold after the findings, at the starter chance
}

// risks gathers the looks by risk. A risk that nobody looked at after the buy says nothing.
func risks(builds []Build, today lot.Date, halfLife float64, start Starter) map[string][]look {
	base := map[string]float64{}
	for _, r := range start.Risks {
		base[r.ID] = r.A / (r.A + r.B)
	}
	out := map[string][]look{}
	for _, b := range builds {
		if !b.ours() {
			continue
		}
		for id, seen := range b.Came.Risks {
			p, known := base[id]
			if !known || seen != Found && seen != NotThere {
				continue
			}
			l := look{build: b, weight: faded(b.day(), today, halfLife), there: seen == Found, ratio: b.findings(id)}
			l.chance = p * l.ratio / (p*l.ratio + 1 - p)
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
			if l.there {
				hit = l.weight
			}
			foundAll += hit
			foretoldAll += l.weight * l.chance
			if r.Kind == of.Kind {
				found += hit
				foretold += l.weight * l.chance
			}
		}
	}
	all := (poolRisks + foundAll) / (poolRisks + foretoldAll)
	return (poolRisks*all + found) / (poolRisks + foretold)
}

// tilted returns the counts with the odds times ratio and the same number of cases.
func (c Chance) tilted(ratio float64) Chance {
	n := c.A + c.B
	p := c.A * ratio / (c.A*ratio + c.B)
	return Chance{A: p * n, B: (1 - p) * n}
}

// update returns the counts after the looks: exactly A + found and B + not there where no finding had spoken before; else
// the beta with the mean and variance of the exact posterior, in which a look weighs by what its findings had foretold.
func (c Chance) update(looks []look) Chance {
	plain := true
	out := c
	for _, l := range looks {
		plain = plain && l.ratio == 1
		if l.there {
			out.A += l.weight
		} else {
			out.B += l.weight
		}
	}
	if plain || c.A <= 0 || c.B <= 0 {
		return out
	}
	mean, variance := c.posterior(looks)
	n := mean*(1-mean)/variance - 1
	return Chance{A: mean * n, B: (1 - mean) * n}
}

// gridSteps is the number of slices of the chance over which the posterior is summed.
const gridSteps = 500

// posterior returns the mean and variance of the chance, summed over even slices.
func (c Chance) posterior(looks []look) (mean, variance float64) {
	var at, log [gridSteps]float64
	most := math.Inf(-1)
	for i := range at {
		p := (float64(i) + 0.5) / gridSteps
		at[i] = p
		log[i] = (c.A-1)*math.Log(p) + (c.B-1)*math.Log(1-p)
		for _, l := range looks {
			there := p * l.ratio / (p*l.ratio + 1 - p)
			if !l.there {
				there = 1 - there
			}
			log[i] += l.weight * math.Log(there)
		}
		most = math.Max(most, log[i])
	}
	var total, first, second float64
	for i, p := range at {
		w := math.Exp(log[i] - most)
		total += w
		first += w * p
		second += w * p * p
	}
	mean = first / total
	return mean, second/total - mean*mean
}

// mean returns the chance.
func (c Chance) mean() float64 { return c.A / (c.A + c.B) }

// value returns the chance with its 80 % range.
func (c Chance) value() Value {
	low, high := 0.0, 1.0
	if c.A > 0 && c.B > 0 {
		low, high = prob.BetaQuantile(c.A, c.B, 0.1), prob.BetaQuantile(c.A, c.B, 0.9)
	}
	return Value{At: c.mean(), Low: low, High: high}
}
