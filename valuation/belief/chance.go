package belief

import (
	"math"

	"walkline/valuation/prob"
)

// Chance is a beta belief about a chance, in counts: A times there, B times not.
type Chance struct{ A, B float64 }

// Look is one case looked at: whether it was there, and what other findings had said of it before.
type Look struct {
	Weight float64 // 0..1
	There  bool
	Ratio  float64 // likelihood ratio of the findings, 1 for none
}

// Tilted returns the counts with the odds times ratio and the same number of cases.
func (c Chance) Tilted(ratio float64) Chance {
	n := c.A + c.B
	p := c.A * ratio / (c.A*ratio + c.B)
	return Chance{p * n, (1 - p) * n}
}

// Update returns the counts after the looks: exactly A + found and B + not there where no finding had spoken before; else
// the beta with the mean and variance of the exact posterior, in which a look weighs by what its findings had foretold.
func (c Chance) Update(looks []Look) Chance {
	plain := true
	out := c
	for _, l := range looks {
		plain = plain && l.Ratio == 1
		if l.There {
			out.A += l.Weight
		} else {
			out.B += l.Weight
		}
	}
	if plain || c.A <= 0 || c.B <= 0 {
		return out
	}
	mean, variance := c.posterior(looks)
	n := mean*(1-mean)/variance - 1
	return Chance{mean * n, (1 - mean) * n}
}

// gridSteps is the number of slices of the chance over which the posterior is summed.
const gridSteps = 500

// posterior returns the mean and variance of the chance, summed over even slices.
func (c Chance) posterior(looks []Look) (mean, variance float64) {
	var at, log [gridSteps]float64
	most := math.Inf(-1)
	for i := range at {
		p := (float64(i) + 0.5) / gridSteps
		at[i] = p
		log[i] = (c.A-1)*math.Log(p) + (c.B-1)*math.Log(1-p)
		for _, l := range looks {
			there := p * l.Ratio / (p*l.Ratio + 1 - p)
			if !l.There {
				there = 1 - there
			}
			log[i] += l.Weight * math.Log(there)
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

// Mean returns the chance.
func (c Chance) Mean() float64 { return c.A / (c.A + c.B) }

// Range returns the chances below and above which the truth lies with a tenth each; all of them while a count is nothing.
func (c Chance) Range() (low, high float64) {
	if c.A <= 0 || c.B <= 0 {
		return 0, 1
	}
	return prob.BetaQuantile(c.A, c.B, 0.1), prob.BetaQuantile(c.A, c.B, 0.9)
}
