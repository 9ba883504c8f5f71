package resale

import (
	"math"

	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// Pair is one vehicle that was seen asked for and later sold, in minor units of one currency.
type Pair struct{ Asked, Sold money.Amount }

// SoldShare is what pairs teach of the factor from asked to sold prices.
type SoldShare struct {
	Pairs int        // that count
	Odd   int        // left out: their ratio is no haggling
	Seen  float64    // geometric mean of sold over asked
	Share prob.Three // the belief after: the mean, and two of its standard deviations either way
}

// The ratios that haggling may leave, the scatter of single ones before any is seen, and as how many pairs that counts; pairs below the
// least teach nothing. Starter values, from memory.
const (
	leastRatio, mostRatio = 0.5, 1.2
	pairScatter           = 0.05
	scatterWorth          = 4.0
	leastPairs            = 3
)

// LearnSold returns what pairs teach over a belief from before, by a normal belief of the log ratio: the mean of the pairs and that of the
// belief, each by its precision. It reports false with fewer than three pairs. Asked and sold prices of different vehicles are no pairs and
// teach nothing here: what sells is not what stays on offer, and no fit tells that from haggling.
// Source: the normal mean with a known variance (Gelman et al., Bayesian Data Analysis, section 2.5, from memory).
func LearnSold(pairs []Pair, before prob.Three) (SoldShare, bool) {
	var logs []float64
	var s SoldShare
	for _, p := range pairs {
		ratio := float64(p.Sold) / float64(p.Asked)
		if !(ratio >= leastRatio && ratio <= mostRatio) {
			s.Odd++
			continue
		}
		logs = append(logs, math.Log(ratio))
	}
	if s.Pairs = len(logs); s.Pairs < leastPairs {
		return s, false
	}
	mean, squares, n := 0.0, 0.0, float64(s.Pairs)
	for _, y := range logs {
		mean += y / n
	}
	for _, y := range logs {
		squares += (y - mean) * (y - mean)
	}
	s.Seen = math.Exp(mean)
	scatter := (scatterWorth*pairScatter*pairScatter + squares) / (scatterWorth + n - 1)
	own, start := n/scatter, before.Mean()*before.Mean()/before.Variance()
	at, sd := (own*mean+start*math.Log(before.Mean()))/(own+start), 1/math.Sqrt(own+start)
	s.Share = prob.Three{Low: math.Exp(at - 2*sd), Likely: math.Exp(at), High: math.Exp(at + 2*sd)}
	return s, true
}
