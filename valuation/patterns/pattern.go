package patterns

import (
	"cmp"
	"slices"

	"walkline/valuation/lot"
)

// Row is what a run list says of a lot. What is empty, nil or 0 is not said.
type Row struct {
	Loss      []string
	Areas     []string // damaged, codes of lot.Areas
	Condition string
	Keys      *bool
	Airbags   []string // that are said to be deployed
	Age       float64  // years; below 0: not known
	Ratio     float64  // the list's repair estimate as a share of its value before
}

// Pattern is one survey that a lot may turn out to have, with how it stands and whether there are keys. Survey holds water, hail, fire,
// causes and missing parts, nil where there are none.
type Pattern struct {
	Chance    float64
	Loss      []string
	Damage    []lot.Damage
	Airbags   []string
	Condition string
	Keys      bool
	Survey    *lot.Survey
	Words     string  // "front, disabling, structure"
	Cost      float64 // typical repair as a share of the value before, by which patterns are put in order and the list's figures are read

	missing bool // the keys are often gone
	still   int  // how far it stands still: row of the running states
}

// Likely returns the surveys that a row leaves possible, from the lightest to the heaviest; their chances sum to 1. They are the starter
// weights, moved by what the shop's own lots turned out to be. Limits: the words of the row are of package lot's lists.
func Likely(r Row, c Counts) []Pattern {
	var all []Pattern
	sum := 0.0
	for _, p := range r.causes(c) {
		p.Chance *= r.fits(p)
		all = append(all, r.standing(p)...)
	}
	for _, p := range all {
		sum += p.Chance
	}
	if sum == 0 { // the row says what no pattern has: nothing is learned from it
		r.Condition, r.Keys, r.Airbags, r.Ratio = "", nil, nil, 0
		return Likely(r, c)
	}
	for i := range all {
		all[i].Chance /= sum
		if len(r.Airbags) > 0 {
			all[i].Airbags = r.Airbags
		}
	}
	slices.SortStableFunc(all, func(a, b Pattern) int { return cmp.Compare(a.Cost, b.Cost) })
	return all
}

// said returns the causes of loss that the row names.
func (r Row) said() []string {
	return slices.DeleteFunc(slices.Clone(r.Loss), func(l string) bool { return l == "other" })
}

// causes returns the patterns of the causes of loss that are said, of each in its share where none is.
func (r Row) causes(c Counts) []Pattern {
	said := r.said()
	if len(said) == 0 {
		var all []Pattern
		for _, loss := range lot.Losses {
			share := c.shareOf(loss)
			if len(r.Areas) > 0 && !slices.Contains(placed, loss) {
				share *= unplaced
			}
			all = append(all, c.of(loss, r.Areas, share)...)
		}
		return all
	}
	all := c.of(said[0], r.Areas, 1)
	for _, more := range said[1:] {
		var both []Pattern
		for _, a := range all {
			for _, b := range c.of(more, nil, 1) {
				both = append(both, a.with(b))
			}
		}
		all = both
	}
	return all
}

// placed are the causes that a list names an area for; unplaced is how often the others have one named. Starter values, from memory.
var placed = []string{"collision", "theft", "vandalism"}

const unplaced = 0.2

// with returns a lot that has both.
func (p Pattern) with(q Pattern) Pattern {
	p.Chance *= q.Chance
	p.Loss = slices.Concat(p.Loss, q.Loss)
	p.Words += "; " + q.Words
	p.Cost = 1 - (1-p.Cost)*(1-q.Cost)
	p.still, p.missing = max(p.still, q.still), p.missing || q.missing
	p.Airbags = slices.Concat(p.Airbags, q.Airbags)
	slices.Sort(p.Airbags)
	p.Airbags = slices.Compact(p.Airbags)
	p.Damage = worst(slices.Concat(p.Damage, q.Damage))
	p.Survey = joined(p.Survey, q.Survey)
	return p
}

// worst keeps of the marks of one area the one that goes furthest.
func worst(marks []lot.Damage) []lot.Damage {
	var out []lot.Damage
	for _, d := range marks {
		i := slices.IndexFunc(out, func(x lot.Damage) bool { return x.Area == d.Area })
		switch {
		case i < 0:
			out = append(out, d)
		case slices.Index(lot.Extents, d.Extent) > slices.Index(lot.Extents, out[i].Extent):
			out[i] = d
		}
	}
	return out
}

func joined(a, b *lot.Survey) *lot.Survey {
	if a == nil || b == nil {
		return cmp.Or(a, b)
	}
	s := *a
	s.Water, s.Hail, s.Fire = cmp.Or(a.Water, b.Water), cmp.Or(a.Hail, b.Hail), cmp.Or(a.Fire, b.Fire)
	s.Causes, s.Missing = slices.Concat(a.Causes, b.Causes), slices.Concat(a.Missing, b.Missing)
	return &s
}

// Units returns which patterns k units of one weight are of: the position of each in the list, never falling. Every pattern has as many as
// its chance asks for, up or down to a whole one. Source: systematic sampling, Cochran, Sampling Techniques, ch. 8 (from memory).
func Units(all []Pattern, k int) []int {
	out := make([]int, k)
	at, sum := 0, 0.0
	for i := range out {
		for at < len(all)-1 && sum+all[at].Chance <= (float64(i)+0.5)/float64(k) {
			sum += all[at].Chance
			at++
		}
		out[i] = at
	}
	return out
}
