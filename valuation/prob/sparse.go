package prob

import (
	"math"
	"math/bits"
	"slices"
)

// elimination is the order in which the unknowns of a sparse symmetric system are eliminated, and which of the unknowns after it each
// meets by then. Models and trims meet the effects that all rows share and hardly one another, so that nearly all of the system
// stays zero; whatever meets the fewest others goes first.
//
// Matrices are n by n, row by row, upper triangle, rows and columns by place in the order; what doesn't meet is never read.
//
// Sources: George and Liu, Computer Solution of Large Sparse Positive Definite Systems, 1981, the order; Erisman and Tinney, On
// computing certain elements of the inverse of a sparse matrix, CACM 18 (1975) 177-179, invert (both from memory).
type elimination struct {
	place []int   // of each unknown
	later [][]int // of each place, the places after it that it meets
}

// meeting is a set of unknowns.
type meeting []uint64

func (m meeting) put(j int)  { m[j/64] |= 1 << (j % 64) }
func (m meeting) drop(j int) { m[j/64] &^= 1 << (j % 64) }

func (m meeting) join(o meeting) {
	for k, w := range o {
		m[k] |= w
	}
}

func (m meeting) count() int {
	n := 0
	for _, w := range m {
		n += bits.OnesCount64(w)
	}
	return n
}

func (m meeting) members() []int {
	out := make([]int, 0, m.count())
	for k, w := range m {
		for ; w != 0; w &= w - 1 {
			out = append(out, 64*k+bits.TrailingZeros64(w))
		}
	}
	return out
}

// meetings returns for each of n terms those that a row or a link has beside it.
func meetings(n int, rows [][]Entry, links []Link) []meeting {
	words := (n + 63) / 64
	all := make([]uint64, words*(n+1))
	out := make([]meeting, n)
	for j := range out {
		out[j] = all[j*words : (j+1)*words]
	}
	row := meeting(all[n*words:])
	for _, r := range rows {
		clear(row)
		for _, e := range r {
			row.put(e.Term)
		}
		for _, e := range r {
			out[e.Term].join(row)
		}
	}
	for _, l := range links {
		if l.From >= 0 {
			out[l.From].put(l.To)
			out[l.To].put(l.From)
		}
	}
	for j := range out {
		out[j].drop(j)
	}
	return out
}

// newElimination orders the unknowns of a system whose element (i, j) is zero unless i and j meet; meets is used up.
func newElimination(meets []meeting) elimination {
	n := len(meets)
	e := elimination{place: make([]int, n), later: make([][]int, n)}
	degree, gone := make([]int, n), n+1 // no unknown meets as many
	for j := range degree {
		degree[j] = meets[j].count()
	}
	for k := range n {
		next := 0
		for j, d := range degree {
			if d < degree[next] {
				next = j
			}
		}
		e.place[next], e.later[k] = k, meets[next].members()
		for _, j := range e.later[k] {
			meets[j].join(meets[next])
			meets[j].drop(j)
			meets[j].drop(next)
			degree[j] = meets[j].count()
		}
		degree[next] = gone
	}
	for _, later := range e.later {
		for i, j := range later {
			later[i] = e.place[j]
		}
		slices.Sort(later)
	}
	return e
}

// factor turns a into Cholesky's upper factor and reports whether a was positive definite.
func (e elimination) factor(a []float64) bool {
	n := len(e.place)
	for k, later := range e.later {
		row := a[k*n : (k+1)*n]
		if !(row[k] > 0) {
			return false
		}
		row[k] = math.Sqrt(row[k])
		by := 1 / row[k]
		for _, j := range later {
			row[j] *= by
		}
		for i, at := range later {
			x, to := row[at], a[at*n:(at+1)*n]
			for _, j := range later[i:] {
				to[j] -= x * row[j]
			}
		}
	}
	return true
}

// forward solves u'y = b for the factor u, in place.
func (e elimination) forward(u, b []float64) {
	n := len(e.place)
	for k, later := range e.later {
		row := u[k*n : (k+1)*n]
		b[k] /= row[k]
		x := b[k]
		if x == 0 {
			continue
		}
		for _, j := range later {
			b[j] -= x * row[j]
		}
	}
}

// backward solves u x = y for the factor u, in place.
func (e elimination) backward(u, y []float64) {
	n := len(e.place)
	for k := n - 1; k >= 0; k-- {
		row := u[k*n : (k+1)*n]
		sum := y[k]
		for _, j := range e.later[k] {
			sum -= row[j] * y[j]
		}
		y[k] = sum / row[k]
	}
}

// invert turns the factor u into the inverse of the system, as far as unknowns meet.
func (e elimination) invert(u []float64) {
	n := len(e.place)
	share, sum := make([]float64, n), make([]float64, n)
	for k := n - 1; k >= 0; k-- {
		row, later := u[k*n:(k+1)*n], e.later[k]
		own := 1 / (row[k] * row[k])
		for i, j := range later {
			share[i], sum[i] = row[j]/row[k], 0
		}
		for i, at := range later {
			z, x := u[at*n:(at+1)*n], share[i]
			s := x * z[at]
			for t, j := range later[i+1:] {
				s += share[i+1+t] * z[j]
				sum[i+1+t] += x * z[j]
			}
			sum[i] += s
			own += x * sum[i]
		}
		for i, j := range later {
			row[j] = -sum[i]
		}
		row[k] = own
	}
}

// Covariance is the covariance of the effects of a fit, kept as Cholesky's factor of its inverse.
type Covariance struct {
	order  elimination
	factor []float64
}

// Variance returns the variance of the row's expectation.
func (c Covariance) Variance(row []Entry) float64 {
	sum := 0.0
	for _, x := range c.half(row) {
		sum += x * x
	}
	return sum
}

// With returns the covariance of each effect with the row's expectation.
func (c Covariance) With(row []Entry) []float64 {
	y := c.half(row)
	c.order.backward(c.factor, y)
	out := make([]float64, len(y))
	for j, k := range c.order.place {
		out[j] = y[k]
	}
	return out
}

func (c Covariance) half(row []Entry) []float64 {
	y := make([]float64, len(c.order.place))
	for _, e := range row {
		y[c.order.place[e.Term]] += e.X
	}
	c.order.forward(c.factor, y)
	return y
}
