package hindsight

import (
	"fmt"
	"math"

	"walkline/valuation/learn"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/score"
)

// Record is how the forecasts have done on the buys that were finished and sold.
type Record struct {
	Buys     int               `json:"buys"`     // finished and sold, with a forecast
	Figures  []FigureRecord    `json:"figures"`  // resale, profit, cost, hours, days
	Risks    score.Reliability `json:"risks"`    // chances of hidden damage against what stripping showed
	Losses   score.Reliability `json:"losses"`   // chances of a loss against what was lost
	Ratios   *Ratios           `json:"ratios"`   // nil: no sale
	Money    Money             `json:"money"`    // won and lost by cause
	LeftOut  []string          `json:"left_out"` // what was not counted and why, in words
	Selected string            `json:"selected"` // [learn.Selection]
}

// FigureRecord is one foretold figure over all buys whose outcome is known.
type FigureRecord struct {
	Key      string           `json:"key"`  // resale | profit | cost | hours | days
	Name     string           `json:"name"` // in words
	N        int              `json:"n"`
	Coverage []score.Coverage `json:"coverage"` // of the 50, 80 and 90 % intervals
	PIT      []int            `json:"pit"`      // outcomes by the tenth of the forecast in which they fell, low to high
	Uneven   float64          `json:"uneven"`   // chance of a PIT histogram at least so uneven if the forecasts are right
	CRPS     float64          `json:"crps"`     // mean, in the figure's unit: 0 is perfect, and 0 where no outcome is scored
	Unscored int              `json:"unscored"` // outcomes of N in another currency: they count among the ranges that held, and in no score
	Naive    *float64         `json:"naive"`    // CRPS of "like the other buys, whatever the lot"; nil: fewer than three buys, or all alike
}

// Skill returns the share of the naive baseline's score that the forecasts take away, and whether there is a baseline.
func (f FigureRecord) Skill() (float64, bool) {
	if f.Naive == nil || *f.Naive <= 0 {
		return 0, false
	}
	return 1 - f.CRPS / *f.Naive, true
}

// Money is the profit foretold and made over the buys whose money is known whole, in minor units of one currency.
type Money struct {
	Currency string       `json:"currency"`
	Buys     []BuyMoney   `json:"buys"`
	Foretold money.Amount `json:"foretold"`
	Came     money.Amount `json:"came"`
	Assumed  int          `json:"assumed"` // of Buys: freight, storage or selling has no bill and counts as foretold
	Causes   []Cause      `json:"causes"`  // their differences add up to Came - Foretold, exactly
}

// BuyMoney is one buy's profit, foretold and made. The causes' differences add up to Came - Foretold, exactly.
type BuyMoney struct {
	Build    int64        `json:"build"`
	Name     string       `json:"name"`
	Foretold money.Amount `json:"foretold"`
	Came     money.Amount `json:"came"`
	Causes   []Cause      `json:"causes"`
}

// Cause is one reason for a profit other than foretold. Positive is money won against the forecast.
type Cause struct {
	Name       string       `json:"name"`
	Difference money.Amount `json:"difference"`
}

// Judge holds the forecasts against what came. Money, its scores and the ratio study are those of the builds in the given
// currency; how often ranges held is that of all.
func Judge(builds []learn.Build, currency string) Record {
	r := Record{Selected: learn.Selection}
	var judged []learn.Build
	unforetold := 0
	for _, b := range builds {
		switch {
		case b.Ending != learn.Sold:
		case b.Foretold == nil:
			unforetold++
		default:
			judged = append(judged, b)
		}
	}
	r.Buys = len(judged)
	if unforetold > 0 {
		r.LeftOut = append(r.LeftOut, count(unforetold)+" without a forecast kept: nothing to hold against what came.")
	}
	for _, f := range figures {
		r.Figures = append(r.Figures, f.record(judged, currency))
	}
	r.Risks, r.Losses = score.NewReliability(riskCalls(builds)), score.NewReliability(lossCalls(judged))
	r.Ratios = ratios(judged, currency)
	r.Money = moneyOf(judged, currency)
	if missing := len(judged) - len(r.Money.Buys); missing > 0 {
		r.LeftOut = append(r.LeftOut, fmt.Sprintf("%s whose money is not known whole, or in another currency: in no sum of money.",
			count(missing)))
	}
	if n := r.Money.Assumed; n > 0 {
		r.LeftOut = append(r.LeftOut, count(n)+" without a bill for freight, storage or selling: that counts at the forecast's value.")
	}
	return r
}

// Ratios are the figures of a ratio study: the foretold median price over the price that came.
type Ratios struct {
	N      int      `json:"n"`
	Median float64  `json:"median"`
	COD    float64  `json:"cod"` // coefficient of dispersion, in percent
	PRD    float64  `json:"prd"` // price-related differential: above 1, dear vehicles are foretold lower than cheap ones
	PRB    *float64 `json:"prb"` // price-related bias; nil: fewer than three sales, or all alike
}

// ratios returns the study of foretold median prices against the prices that came in one currency.
func ratios(judged []learn.Build, currency string) *Ratios {
	var said, came []float64
	for _, b := range judged {
		x, ok := resaleCame(b)
		if !ok || b.Currency != currency || !b.Foretold.Resale.Known() {
			continue
		}
		if median := score.Quantile(b.Foretold.Resale.Q, 0.5); median > 0 {
			said, came = append(said, median), append(came, x)
		}
	}
	study, err := prob.NewRatioStudy(said, came)
	if err != nil {
		return nil
	}
	r := Ratios{N: study.N, Median: study.Median, COD: study.COD, PRD: study.PRD}
	if !math.IsNaN(study.PRB) {
		r.PRB = &study.PRB
	}
	return &r
}

// count counts buys in words.
func count(n int) string {
	if n == 1 {
		return "1 buy"
	}
	return fmt.Sprintf("%d buys", n)
}
