package prob

import "hash/fnv"

// Draws makes columns of n stratified normal scores: each column is the n midpoints of a Latin hypercube in an order of
// its own, which depends on the seed and the column's name alone. Editing one line of a case therefore leaves the
// draws of every other line as they were, and the mean of anything additive is exact up to the strata.
// Random: one stream per (seed, name). Source: McKay, Beckman and Conover 1979.
type Draws struct {
	seed  uint64
	score []float64
}

// NewDraws returns the source of columns of n scores. Limits: n >= 1.
func NewDraws(n int, seed int64) *Draws {
	d := &Draws{seed: uint64(seed), score: make([]float64, n)}
	for i := range d.score {
		d.score[i] = NormQuantile((float64(i) + 0.5) / float64(n))
	}
	return d
}

// Len returns the number of scores in a column.
func (d *Draws) Len() int { return len(d.score) }

// Column fills into with the column of that name. Shape: into has Len() places. Units: normal scores.
func (d *Draws) Column(name string, into []float64) {
	copy(into, d.score)
	h := fnv.New64a()
	h.Write([]byte(name))
	state := mix(h.Sum64() ^ mix(d.seed+0x9e3779b97f4a7c15))
	for i := len(into) - 1; i > 0; i-- {
		state += 0x9e3779b97f4a7c15
		r := uint32(mix(state) >> 32)
		j := int(uint64(r) * uint64(i+1) >> 32) // multiply-shift; its bias is below n / 2^32
		into[i], into[j] = into[j], into[i]
	}
}

// mix is the finaliser of splitmix64. Source: Steele, Lea and Flood, OOPSLA 2014 (from memory).
func mix(x uint64) uint64 {
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}
