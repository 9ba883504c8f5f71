package donor

import (
	"math"

	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// Proposal is what a lot may bring in parts, with what it takes: starter values.
type Proposal struct {
	Money prob.Three // net of selling, the rest sold as scrap
	Hours prob.Three
	Days  prob.Three
	Items []Item // what is offered
}

// Item is one assembly of a proposal.
type Item struct {
	Assembly
	Sells float64 // the chance that it is sound and sold
	Mean  float64 // what it brings on average then, selling paid
}

// Hours are spread by these multiples of their sum; the ends of the money lie so many standard deviations from its mean.
const (
	fewerHours, moreHours = 0.75, 1.5
	below, above          = 2.2, 2.6
)

// Propose returns what a lot brings in parts at a clean resale level, in the currency of the catalogue. Restricted assemblies count only
// where they are allowed. Limits: clean is positive; the damage is what was marked.
func (c Catalogue) Propose(l lot.Lot, damage []lot.Damage, clean float64, allowed bool) Proposal {
	p := Proposal{Days: c.Days}
	damage = l.All(damage)
	mean, variance, hours := c.Scrap.Mean(), c.Scrap.Variance(), 0.0
	for _, a := range c.Assemblies {
		sound := a.sound(l, damage, c.running(l))
		if sound == 0 || a.Restricted && !allowed {
			continue
		}
		price := a.Price
		if price.Zero() {
			price = a.Share.Times(clean)
		}
		kept, sells := 1-c.Selling, sound*a.Chance
		item := Item{a, sells, kept * price.Mean()}
		mean += sells * item.Mean
		variance += sells*(square(kept)*price.Variance()+square(item.Mean)) - square(sells*item.Mean)
		hours += sound * a.Hours
		p.Items = append(p.Items, item)
	}
	p.Money = around(mean, math.Sqrt(variance+square(c.Common*mean)))
	p.Hours = prob.Three{Low: c.Overhead.Low + fewerHours*hours, Likely: c.Overhead.Likely + hours, High: c.Overhead.High + moreHours*hours}
	return p
}

// around returns the three points of a sum of that mean and standard deviation, in tens.
func around(mean, sd float64) prob.Three {
	low, high := math.Max(0, mean-below*sd), mean+above*sd
	likely := min(max((6*mean-low-high)/4, low), high)
	ten := func(x float64) float64 { return 10 * math.Round(x/10) }
	return prob.Three{Low: ten(low), Likely: ten(likely), High: ten(high)}
}

func square(x float64) float64 { return x * x }

// In returns the catalogue with its money at a rate.
func (c Catalogue) In(rate float64) Catalogue {
	c.Scrap = c.Scrap.Times(rate)
	all := make([]Assembly, len(c.Assemblies))
	for i, a := range c.Assemblies {
		a.Price = a.Price.Times(rate)
		all[i] = a
	}
	c.Assemblies = all
	return c
}
