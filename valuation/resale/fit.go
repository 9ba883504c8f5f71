package resale

import (
	"errors"
	"math"

	"walkline/valuation/hedonic"
	"walkline/valuation/prob"
)

// ErrUnknown says that there is nothing to go by: no usable comparable and no guess.
var ErrUnknown = errors.New("the resale price is not known: there is no usable comparable and no guess of low, likely and high")

// ErrNoPrior says that the fit was asked for without a prior.
var ErrNoPrior = errors.New("the resale price is not known: no starter prior was given for the comparables")

// Model is a fitted table of comparables. It is a value: its methods change nothing.
type Model struct {
	err     error
	beliefs Beliefs
	rows    []screened // every row, in the order of the fit; the used ones first
	used    int
	cal     calendar
	subject hedonic.Traits
	year    int     // model year of the subject
	walk    float64 // drift of the market, log points per square root of a year
	blend   hedonic.Blend
	tail    tail
}

// Fit returns the model of the price that rows, beliefs and prior give for s. The answer doesn't depend on the order of
// the rows. Limits: prices are positive minor units; rows that can't be used are left out and named by Warnings.
func Fit(rows []Row, s Subject, b Beliefs, p Prior) Model {
	m := Model{beliefs: b, cal: newCalendar(rows, s, b.Today), year: s.ModelYear}
	m.subject = m.cal.subject(s)
	m.rows = screen(madeAlike(rows, s), m.cal, b.Currency)
	m.rows, m.used = usedFirst(m.rows)
	m.walk = p.Walk.SD
	if m.used == 0 {
		if b.Guess == nil {
			m.err = ErrUnknown
		}
		return m
	}
	if len(p.Markets) == 0 {
		m.err = ErrNoPrior
		return m
	}
	o := hedonic.Outlook{Asked: logFactor(b.AskedToSold, false), Brand: logFactor(b.BrandDiscount, true), Walk: m.walk}
	m.blend = hedonic.Fit(sales(m.rows[:m.used]), m.subject, o, p, b.Currency.Code)
	m.tail = newTail(m.blend.LeftOut())
	return m
}

// Err returns nil, or ErrUnknown when there is nothing to go by; then no other method has an answer.
func (m Model) Err() error { return m.err }

// usedFirst brings the rows that are used to the front, in place, both parts in their order, and returns how many there are.
func usedFirst(rows []screened) ([]screened, int) {
	used := rows[:0]
	var left []screened
	for i := range rows {
		if rows[i].reason == "" {
			used = append(used, rows[i])
		} else {
			left = append(left, rows[i])
		}
	}
	return append(used, left...), len(used)
}

// sales returns what the fit reads of rows.
func sales(rows []screened) []hedonic.Sale {
	out := make([]hedonic.Sale, len(rows))
	for i, r := range rows {
		out[i] = hedonic.Sale{Traits: r.traits, Price: r.price}
	}
	return out
}

// logFactor returns the mean and standard deviation of the log of a factor, or of one less a fraction.
func logFactor(t prob.Three, off bool) Effect {
	value := func(u float64) float64 {
		x := t.Quantile(u)
		if off {
			x = 1 - x
		}
		return math.Log(math.Max(x, leastFactor))
	}
	if t.Sure() {
		return Effect{Mean: value(0.5)}
	}
	const n = 200
	var e Effect
	square := 0.0
	for i := range n {
		x := value((float64(i) + 0.5) / n)
		e.Mean += x / n
		square += x * x / n
	}
	e.SD = math.Sqrt(math.Max(0, square-e.Mean*e.Mean))
	return e
}

// leastFactor keeps the logarithm of a believed factor finite.
const leastFactor = 0.01
