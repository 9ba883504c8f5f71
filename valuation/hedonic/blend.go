package hedonic

import (
	"math"

	"walkline/valuation/prob"
)

// Sale is one price, asked or sold, and what its vehicle was.
type Sale struct {
	Traits
	Price float64 // major units, above zero
}

// Outlook is the buyer's beliefs on the log scale.
type Outlook struct {
	Asked Effect  // log of sold over asked
	Brand Effect  // log of branded over clear
	Walk  float64 // drift of the market, log points per square root of a year
}

// Blend is a fitted table: members that differ in the market's prior and the form of mileage, each with its share. It is a
// value: its methods change nothing. The zero value holds no fit.
type Blend struct{ members []member }

// Empty reports whether the blend holds no fit.
func (b Blend) Empty() bool { return len(b.members) == 0 }

// LeftOut returns each sale's standardised leave-one-out residual under the members' shared answer.
func (b Blend) LeftOut() []float64 {
	if b.Empty() {
		return nil
	}
	z := make([]float64, len(b.members[0].table.Rows))
	for i := range z {
		mean, second := 0.0, 0.0
		for _, mb := range b.members {
			e := mb.fit.Left[i]
			mean += mb.share * e
			second += mb.share * (mb.fit.Spread[i]*mb.fit.Spread[i] + e*e)
		}
		z[i] = mean / math.Sqrt(second-mean*mean)
	}
	return z
}

// Outcome is the predicted log price of one vehicle.
type Outcome struct {
	At    float64 // location
	Doubt float64 // variance of the location, that the rows' weights are themselves found counted in: what all buyers are unsure of alike
	Luck  float64 // squared scale of one sale about it
}

// Predict returns the predicted log price of a vehicle.
func (b Blend) Predict(t Traits) Outcome {
	var o Outcome
	square := 0.0
	for _, mb := range b.members {
		x, unknown := mb.design.features(t)
		at := prob.Dot(x, mb.fit.Coef)
		strange := 0.0
		for _, g := range unknown {
			strange += mb.fit.Tau[g] * mb.fit.Tau[g]
		}
		o.At += mb.share * at
		square += mb.share * at * at
		o.Doubt += mb.share * (strange + mb.fit.Doubt.Variance(x))
		o.Luck += mb.share * mb.fit.Sigma * mb.fit.Sigma
	}
	o.Doubt += math.Max(0, square-o.At*o.At)
	return o
}

// Changes returns the log changes that bring sale i to the subject, by what they are for.
func (b Blend) Changes(i int) [Causes]float64 {
	var logs [Causes]float64
	for _, mb := range b.members {
		for _, e := range mb.table.Target {
			logs[mb.design.terms[e.Term].cause] += mb.share * e.X * mb.fit.Coef[e.Term]
		}
		for _, e := range mb.table.Rows[i] {
			logs[mb.design.terms[e.Term].cause] -= mb.share * e.X * mb.fit.Coef[e.Term]
		}
	}
	return logs
}

// Weight returns how much sale i counts, 0..1, against one just like the subject whose price fits in.
func (b Blend) Weight(i int) float64 {
	sum := 0.0
	for _, mb := range b.members {
		sum += mb.share * mb.table.Like[i] * mb.fit.Robust[i] * mb.table.DF / (mb.table.DF + 1)
	}
	return sum
}

// Pull returns by how much sale i moves the subject's log price: the answer with it less the answer without it.
func (b Blend) Pull(i int) float64 {
	sum := 0.0
	for _, mb := range b.members {
		sum += mb.share * mb.slopeOn(i) * mb.fit.Left[i]
	}
	return sum
}

// Hold returns how strongly the subject's log price hangs on the log price of sale i.
func (b Blend) Hold(i int) float64 {
	sum := 0.0
	for _, mb := range b.members {
		sum += mb.share * mb.slopeOn(i)
	}
	return math.Abs(sum)
}
