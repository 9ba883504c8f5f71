package valuation_test

import (
	"math"
	"strings"
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
	a, o, err := valuation.NewMemory().Weigh(c, valuation.Knowledge{})
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
	if at.Rules[0].Rule != "min_profit" || at.Rules[0].Wanted != "at least USD 900" ||
		!strings.HasPrefix(at.Rules[0].Found, "expected profit USD ") {
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

// The chance of a loss at a bid is the chance to break even below its invoice: the law of total probability.
func TestBreakEvenTellsTheChanceOfALoss(t *testing.T) {
	for seed := range int64(4) {
		c := small(seed + 1)
		c.Time.CapitalRate = .12
		a, o := weigh(t, c)
		slices := o.BreakEven(400)
		sum := 0.0
		for i, s := range slices {
			if s.Chance < 0 || i > 0 && s.From != slices[i-1].To {
				t.Fatalf("slice %d: %+v", i, s)
			}
			sum += s.Chance
		}
		// a bare guess ends in atoms of 0.00135, which groups of up to 1 % of the scenarios bring in jumps
		if math.Abs(sum-.998) > .0135*.00135 {
			t.Errorf("the slices hold %g", sum)
		}
		for _, share := range []money.Amount{1, 2, 3, 5} {
			b := *a.WalkAway * share / 2
			total, below := float64(o.Total(b))/100, .001
			for _, s := range slices {
				below += s.Chance * min(1, max(0, (total-s.From)/(s.To-s.From)))
			}
			if got := o.At(b).Profit.LossChance; math.Abs(got-below) > .004 {
				t.Errorf("seed %d at %d: chance of a loss %g, below the line %g", seed+1, b, got, below)
			}
		}
	}
}

// A bid's own invoice leads back to the bid, and a cent less to the legal bid below it.
func TestBidForReadsAnInvoiceBack(t *testing.T) {
	a, o := weigh(t, small(2))
	steps := small(2).Buying.BidSteps
	for _, r := range a.Ladder {
		if got := o.BidFor(float64(r.Acquisition) / 100); o.Total(got) != r.Acquisition {
			t.Errorf("an invoice of %d leads to the bid %d of invoice %d", r.Acquisition, got, o.Total(got))
		}
		if got, want := o.BidFor(float64(r.Acquisition-1)/100), invoice.Before(steps, r.Bid); got != want {
			t.Errorf("just below %d: %d, want %d", r.Bid, got, want)
		}
	}
	if got := o.BidFor(-50); got != 0 {
		t.Errorf("a negative invoice leads to the bid %d", got)
	}
}

// A lot without any doubt breaks even in one place: where the price pays for everything else.
func TestACertainLotBreaksEvenInOnePlace(t *testing.T) {
	c := small(1)
	c.Resale.Guess = &prob.Three{Low: 9000, Likely: 9000, High: 9000}
	c.Repair.Lines, c.Hidden.Risks, c.Time.CapitalRate = nil, nil, 0
	c.Findings = map[string]string{valuation.NothingSeen: "no"}
	c.Buying.Freight, c.Buying.Storage.PerDay, c.Time.HoldingPerDay = prob.Three{}, 0, 0
	_, o := weigh(t, c)
	want := 9000*(1-c.Selling.Percent) - c.Selling.Flat
	for _, s := range o.BreakEven(41) {
		if inside := s.From < want && want <= s.To; inside != (s.Chance > .99) {
			t.Errorf("breaks even at %g: %+v", want, s)
		}
	}
}

func TestNoOddsAreKnownOfNothing(t *testing.T) {
	if (valuation.Odds{}).Known() {
		t.Error("the zero value knows a lot")
	}
	if _, _, err := valuation.NewMemory().Weigh(valuation.Defaults(), valuation.Knowledge{}); err == nil {
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
	b.Run("break-even in 64 slices", func(b *testing.B) {
		for b.Loop() {
			o.BreakEven(64)
		}
	})
}
