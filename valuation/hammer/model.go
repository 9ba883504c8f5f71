package hammer

import (
	"errors"
	"math"
	"slices"

	"walkline/valuation/belief"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// Kind is what a lot's price hangs on beside its worth: causes of loss as in lot.Losses, and running state as in lot.Conditions.
// None of the causes means that the cause is not known; an empty state counts as unknown.
type Kind struct {
	Loss      []string
	Condition string
}

// Result is what one lot of a kind went for.
type Result struct {
	Kind
	Finished float64 // finished value, before the sale
	Work     float64 // visible work, before the sale
	Price    float64 // hammer price
}

// Model is what is believed of the terms.
type Model struct {
	terms   belief.Linear
	results int
}

// Results returns how many results the belief was learned from; none: starter values alone.
func (m Model) Results() int { return m.results }

// Starter values, from memory. The level is the middle share; the spreads are in units of the error.
const (
	starterLevel  = 0.65 // middle share of lots of all kinds
	starterError  = 0.35 // standard deviation of the log share about its terms
	starterWeight = 4    // degrees of freedom of the error, halved
	levelSpread   = 1.0
	causeSpread   = 0.5
	stateSpread   = 0.4
)

// starterTerms are the kinds that go for less, or more, than the level, as terms of the log share. From memory.
var starterTerms = map[string]float64{"flood": -0.25, "fire": -0.3, "theft": 0.1, "hail": 0.15, "mechanical": -0.1,
	"drives": 0.1, "turns_over": -0.1, "dead": -0.15, "unknown": -0.1}

// columns are the terms in order: the level, the causes with one for none, the states.
var columns = slices.Concat([]string{"level"}, lot.Losses, []string{"no cause"}, lot.Conditions)

// Starter returns the belief before any result.
func Starter() Model {
	spread := make([]float64, len(columns))
	for i := range columns {
		switch {
		case i == 0:
			spread[i] = levelSpread
		case i <= len(lot.Losses)+1:
			spread[i] = causeSpread
		default:
			spread[i] = stateSpread
		}
	}
	m := Model{terms: belief.Independent(spread, starterError, starterWeight)}
	for i, name := range columns {
		m.terms.Mean[i] = starterTerms[name]
	}
	m.terms.Mean[0] = math.Log(starterLevel)
	return m
}

// row returns the terms that a kind has a part in. Errors: a cause or state that is none.
func (k Kind) row() ([]float64, error) {
	row := make([]float64, len(columns))
	row[0] = 1
	for _, cause := range k.Loss {
		at := slices.Index(lot.Losses, cause)
		if at < 0 {
			return nil, errors.New("no cause of loss " + cause)
		}
		row[1+at] += 1 / float64(len(k.Loss))
	}
	if len(k.Loss) == 0 {
		row[1+len(lot.Losses)] = 1
	}
	state := k.Condition
	if state == "" {
		state = "unknown"
	}
	at := slices.Index(lot.Conditions, state)
	if at < 0 {
		return nil, errors.New("no running state " + state)
	}
	row[2+len(lot.Losses)+at] = 1
	return row, nil
}

// ErrNoShare says that a lot is worth no more than its visible work, or that a figure is missing, so that its price is no share.
var ErrNoShare = errors.New("the finished value is not above the visible work, or no price is known")

// worth returns what a price is a share of.
func worth(finished, work float64) (float64, error) {
	if w := finished - work; work >= 0 && w > 0 && !math.IsInf(w, 0) {
		return w, nil
	}
	return 0, ErrNoShare
}

// observed returns a result's terms and log share.
func (r Result) observed() (row []float64, y float64, err error) {
	w, err := worth(r.Finished, r.Work)
	if err == nil && !(r.Price > 0 && !math.IsInf(r.Price, 0)) {
		err = ErrNoShare
	}
	if err != nil {
		return nil, 0, err
	}
	row, err = r.row()
	return row, math.Log(r.Price / w), err
}

// Learn returns the belief after the results, and those that could not be used.
func (m Model) Learn(results []Result) (after Model, refused []Result) {
	s := belief.Sample{Weight: 1}
	for _, r := range results {
		row, y, err := r.observed()
		if err != nil {
			refused = append(refused, r)
			continue
		}
		s.X, s.Y = append(s.X, row), append(s.Y, y)
	}
	if len(s.Y) == 0 {
		return m, refused
	}
	return Model{m.terms.Update([]belief.Sample{s}), m.results + len(s.Y)}, refused
}

// Law is the distribution of a hammer price. It serves as the law of a lot of a sale to plan.
type Law struct {
	worth float64
	share belief.T // of the log share
}

// Law returns the distribution of the price of a lot of that kind. Errors: [ErrNoShare], and a kind that is none.
func (m Model) Law(k Kind, finished, work float64) (Law, error) {
	w, err := worth(finished, work)
	if err != nil {
		return Law{}, err
	}
	row, err := k.row()
	if err != nil {
		return Law{}, err
	}
	return Law{w, m.terms.Next(row, 1)}, nil
}

// CDF returns the chance of a price at or below x: the chance to win at a bid of x.
func (l Law) CDF(x float64) float64 {
	if x <= 0 {
		return 0
	}
	return prob.TCDF((math.Log(x/l.worth)-l.share.Mean)/l.share.Scale, l.share.DF)
}

// Quantile returns the price that the lot goes below with chance u. Limits: 0 < u < 1.
func (l Law) Quantile(u float64) float64 { return l.worth * math.Exp(l.share.Quantile(u)) }
