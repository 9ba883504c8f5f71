package main

import (
	"fmt"
	"math"
	"math/rand/v2"

	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// spoiling makes the comparables of a task worse in a stated way; the subject and its price stay as they are.
type spoiling struct {
	name  string
	spoil func(t task, i int) task
}

var spoilings = []spoiling{
	{"one price in ten three times or a third of what it was", gross},
	{"15 % of the comparables damaged, which nobody says", damaged},
	{"the market rose by 37 % in a year, half of the comparables a year old", risen},
}

// changed returns the task with comparables of its own, each changed by a function of its draws.
func changed(t task, i int, change func(r *resale.Row, rng *rand.Rand)) task {
	rng := rand.New(rand.NewPCG(uint64(i), uint64(len(t.comps))))
	t.comps = append([]resale.Row(nil), t.comps...)
	for k := range t.comps {
		change(&t.comps[k], rng)
	}
	return t
}

func gross(t task, i int) task { return changed(t, i, spoilGrossly) }

// spoilGrossly makes one price in twenty three times and one a third of what it was.
func spoilGrossly(r *resale.Row, rng *rand.Rand) {
	switch rng.IntN(20) {
	case 0:
		r.Price *= 3
	case 1:
		r.Price = scaled(r.Price, 1.0/3)
	}
}

// What cars declared damaged asked against undamaged ones, and the spread of its logarithm: from the PLN set and its
// damaged part.
const (
	damagedShare = 0.15
	damagedLevel = 0.59
	damagedSD    = 0.43
)

func damaged(t task, i int) task { return changed(t, i, spoilByDamage) }

func spoilByDamage(r *resale.Row, rng *rand.Rand) {
	u, z := rng.Float64(), rng.NormFloat64()
	if u < damagedShare {
		r.Price = scaled(r.Price, damagedLevel*math.Exp(damagedSD*z))
	}
}

// marketRise is by how much the US used-vehicle price index rose within a year at its steepest, 2020 to 2021, to the whole percent.
const marketRise = 1.37

// risen dates half of the comparables a year back, when such a vehicle, as old then as it is now, brought less.
func risen(t task, i int) task {
	newest := t.subject.ModelYear
	for _, r := range t.comps {
		newest = max(newest, r.ModelYear)
	}
	t.today = fmt.Sprintf("%d-07-02", newest)
	return changed(t, i, func(r *resale.Row, rng *rand.Rand) {
		r.Date = lotDate(t.today)
		if rng.IntN(2) == 0 {
			r.Date, r.ModelYear, r.Price = lotDate(fmt.Sprintf("%d-07-02", newest-1)), r.ModelYear-1, scaled(r.Price, 1/marketRise)
		}
	})
}

func scaled(p money.Amount, by float64) money.Amount {
	return max(1, money.Amount(math.Round(float64(p)*by)))
}

func lotDate(s string) lot.Date { return lot.Date(s) }
