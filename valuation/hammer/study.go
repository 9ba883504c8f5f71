package hammer

import "walkline/valuation/score"

// Study is how the results compare with what was foretold of each by those before it.
type Study struct {
	N        int            `json:"n"`
	Refused  int            `json:"refused"` // results without a share
	PIT      []float64      `json:"-"`       // the chance that was given to a price at or below what came, in order
	Tenths   []int          `json:"tenths"`  // of the PIT: even when the forecasts are calibrated
	Uneven   float64        `json:"uneven"`  // chance of tenths at least so uneven when they are
	Coverage score.Coverage `json:"coverage"`
}

// studied is the level of the interval whose coverage is counted.
const studied = 0.8

// NewStudy foretells each result from the starter values and the results before it. Shape: results in the order of their days.
func NewStudy(results []Result) Study {
	s := Study{Tenths: make([]int, 10), Uneven: 1}
	m, inside := Starter(), 0
	for _, r := range results {
		after, refused := m.Learn([]Result{r})
		if len(refused) > 0 {
			s.Refused++
			continue
		}
		law, err := m.Law(r.Kind, r.Finished, r.Work)
		if err != nil { // what can be learned from can be foretold
			panic("hammer: " + err.Error())
		}
		u := law.CDF(r.Price)
		s.PIT = append(s.PIT, u)
		s.Tenths[min(9, int(10*u))]++
		if 2*u >= 1-studied && 2*u <= 1+studied {
			inside++
		}
		m = after
	}
	s.N = len(s.PIT)
	s.Coverage = score.NewCoverage(studied, inside, s.N)
	if s.N > 0 {
		s.Uneven = score.Uneven(s.Tenths)
	}
	return s
}
