package bid

import (
	"cmp"
	"math"
	"slices"
)

// group is some scenarios of one end and like outlay, as one: their mean cost (selling's flat part and the allowance counted
// in), growth and part of the price that is kept, and how many they are.
type group struct{ cost, growth, kept, count float64 }

// fineness is how many groups of scenarios go into one standard deviation of what the sale brings: the spread that is lost
// inside a group then moves a chance by less than 1 in 100,000.
const fineness = 128

// keptFineness is how many bands of the kept part go into its own size; they are few, since it differs by a few parts in a hundred.
const keptFineness = 64

// group gathers scenarios of like outlay in slices of one width, those of each end by themselves. Outlays are those at the
// invoice total that breaks even on average, so that near it, where rules bind, cost and days both count.
func (p *Problem) group() {
	even := math.Max(0, p.mean(0))
	p.groups = make([][]group, 1+len(p.Ways))
	for end := range p.groups {
		s := slicer{p: p, price: p.price(end).SD()}
		for i := range p.Cost {
			if p.End(i) == end {
				s.add(i, even)
			}
		}
		p.groups[end] = s.groups()
	}
}

// slicer gathers the scenarios of one end.
type slicer struct {
	p     *Problem
	price float64 // standard deviation of what they bring
	at    []int
	edge  []float64 // the price at which each breaks even
	kept  []float64
}

func (s *slicer) add(i int, even float64) {
	kept := s.p.kept(i)
	s.at, s.kept = append(s.at, i), append(s.kept, kept)
	s.edge = append(s.edge, (s.p.fixed(i)+even*s.p.growth(i))/kept)
}

// groups returns the scenarios gathered. Where there would be more slices than scenarios, and where what they bring is
// certain, each stays by itself.
func (s *slicer) groups() []group {
	if len(s.at) == 0 {
		return nil
	}
	lo, hi := slices.Min(s.edge), slices.Max(s.edge)
	least, most := slices.Min(s.kept), slices.Max(s.kept)
	bands := 1 + int((most-least)/most*keptFineness)
	count := (hi - lo) / s.price * fineness
	if s.price == 0 || !(count*float64(bands) < float64(len(s.at))) {
		return s.apart()
	}
	return s.cells(bands, int(count)+1, [2]float64{lo, hi}, [2]float64{least, most})
}

// apart leaves each scenario by itself, in the order of their edges.
func (s *slicer) apart() []group {
	order := make([]int, len(s.at))
	for k := range order {
		order[k] = k
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(s.edge[a], s.edge[b]) })
	out := make([]group, len(order))
	for place, k := range order {
		out[place] = s.single(k)
	}
	return out
}

func (s *slicer) single(k int) group {
	i := s.at[k]
	return group{s.p.fixed(i), s.p.growth(i), s.kept[k], 1}
}

// cells gathers the scenarios in bands of what is kept, and each band in m slices of the edges.
func (s *slicer) cells(bands, m int, edges, kept [2]float64) []group {
	all := make([]group, bands*m)
	place := func(x float64, span [2]float64, n int) int {
		return min(n-1, int((x-span[0])/math.Max(span[1]-span[0], tie)*float64(n)))
	}
	for k := range s.at {
		one := s.single(k)
		g := &all[place(s.kept[k], kept, bands)*m+place(s.edge[k], edges, m)]
		g.cost, g.growth, g.kept, g.count = g.cost+one.cost, g.growth+one.growth, g.kept+one.kept, g.count+1
	}
	some := all[:0]
	for _, g := range all {
		if g.count > 0 {
			some = append(some, group{g.cost / g.count, g.growth / g.count, g.kept / g.count, g.count})
		}
	}
	return some
}
