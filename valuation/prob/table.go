package prob

import (
	"math"
	"sort"
)

// Table is a distribution given by its quantiles: between two knots the value is spread evenly, so its support is
// bounded by the first and last knot. A single knot is a certain value.
type Table struct {
	p, x  []float64 // knots: chances rising from 0 to 1, values not falling
	below []float64 // partial expectation up to each knot
	fast  []int32   // first knot at or after each even slice of the value range, for look-up
}

// CertainTable returns the distribution that is sure of x.
func CertainTable(x float64) Table {
	return Table{p: []float64{1}, x: []float64{x}, below: []float64{x}}
}

// NewTable returns the distribution with the given quantiles. Shape: probs rise strictly from 0 to 1, values do not
// fall, both of one length. Limits: anything else is a bug and panics. Equal values throughout give a certain value.
func NewTable(probs, values []float64) Table {
	n := len(probs)
	if n < 2 || len(values) != n || probs[0] != 0 || probs[n-1] != 1 {
		panic("prob: a table needs chances from 0 to 1 and a value for each")
	}
	if values[0] == values[n-1] {
		return CertainTable(values[0])
	}
	t := Table{p: probs, x: values, below: make([]float64, n)}
	for i := 1; i < n; i++ {
		if !(probs[i] > probs[i-1]) || !(values[i] >= values[i-1]) {
			panic("prob: a table's chances rise and its values do not fall")
		}
		t.below[i] = t.below[i-1] + (probs[i]-probs[i-1])*(values[i]+values[i-1])/2
	}
	t.index()
	return t
}

// index prepares the look-up of a value's knot: the value range in even slices, four to a knot.
func (t *Table) index() {
	t.fast = make([]int32, 4*len(t.x)+1)
	k := 0
	for i := range t.fast {
		v := t.x[0] + (t.x[len(t.x)-1]-t.x[0])*float64(i)/float64(len(t.fast)-1)
		for k < len(t.x)-1 && t.x[k] < v {
			k++
		}
		t.fast[i] = int32(k)
	}
}

// Certain reports whether t is one sure value.
func (t Table) Certain() bool { return len(t.x) == 1 }

// Mean returns the expected value.
func (t Table) Mean() float64 { return t.below[len(t.below)-1] }

// SD returns the standard deviation.
func (t Table) SD() float64 {
	m := t.Mean()
	var s float64
	for i := 1; i < len(t.x); i++ {
		a, b := t.x[i-1]-m, t.x[i]-m
		s += (t.p[i] - t.p[i-1]) * (a*a + a*b + b*b) / 3
	}
	return math.Sqrt(s)
}

// Quantile returns the value below which t lies with chance u.
func (t Table) Quantile(u float64) float64 {
	if t.Certain() || u <= 0 {
		return t.x[0]
	}
	if u >= 1 {
		return t.x[len(t.x)-1]
	}
	i := sort.SearchFloat64s(t.p, u)
	if i == 0 {
		return t.x[0]
	}
	return t.x[i-1] + (u-t.p[i-1])/(t.p[i]-t.p[i-1])*(t.x[i]-t.x[i-1])
}

// CDF returns the chance of a value at or below x; for a certain value, of a value strictly below x, so that a profit
// of exactly nothing is no loss.
func (t Table) CDF(x float64) float64 {
	c, _ := t.Lower(x)
	return c
}

// Below returns the partial expectation: the mean of the value where it is at most x, times the chance of that.
func (t Table) Below(x float64) float64 {
	_, b := t.Lower(x)
	return b
}

// Tie is how close to a certain value counts as equal to it, in the value's own unit (money: a fraction of any cent).
const Tie = 1e-7

// Lower returns CDF(x) and Below(x) in one look-up.
func (t Table) Lower(x float64) (chance, partial float64) {
	last := len(t.x) - 1
	if t.Certain() {
		if x > t.x[0]+Tie {
			return 1, t.x[0]
		}
		return 0, 0
	}
	if x <= t.x[0] {
		return 0, 0
	}
	if x >= t.x[last] {
		return 1, t.below[last]
	}
	return t.within(t.knot(x), x)
}

// knot returns the first knot whose value is at least x, for x inside the range.
func (t Table) knot(x float64) int {
	at := int((x - t.x[0]) / (t.x[len(t.x)-1] - t.x[0]) * float64(len(t.fast)-1))
	i := int(t.fast[at])
	for i > 1 && t.x[i-1] >= x {
		i--
	}
	for t.x[i] < x {
		i++
	}
	return max(i, 1)
}

// Walk reads a table at values that lie near each other: each look-up begins where the one before ended.
type Walk struct {
	t *Table
	k int
}

// Walk returns a reader of the table. Limits: for one goroutine.
func (t *Table) Walk() Walk { return Walk{t, 1} }

// Lower returns what [Table.Lower] returns.
func (w *Walk) Lower(x float64) (chance, partial float64) {
	at := w.t.x
	last := len(at) - 1
	switch {
	case last == 0:
		return w.t.Lower(x)
	case x <= at[0]:
		return 0, 0
	case x >= at[last]:
		return 1, w.t.below[last]
	}
	k := w.k
	for at[k] < x {
		k++
	}
	for at[k-1] >= x {
		k--
	}
	w.k = k
	return w.t.within(k, x)
}

// within returns the chance and the partial expectation of a value between the knots k-1 and k.
func (t *Table) within(k int, x float64) (chance, partial float64) {
	f := (x - t.x[k-1]) / (t.x[k] - t.x[k-1])
	dp := f * (t.p[k] - t.p[k-1])
	return t.p[k-1] + dp, t.below[k-1] + dp*(x+t.x[k-1])/2
}
