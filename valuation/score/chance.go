package score

import (
	"math"

	"walkline/valuation/prob"
)

// Coverage is how often an interval held what came, with the 95 % range of chances that this leaves.
type Coverage struct {
	Level  float64 `json:"level"`
	Inside int     `json:"inside"`
	N      int     `json:"n"`
	Share  float64 `json:"share"`
	Low    float64 `json:"low"`
	High   float64 `json:"high"`
}

// Holds reports whether the stated level is among the chances that the count leaves open.
func (c Coverage) Holds() bool { return c.Low <= c.Level && c.Level <= c.High }

// NewCoverage returns the coverage of an interval of that level which held what came inside times in n.
func NewCoverage(level float64, inside, n int) Coverage {
	c := Coverage{Level: level, Inside: inside, N: n, High: 1}
	if n > 0 {
		c.Share = float64(inside) / float64(n)
		c.Low, c.High = prob.ChanceRange(inside, n, 0.95)
	}
	return c
}

// Uneven returns the chance of counts at least so uneven when every bar is as likely (chi-squared test).
func Uneven(counts []int) float64 {
	n := 0
	for _, c := range counts {
		n += c
	}
	want := float64(n) / float64(len(counts))
	x := 0.0
	for _, c := range counts {
		x += (float64(c) - want) * (float64(c) - want) / want
	}
	return prob.ChiSquaredTail(x, float64(len(counts)-1))
}

// Call is a stated chance and whether it came.
type Call struct {
	Chance float64
	Came   bool
}

// tenths is the number of bins of a reliability diagram.
const tenths = 10

// Reliability is how stated chances compare with what came. Brier = Calibration - Resolution + Uncertainty + Within.
type Reliability struct {
	N           int     `json:"n"`
	Events      int     `json:"events"`
	Brier       float64 `json:"brier"`       // mean squared distance of the chance from what came
	Calibration float64 `json:"calibration"` // Murphy's reliability: 0 is perfect
	Resolution  float64 `json:"resolution"`  // how far the tenths' outcomes lie apart
	Uncertainty float64 `json:"uncertainty"` // what always stating the overall share would score
	Within      float64 `json:"within"`      // what gathering chances into tenths leaves over
	Bins        []Bin   `json:"bins"`        // tenths that have any
}

// Bin is the forecasts whose chance lies in one tenth.
type Bin struct {
	N      int     `json:"n"`
	Events int     `json:"events"`
	Said   float64 `json:"said"` // mean chance
	Came   float64 `json:"came"` // share
	Low    float64 `json:"low"`  // 95 % range of chances that the count leaves
	High   float64 `json:"high"`
}

// NewReliability returns the Brier score of the calls and its parts. Source: [2], halved as today; [3].
func NewReliability(calls []Call) Reliability {
	r := Reliability{N: len(calls)}
	if r.N == 0 {
		return r
	}
	var bins [tenths]Bin
	for _, c := range calls {
		b := &bins[min(tenths-1, int(tenths*c.Chance))]
		came := 0.0
		if c.Came {
			came = 1
			b.Events++
			r.Events++
		}
		b.N++
		b.Said += c.Chance
		r.Brier += (c.Chance - came) * (c.Chance - came)
	}
	n := float64(r.N)
	r.Brier /= n
	share := float64(r.Events) / n
	r.Uncertainty = share * (1 - share)
	for _, b := range bins {
		if b.N == 0 {
			continue
		}
		b.Said /= float64(b.N)
		b.Came = float64(b.Events) / float64(b.N)
		b.Low, b.High = prob.ChanceRange(b.Events, b.N, 0.95)
		r.Calibration += float64(b.N) * math.Pow(b.Said-b.Came, 2) / n
		r.Resolution += float64(b.N) * math.Pow(b.Came-share, 2) / n
		r.Bins = append(r.Bins, b)
	}
	r.Within = r.Brier - (r.Calibration - r.Resolution + r.Uncertainty)
	return r
}
