package prob_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"walkline/valuation/prob"
)

// The mean given the factor, averaged over the factor, is the judgement's own; at one factor it is that of plain draws.
func TestMeanGivenTheFactor(t *testing.T) {
	three := prob.Three{Low: 100, Likely: 180, High: 900}
	for _, rho := range []float64{0, .3, .7, .9} {
		var g prob.Given
		g.Add(three, rho, 2)
		g.Const(5)
		var sum, weight float64
		for i := range 1601 {
			z := -4 + float64(i)/200
			sum, weight = sum+prob.NormPDF(z)*g.At(z), weight+prob.NormPDF(z)
		}
		near(t, "mean over the factor", sum/weight, 2*three.Mean()+5, .5) // linear between knots
		rng := rand.New(rand.NewPCG(3, 1))
		for _, z := range []float64{-1.3, 0, 2.1} {
			const draws = 20_000
			got := 0.0
			for range draws {
				got += 2 * three.Quantile(prob.NormCDF(rho*z+math.Sqrt(1-rho*rho)*rng.NormFloat64())) / draws
			}
			near(t, "mean at one factor", g.At(z), got+5, 4*2*math.Sqrt(three.Variance()/draws)+.3)
		}
	}
}

// The chance below a value is where the quantile says, at the ends and between; the table keeps mean and spread.
func TestChanceAndTableOfAJudgement(t *testing.T) {
	three := prob.Three{Low: 100, Likely: 180, High: 900}
	for _, u := range []float64{.001, .1, .5, .93} {
		near(t, "chance", three.CDF(three.Quantile(u)), u, 1e-9)
	}
	near(t, "below all", three.CDF(99), 0, 0)
	near(t, "above all", three.CDF(900), 1, 0)
	near(t, "certain, at it", prob.Certain(7).CDF(7), 1, 0)
	near(t, "certain, below it", prob.Certain(7).CDF(6.9), 0, 0)
	table := three.Table()
	near(t, "mean", table.Mean(), three.Mean(), 1e-9)
	near(t, "spread", table.SD(), math.Sqrt(three.Variance()), .02)
	near(t, "narrowed", table.Narrowed(.6).SD(), .6*table.SD(), 1e-9)
	near(t, "narrowed mean", table.Narrowed(.6).Mean(), table.Mean(), 1e-9)
}
