package prob

import "math"

// givenSpan and givenKnots set the table of means by common factor; spreadNodes and spreadSpan the scores over which what is left
// is averaged.
const (
	givenSpan   = 5.0
	givenKnots  = 40
	spreadSpan  = 4.0
	spreadNodes = 24
)

// Given is the mean of a sum of judgements given the lot's common factor, tabulated at even scores of it and linear between.
// The zero value is nothing throughout.
type Given struct {
	at [givenKnots + 1]float64
}

// Add puts scale times the mean of t given the factor, on which t leans with the loading rho.
// Source: E[t | z] = mean over e of the quantile at rho z + sqrt(1 - rho^2) e, e standard normal, by the trapezoid rule.
func (g *Given) Add(t Three, rho, scale float64) {
	if t.Zero() || scale == 0 {
		return
	}
	if rho == 0 || t.Sure() {
		g.Const(scale * t.Mean())
		return
	}
	table, rest := t.Score(), math.Sqrt(1-rho*rho)
	weights := spreadWeights()
	for k := range g.at {
		z := -givenSpan + 2*givenSpan*float64(k)/givenKnots
		sum := 0.0
		for j, w := range weights {
			sum += w * table.At(rho*z+rest*(-spreadSpan+2*spreadSpan*float64(j)/spreadNodes))
		}
		g.at[k] += scale * sum
	}
}

// Const puts x to the mean at every factor.
func (g *Given) Const(x float64) {
	for k := range g.at {
		g.at[k] += x
	}
}

// Plus puts another sum to this one.
func (g *Given) Plus(o *Given) {
	for k := range g.at {
		g.at[k] += o.at[k]
	}
}

// At returns the mean at factor z.
func (g *Given) At(z float64) float64 {
	x := math.Min(math.Max((z+givenSpan)*(givenKnots/(2*givenSpan)), 0), givenKnots)
	k := min(int(x), givenKnots-1)
	return g.at[k] + (x-float64(k))*(g.at[k+1]-g.at[k])
}

// spreadWeights returns the weights of the scores over which what is left is averaged.
func spreadWeights() [spreadNodes + 1]float64 {
	var w [spreadNodes + 1]float64
	sum := 0.0
	for j := range w {
		w[j] = NormPDF(-spreadSpan + 2*spreadSpan*float64(j)/spreadNodes)
		sum += w[j]
	}
	for j := range w {
		w[j] /= sum
	}
	return w
}
