package resale

import (
	"math"
	"sort"
	"sync"

	"walkline/valuation/hedonic"
	"walkline/valuation/prob"
)

// predict returns the predicted log price of a vehicle at the subject's sale, the drift until then counted in.
func (m Model) predict(t hedonic.Traits) hedonic.Outcome {
	o := m.blend.Predict(t)
	o.Doubt += m.walk * m.walk * (m.cal.sale - m.cal.today)
	return o
}

// tail is the shape of a standardised prediction error: its quantiles at tailChances.
type tail struct {
	z []float64
}

// tailChances are the knots of the predictive distribution.
var tailChances = knots()

func knots() []float64 {
	p := []float64{0, 0.0005, 0.001, 0.002, 0.005, 0.01, 0.015, 0.02}
	for k := 3; k <= 97; k++ {
		p = append(p, float64(k)/100)
	}
	return append(p, 0.98, 0.985, 0.99, 0.995, 0.998, 0.999, 0.9995, 1)
}

// blendRows is the number of rows at which the residuals' own quantiles count as much as the Student-t shape, and scaleRows that at which
// their spread counts as much as what the fit says of it: few rows tell how wide they lie sooner than how they are spread. Both were
// chosen, with the shape's degrees of freedom, by the interval score and the coverage of 300 tables a set around vehicles that no task
// foretells: 10, 40, 60 and 120 rows, 5, 10 and 20, and 5 and 7 degrees were tried.
const (
	blendRows = 40
	scaleRows = 5
)

// tailDF is the degrees of freedom of the shape before residuals are seen.
const tailDF = 5

// tailShape holds the Student-t quantiles at tailChances: a constant table, made at its first use.
var tailShape = sync.OnceValue(func() []float64 {
	q := make([]float64, len(tailChances))
	for i, u := range tailChances {
		q[i] = prob.TQuantile(math.Min(math.Max(u, endChance), 1-endChance), tailDF)
	}
	return q
})

// newTail blends the Student-t shape with the residuals. A row so far off that the warnings ask to check its price (a
// digit short in an advertisement) says nothing of what this vehicle may bring, and is not among them.
func newTail(z []float64) tail {
	var s []float64
	for _, x := range z {
		if math.Abs(x) < grosslyOff {
			s = append(s, x)
		}
	}
	if len(s) == 0 {
		return tail{z: tailShape()}
	}
	t := tail{z: make([]float64, len(tailChances))}
	n, wide := float64(len(s)), spreadOf(s)
	share := n / (n + blendRows)
	sort.Float64s(s)
	for i, q := range tailShape() {
		u := math.Min(math.Max(tailChances[i], endChance), 1-endChance)
		t.z[i] = (1-share)*wide*q + share*sampleQuantile(s, u, q)
	}
	return t
}

// spreadOf returns the scale of residuals against what the fit says of it, outlying ones counting for less, drawn towards 1.
func spreadOf(s []float64) float64 {
	sum := float64(scaleRows)
	for _, z := range s {
		sum += (tailDF + 1) / (tailDF + z*z) * z * z
	}
	return math.Sqrt(sum / (scaleRows + float64(len(s))))
}

// endChance is where the support ends: nothing below the 1 in 10,000 quantile or above the 9,999 in 10,000 one.
const endChance = 1e-4

// sampleQuantile returns the value at chance u of sorted residuals, the k-th of n standing at k/(n+1); beyond them the
// Student-t quantile q takes over, never inside the outermost residual.
func sampleQuantile(s []float64, u, q float64) float64 {
	n := float64(len(s))
	k := u * (n + 1)
	switch {
	case k <= 1:
		return math.Min(s[0], q)
	case k >= n:
		return math.Max(s[len(s)-1], q)
	}
	i := int(k)
	f := k - float64(i)
	return s[i-1]*(1-f) + s[min(i, len(s)-1)]*f
}

// Distribution returns the predictive distribution of the subject's sale price in major units.
func (m Model) Distribution() prob.Table {
	if m.blend.Empty() {
		if m.beliefs.Guess == nil {
			return prob.CertainTable(math.NaN())
		}
		return guessTable(*m.beliefs.Guess)
	}
	return m.table(m.subject)
}

// At returns the predictive distribution for another subject under the same fit, in major units.
func (m Model) At(s Subject) prob.Table {
	if m.blend.Empty() {
		return m.Distribution()
	}
	t := m.cal.subject(s)
	if months := s.More[hedonic.MonthsColumn]; m.cal.month && months == m.subject.More[hedonic.MonthsColumn] {
		t.Age += float64(m.year - s.ModelYear) // another model year with the same months stated: the year is what changed
	}
	return m.table(t)
}

func (m Model) table(t hedonic.Traits) prob.Table {
	o := m.predict(t)
	scale := math.Sqrt(o.Doubt + o.Luck)
	values := make([]float64, len(tailChances))
	last := 0.0
	for i, z := range m.tail.z {
		values[i] = math.Max(last, math.Exp(math.Min(math.Max(o.At+scale*z, leastLog), mostLog)))
		last = values[i]
	}
	return prob.NewTable(tailChances, values)
}

// No price is below a thousandth of a major unit or above a million million, however far a subject lies from the rows.
const (
	leastLog = -6.907755
	mostLog  = 27.631021
)

// guessLevel is the share of a bare guess's variance that all bidders share. Starter value, from memory: replace it with yours.
const guessLevel = 0.5

// mostLevel bounds the variance of the log level, so that its effect on a price stays finite.
const mostLevel = 1

// LevelSD returns the standard deviation in major units of the expected price: what the comparables and beliefs leave
// unsure for every bidder alike (the level of the market, slopes, brand discount, asked-to-sold, drift until the sale).
// The luck of one sale is not in it. Of a bare guess, half of the variance is taken to be shared.
func (m Model) LevelSD() float64 {
	t := m.Distribution()
	if m.blend.Empty() {
		return t.SD() * math.Sqrt(guessLevel)
	}
	return t.Mean() * math.Sqrt(math.Expm1(math.Min(mostLevel, m.predict(m.subject).Doubt)))
}
