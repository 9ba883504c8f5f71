package valuation_test

import (
	"math"
	"testing"

	"walkline/valuation"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

func weigh(t testing.TB, c valuation.Case) (valuation.Answer, valuation.Odds) {
	t.Helper()
	if faults := c.Check(); len(faults) > 0 {
		t.Fatal(faults)
	}
	a, o, err := valuation.NewMemory().Weigh(t.Context(), c, valuation.Knowledge{})
	if err != nil {
		t.Fatal(err)
	}
	return a, o
}

// The ladder and the profit of the answer are the odds at their bids.
func TestOddsAgreeWithTheAnswer(t *testing.T) {
	a, o := weigh(t, small(3))
	for _, r := range a.Ladder {
		at := o.At(r.Bid)
		if at.Total != r.Acquisition || at.Profit.LossChance != r.LossChance || at.Profit.WorstTenth != r.WorstTenth || at.Holds != r.Holds {
			t.Errorf("at %d: %+v, the ladder has %+v", r.Bid, at, r)
		}
		holds := true
		for _, rule := range at.Rules {
			holds = holds && rule.Holds
		}
		if holds != at.Holds || len(at.Rules) != 2 {
			t.Errorf("at %d: rules %+v, all hold: %v", r.Bid, at.Rules, at.Holds)
		}
	}
	at := o.At(*a.WalkAway)
	if math.Abs(at.Profit.Mean-a.Profit.Mean) > .01 || at.Profit.P05 != a.Profit.P05 || at.Profit.P90 != a.Profit.P90 {
		t.Errorf("%+v, the answer has %+v", at.Profit, a.Profit)
	}
	if at.Rules[0].Rule != "min_profit" || at.Rules[0].Wanted != "at least USD 900" {
		t.Errorf("%+v", at.Rules)
	}
}

// Past the walk-away bid every legal bid breaks a rule, whatever its distance; so does a bid between two legal ones.
func TestOddsPastTheLimit(t *testing.T) {
	a, o := weigh(t, small(4))
	last := math.Inf(1)
	for _, b := range []money.Amount{*a.WalkAway + 10000, *a.WalkAway + 10001, *a.WalkAway * 2, *a.WalkAway * 100} {
		at := o.At(b)
		if at.Holds || at.Profit.Mean >= last || o.Total(b) != at.Total {
			t.Errorf("at %d: holds %v, mean %g after %g", b, at.Holds, at.Profit.Mean, last)
		}
		last = at.Profit.Mean
	}
	if at := o.At(*a.WalkAway * 100); at.Profit.LossChance != 1 || last > 0 {
		t.Errorf("a hundred times the walk-away bid: %+v", at.Profit)
	}
}

// Along the bids the chance of a loss never falls, the chance to win never falls, each bid is legal, and each chance is that of the bid by
// itself; the last one looked at mostly loses, and nobody guessed higher.
func TestTheChancesAlongTheBids(t *testing.T) {
	for seed := range int64(4) {
		c := small(seed + 1)
		c.Market.HammerGuess = &prob.Three{Low: 500, Likely: 1500, High: 4000}
		_, o := weigh(t, c)
		along := o.Along(60)
		for i, a := range along {
			at := o.At(a.Bid)
			if !invoice.Legal(c.Buying.BidSteps, a.Bid) || a.Loss != at.Profit.LossChance || *a.Win != *at.Win {
				t.Errorf("seed %d: %+v, by itself %g, %g", seed+1, a, at.Profit.LossChance, *at.Win)
			}
			if i > 0 && (a.Bid <= along[i-1].Bid || a.Loss < along[i-1].Loss || *a.Win < *along[i-1].Win) {
				t.Errorf("seed %d: %+v follows %+v", seed+1, a, along[i-1])
			}
		}
		if last := along[len(along)-1]; len(along) > 60 || along[0].Bid != invoice.Next(c.Buying.BidSteps, 0) || last.Loss < .7 || *last.Win < 1 {
			t.Errorf("seed %d: %d bids from %d to %+v", seed+1, len(along), along[0].Bid, last)
		}
	}
}

// A lot without any doubt loses at every bid above one place, where the price pays for everything else, and at none below it.
func TestACertainLotBreaksEvenInOnePlace(t *testing.T) {
	c := small(1)
	c.Resale.Guess = &prob.Three{Low: 9000, Likely: 9000, High: 9000}
	c.Repair.Lines, c.Hidden.Risks, c.Time.CapitalRate = nil, nil, 0
	c.Findings = map[string]string{valuation.NothingSeen: "no"}
	c.Buying.Freight, c.Buying.Storage.PerDay, c.Time.HoldingPerDay = prob.Three{}, 0, 0
	_, o := weigh(t, c)
	want := 9000*(1-c.Selling.Percent) - c.Selling.Flat
	for _, x := range o.Along(41) {
		if lost := float64(o.Total(x.Bid))/100 > want; (x.Loss > .5) != lost || x.Loss > 0 && x.Loss < 1 {
			t.Errorf("breaks even at %g: %+v", want, x)
		}
	}
}

func TestNoOddsAreKnownOfNothing(t *testing.T) {
	if (valuation.Odds{}).Known() {
		t.Error("the zero value knows a lot")
	}
	if _, _, err := valuation.NewMemory().Weigh(t.Context(), valuation.Defaults(), valuation.Knowledge{}); err == nil {
		t.Error("a case without a price was weighed")
	}
}

// One reading of the odds against one valuation of the same lot.
func BenchmarkOdds(b *testing.B) {
	c := small(3)
	c.Run.Scenarios = 16384
	a, o := weigh(b, c)
	b.Run("valuation", func(b *testing.B) {
		for b.Loop() {
			weigh(b, c)
		}
	})
	b.Run("at a bid", func(b *testing.B) {
		for b.Loop() {
			o.At(*a.WalkAway)
		}
	})
	b.Run("along 64 bids", func(b *testing.B) {
		for b.Loop() {
			o.Along(64)
		}
	})
}
