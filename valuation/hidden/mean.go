package hidden

import (
	"math"

	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// Mean is what a risk costs on average when the damage is there. Units: money in major units, days.
type Mean struct {
	Cash, Labour, Days float64
}

// meanNodes and meanSpan set the even grid of normal scores on which means are summed; the span is that of prob.Scored.
const (
	meanNodes = 69
	meanSpan  = 4.25
)

// MeanIfPresent returns the mean of the risk's cost, own labour and days given that it is there, at that chance. Since
// presence and cost lean on the same factor, damage that is there costs more than its judgement's own mean.
// Source: E[X(z) P(there | z)] / P(there) for two normal scores of correlation loading squared.
func (r Risk) MeanIfPresent(chance, sharedLoading float64, rates map[string]float64) Mean {
	return r.mean(r.weights(chance, sharedLoading), rates)
}

func (r Risk) mean(weights scores, rates map[string]float64) Mean {
	m := Mean{Cash: weights.mean(r.Cost), Days: weights.mean(r.Days)}
	for _, trade := range lot.Trades {
		if t := r.Hours[trade]; !t.Zero() {
			m.Labour += rates[trade] * weights.mean(t)
		}
	}
	return m
}

// scores are the weights of the grid of normal scores given that the damage is there; nil: the scores tell nothing of it.
type scores []float64

func (r Risk) weights(chance, loading float64) scores {
	like := r.rho(loading) * r.rho(loading)
	if like == 0 || chance <= 0 || chance >= 1 {
		return nil
	}
	edge, rest := prob.Edge(chance), math.Sqrt(1-like*like)
	w, sum := make(scores, meanNodes), 0.0
	for i := range w {
		z := node(i)
		w[i] = prob.NormPDF(z) * prob.NormCDF((like*z-edge)/rest)
		sum += w[i]
	}
	for i := range w {
		w[i] /= sum
	}
	return w
}

func node(i int) float64 { return -meanSpan + 2*meanSpan*float64(i)/(meanNodes-1) }

func (w scores) mean(t prob.Three) float64 {
	if w == nil || t.Sure() {
		return t.Mean()
	}
	table, m := t.Score(), 0.0
	for i, x := range w {
		m += x * table.At(node(i))
	}
	return m
}
