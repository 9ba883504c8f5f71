package patterns

import (
	"math"
	"slices"

	"walkline/valuation/lot"
)

// How a vehicle stands by how far it is hurt: chances of drives, starts, turns over, dead. Starter values, from memory.
var stands = [][4]float64{{.8, .12, .03, .05}, {.5, .25, .05, .2}, {.12, .28, .1, .5}, {.03, .07, .1, .8}}

// Chance that the keys are gone. Starter values, from memory.
const keysGone, keysGoneTheft = 0.15, 0.6

// ratioSpread is the standard deviation of the logarithm of a list's repair ratio about that of the pattern. Starter value, from memory:
// estimates of lists are rough, and made at a repairer's rates.
const ratioSpread = 0.5

// standing returns a pattern in the ways in which it may stand, with and without keys, as far as the row leaves that open.
func (r Row) standing(p Pattern) []Pattern {
	gone := keysGone
	if p.missing {
		gone = keysGoneTheft
	}
	said := slices.Index(lot.Conditions, r.Condition) // "unknown" is the last
	var out []Pattern
	for i, chance := range stands[p.still] {
		for _, keys := range []bool{true, false} {
			if said >= 0 && said < len(stands[0]) && said != i || r.Keys != nil && *r.Keys != keys {
				continue
			}
			q := p
			q.Condition, q.Keys = lot.Conditions[i], keys
			q.Chance *= chance
			if keys {
				q.Chance *= 1 - gone
			} else {
				q.Chance *= gone
			}
			out = append(out, q)
		}
	}
	return out
}

// fits returns how likely the row's airbags, figures and age are for a vehicle of that pattern; 1 where nothing is said.
func (r Row) fits(p Pattern) float64 {
	chance := 1.0
	if len(r.Airbags) > 0 && len(p.Airbags) == 0 {
		return 0
	}
	if r.Ratio > 0 && p.Cost > 0 {
		z := math.Log(r.Ratio/p.Cost) / ratioSpread
		chance *= math.Exp(-z * z / 2)
	}
	return chance * agedBy(r.Age, p.Cost)
}

// agedBy returns how much more often a vehicle of that age comes to a sale with that damage: an old one is given up for little, a new one
// for much. Starter values, from memory; the mean over the patterns does not matter.
func agedBy(age, cost float64) float64 {
	if age < 0 {
		return 1
	}
	return math.Exp((age - typicalAge) / typicalAge * (typicalCost - cost) * ageing)
}

// The age and the damage of the usual lot, and how strongly one leans on the other. Starter values, from memory.
const typicalAge, typicalCost, ageing = 9, 0.45, 1.2
