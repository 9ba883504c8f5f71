package learn_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/score"
)

// won is a sold win whose forecast of 10,000 give or take 1,000 holds an allowance of half of the unit 1,000, with what it brought.
func won(id int64, price float64) learn.Build {
	var q []float64
	for _, u := range score.Chances {
		q = append(q, 10000+1000*prob.NormQuantile(u))
	}
	p := learn.Prediction{Resale: learn.Figure{Mean: 10000, Q: q}, Terms: learn.Terms{OwnShare: .5, ResaleAllow: 500, Brand: "rebuilt"}}
	day := lot.Date("2026-11-20")
	return learn.Build{ID: id, Currency: "USD", Ending: learn.Sold, Bought: day, Closed: day, Foretold: &p,
		Came: learn.Came{Sale: &learn.Sale{Price: money.Amount(math.Round(100 * price))}}}
}

func shareOf(t *testing.T, builds ...learn.Build) *learn.Proposal {
	t.Helper()
	for _, p := range learn.Propose(builds, "2026-11-20", learn.Factors{}, learn.Starter{OwnShare: .5}) {
		if p.Key == "own_share" {
			return &p
		}
	}
	return nil
}

// One win that falls short by its whole unit, by hand: prior 0.5 with precision 25, observation 1 with precision 1, so 13.5 / 26 = 0.5192;
// the cut to 0..1 takes less than 0.005 off.
func TestOneWinMovesTheShareByHand(t *testing.T) {
	p := shareOf(t, won(1, 9000))
	if p == nil || math.Abs(p.Proposed.At-13.5/26) > .005 || math.Abs(*p.Alone-1) > 1e-9 || math.Abs(p.Pull-1.0/26) > 1e-6 {
		t.Fatalf("%+v", p)
	}
	after := learn.Apply(learn.Factors{}, *p)
	if after.OwnShare == nil || after.OwnShare.Value != p.Proposed.At || after.OwnShare.From != 1 || after.Empty() {
		t.Errorf("accepted: %+v", after.OwnShare)
	}
}

// Wins that fall short by a known share are followed: after 400 wins the belief lies within 0.12 of it.
func TestTheShareOfManyWinsIsFound(t *testing.T) {
	for _, truth := range []float64{.15, .5, .9} {
		rng := rand.New(rand.NewPCG(7, uint64(100*truth)))
		var builds []learn.Build
		for i := range 400 {
			builds = append(builds, won(int64(i), 10000-1000*truth+1000*rng.NormFloat64()))
		}
		if p := shareOf(t, builds...); math.Abs(p.Proposed.At-truth) > .12 || p.Proposed.High-p.Proposed.Low > .2 {
			t.Errorf("truth %g: %+v", truth, p.Proposed)
		}
	}
}

// A forecast that does not say its share teaches nothing, and no share leaves 0..1.
func TestTheShareStaysAShare(t *testing.T) {
	old := won(1, 9000)
	old.Foretold.Terms.OwnShare = 0
	if p := shareOf(t, old); p != nil {
		t.Errorf("an old forecast says %+v", p.Proposed)
	}
	for _, price := range []float64{100, 60000} {
		v := shareOf(t, won(1, price), won(2, price), won(3, price)).Proposed
		if v.At < 0 || v.At > 1 || v.Low < 0 || v.High > 1 || v.Low > v.At || v.At > v.High {
			t.Errorf("price %g: %+v", price, v)
		}
	}
}
