package prob

import (
	"hash/fnv"
	"math"
	"math/bits"
)

// Draws makes columns of n stratified normal scores: each column is the n midpoints of a Latin hypercube in an order of
// its own, which depends on the seed and the column's name alone. Editing one line of a case therefore leaves the
// draws of every other line as they were, and the mean of anything additive is exact up to the strata.
// Random: one stream per (seed, name). Source: McKay, Beckman and Conover 1979.
type Draws struct {
	seed  uint64
	score []float64
	bits  int // of the smallest power of two that holds n
}

// NewDraws returns the source of columns of n scores. Limits: n >= 1.
func NewDraws(n int, seed int64) *Draws {
	d := &Draws{seed: uint64(seed), score: make([]float64, n), bits: max(1, bits.Len(uint(n-1)))}
	for i := range d.score {
		d.score[i] = NormQuantile((float64(i) + 0.5) / float64(n))
	}
	return d
}

// Len returns the number of scores in a column.
func (d *Draws) Len() int { return len(d.score) }

// Column fills into with the column of that name. Shape: into has Len() places. Units: normal scores.
func (d *Draws) Column(name string, into []float64) {
	s := d.Stream(name)
	s.scores(nil, into)
}

// rounds is how often a stream mixes a scenario's number. Three rounds leave pairs of columns as independent as shuffles
// are; two do not.
const rounds = 3

// Stream is one column, of which any place can be read without the others. Its order is a bijection of the numbers below
// the smallest power of two that holds n: rounds of an odd factor, a sum and a shifted exclusive or, with keys of its own;
// numbers that are no scenario are sent on until they are one.
type Stream struct {
	score  []float64
	factor [rounds]uint32
	term   [rounds]uint32
	mask   uint32
	shift  uint32
}

// Stream returns the column of that name.
func (d *Draws) Stream(name string) Stream {
	h := fnv.New64a()
	h.Write([]byte(name))
	state := mix(h.Sum64() ^ mix(d.seed+0x9e3779b97f4a7c15))
	s := Stream{score: d.score, mask: 1<<d.bits - 1, shift: uint32(d.bits+1) / 2}
	for r := range rounds {
		state += 0x9e3779b97f4a7c15
		key := mix(state)
		s.factor[r], s.term[r] = uint32(key)|1, uint32(key>>32)
	}
	return s
}

// scores fills into with the scores of the scenarios at the places of at, of the first len(into) where at is nil.
func (s *Stream) scores(at []int32, into []float64) {
	f0, f1, f2 := s.factor[0], s.factor[1], s.factor[2]
	t0, t1, t2 := s.term[0], s.term[1], s.term[2]
	mask, shift, score := s.mask, s.shift&31, s.score
	for k := range into {
		x := uint32(k)
		if at != nil {
			x = uint32(at[k])
		}
		for {
			x = (x*f0 + t0) & mask
			x ^= x >> shift
			x = (x*f1 + t1) & mask
			x ^= x >> shift
			x = (x*f2 + t2) & mask
			x ^= x >> shift
			if int(x) < len(score) {
				break
			}
		}
		into[k] = score[x]
	}
}

// Lean is how a stream leans on a common factor: with the loading Rho, as [Loaded] has it. Shape: one score a scenario.
type Lean struct {
	Factor []float64
	Rho    float64
}

// Scores fills into with the stream's scores, leaning on a factor, in the scenarios of at; in all where at is nil.
// Shape: into has a place for each.
func (s *Stream) Scores(l Lean, at []int32, into []float64) {
	s.scores(at, into)
	if l.Rho == 0 {
		return
	}
	if at == nil {
		Loaded(into, l.Factor, l.Rho)
		return
	}
	rest := math.Sqrt(1 - l.Rho*l.Rho)
	for k, i := range at {
		into[k] = l.Rho*l.Factor[i] + rest*into[k]
	}
}

// Values fills into as Scores does, with the values of t at those scores.
func (s *Stream) Values(t *Scored, l Lean, at []int32, into []float64) {
	if l.Rho == 0 || at != nil {
		s.Scores(l, at, into)
		for k, z := range into {
			into[k] = t.At(z)
		}
		return
	}
	s.scores(nil, into)
	rest, factor := math.Sqrt(1-l.Rho*l.Rho), l.Factor[:len(into)]
	for i, z := range into {
		into[i] = t.At(l.Rho*factor[i] + rest*z)
	}
}

// Split parts the scenarios of at (all of them when nil) by whether an event of that chance comes about in them, each part in
// the order of at. Shape: work, yes and no have a place for each scenario; what is returned lies in yes and no.
func (s *Stream) Split(chance float64, l Lean, at []int32, work []float64, yes, no []int32) (happens, not []int32) {
	edge := Edge(chance)
	n := len(at)
	if at == nil {
		n = len(s.score)
	}
	s.Scores(l, at, work[:n])
	a, b := 0, 0
	for k, z := range work[:n] {
		i := int32(k)
		if at != nil {
			i = at[k]
		}
		yes[a], no[b] = i, i
		if z > edge {
			a++
		} else {
			b++
		}
	}
	return yes[:a], no[:b]
}

// mix is the finaliser of splitmix64. Source: Steele, Lea and Flood, OOPSLA 2014 (from memory).
func mix(x uint64) uint64 {
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}
