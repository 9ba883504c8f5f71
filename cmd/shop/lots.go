package main

import (
	"fmt"
	"math"
	"math/rand/v2"

	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// damages are the cells that a lot's survey is drawn from.
var damages = []lot.Damage{{Area: "12", Extent: "functional", Depth: "bolted"}, {Area: "12", Extent: "minor", Depth: "skin"},
	{Area: "12", Extent: "disabling", Depth: "structure"},
	{Area: "01", Extent: "functional", Depth: "bolted"}, {Area: "11", Extent: "functional", Depth: "bolted"},
	{Area: "03", Extent: "functional", Depth: "bolted"},
	{Area: "09", Extent: "minor", Depth: "skin"}, {Area: "06", Extent: "functional", Depth: "bolted"},
	{Area: "05", Extent: "minor", Depth: "skin"},
	{Area: "interior", Extent: "minor", Depth: "skin"}, {Area: "electrical", Extent: "minor", Depth: "bolted"},
	{Area: "engine_bay", Extent: "minor", Depth: "bolted"}}

// another returns a lot like the template with a survey and a price of its own.
func another(c valuation.Case, i int, rng *rand.Rand) valuation.Case {
	c = c.Clone()
	c.Lot.Number = fmt.Sprint(i)
	c.Damage, c.Findings = nil, nil
	for _, k := range rng.Perm(len(damages))[:1+rng.IntN(3)] {
		c.Damage = append(c.Damage, damages[k])
	}
	mid, spread := 13000*math.Exp(0.35*rng.NormFloat64()), 0.08+0.10*rng.Float64()
	c.Resale.Guess = &prob.Three{Low: mid * math.Exp(-spread), Likely: mid, High: mid * math.Exp(spread)}
	return c
}
