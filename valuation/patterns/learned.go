package patterns

import (
	"slices"

	"walkline/valuation/lot"
)

// Seen is what a lot turned out to be that somebody has looked at: its causes of loss, its marked damage, its survey.
type Seen struct {
	Loss   []string
	Damage []lot.Damage
	Survey *lot.Survey
}

// Counts are the shop's own surveys as evidence upon the starter weights. The zero value has none: the starter weights stand. Nobody
// changes one after [Count].
type Counts struct {
	by    map[string]int                // lots by cause
	share map[string]float64            // how often a lot comes by each cause
	moves map[string]map[string]float64 // by cause and kind: by how much its weight is moved
}

// PriorLots is how many surveyed lots the starter weights of the causes count for, and those of the kinds of each cause. Ours.
const PriorLots = 20.0

// Count takes surveys as evidence: the weights of the causes, and of the kinds within each, are the means of a Dirichlet distribution with
// the starter weights times [PriorLots] before them. A lot with two causes counts with each. One whose cause or damage is like none of the
// patterns says nothing. Limits: those that were looked at stand for all of their kind, which they do not quite: a buyer looks at what is
// promising. Source: Gelman et al., Bayesian Data Analysis, ch. 3.4, the multinomial model (from memory).
func Count(all []Seen) Counts {
	kinds := map[string]map[string]int{}
	c := Counts{by: map[string]int{}, share: map[string]float64{}, moves: map[string]map[string]float64{}}
	total := 0
	for _, s := range all {
		for _, loss := range s.Loss {
			kind := s.kind(loss)
			if kind == "" {
				continue
			}
			if kinds[loss] == nil {
				kinds[loss] = map[string]int{}
			}
			kinds[loss][kind]++
			c.by[loss]++
			total++
		}
	}
	if total == 0 {
		return Counts{}
	}
	for _, loss := range lot.Losses {
		c.share[loss] = (PriorLots*lossShare[loss] + float64(c.by[loss])) / (PriorLots + float64(total))
		if kinds[loss] != nil {
			c.moves[loss] = moved(starters(loss, nil), kinds[loss])
		}
	}
	return c
}

// moved returns by how much the evidence moves each kind's weight, up to a factor that all share.
func moved(all []Pattern, seen map[string]int) map[string]float64 {
	prior, out := map[string]float64{}, map[string]float64{}
	for _, p := range all {
		prior[p.kind()] += p.Chance
	}
	for kind, chance := range prior {
		out[kind] = 1 + float64(seen[kind])/(PriorLots*chance)
	}
	return out
}

// Lots returns how many surveys of the causes that a row names are counted; of all causes where it names none.
func (c Counts) Lots(r Row) int {
	said, n := r.said(), 0
	for loss, lots := range c.by {
		if len(said) == 0 || slices.Contains(said, loss) {
			n += lots
		}
	}
	return n
}

// shareOf returns how often a lot comes by a cause.
func (c Counts) shareOf(loss string) float64 {
	if share, learned := c.share[loss]; learned {
		return share
	}
	return lossShare[loss]
}

// weigh moves the chances of a cause's patterns by the evidence; their sum stays 1.
func (c Counts) weigh(loss string, all []Pattern) {
	moves, sum := c.moves[loss], 0.0
	if moves == nil {
		return
	}
	for i := range all {
		all[i].Chance *= moves[all[i].kind()]
		sum += all[i].Chance
	}
	for i := range all {
		all[i].Chance /= sum
	}
}
