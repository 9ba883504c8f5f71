package valuation

import (
	"walkline/valuation/hidden"
	"walkline/valuation/hindsight"
	"walkline/valuation/invoice"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// Starter returns what is believed before any buy: the risks of the catalogue, each with its chiefest trade as the kind by
// which it is similar to others, and the defaults of a case.
func (k Knowledge) Starter() learn.Starter {
	d := Defaults()
	s := learn.Starter{AskedToSold: d.Resale.AskedToSold, BrandDiscount: d.Resale.BrandDiscount, Loading: d.Hidden.SharedLoading,
		OwnShare: d.Market.OwnShare}
	for _, e := range k.Risks.Risks {
		s.Risks = append(s.Risks, learn.StarterRisk{ID: e.ID, Name: e.Name, Kind: chiefTrade(e.Risk), A: e.Chance.A, B: e.Chance.B})
	}
	return s
}

// chiefTrade returns the trade with most hours of a risk, empty where it has none.
func chiefTrade(r hidden.Risk) string {
	chief, most := "", 0.0
	for _, trade := range lot.Trades {
		if h := r.Hours[trade].Mean(); h > most {
			chief, most = trade, h
		}
	}
	return chief
}

// With returns the case with other factors; empty ones are the starter values.
func (c Case) With(f learn.Factors) Case {
	c.Factors = nil
	if !f.Empty() {
		kept := f.Clone()
		c.Factors = &kept
	}
	return c
}

// FirstEngine is the version that knew no ways out, counted the whole of the bidders' shared doubt as each one's own, narrowed nothing and
// let no day pass before the sale.
const FirstEngine = "walkline-engine/1"

// InForce returns a case that was frozen by a version of the engine with what was in force then: keys that it did not know mean what it
// did. What a case of a later version leaves out means what it means today.
func (c Case) InForce(engine string) Case {
	if engine != FirstEngine {
		return c
	}
	c.WaysOut = WaysOut{Plans: []string{Rebuild}}
	c.Market.OwnShare, c.Market.Narrowing = 1, false
	c.Resale.YearlyChange, c.Resale.Season = &prob.Three{}, nil
	return c
}

// Effect is what other factors would do to a lot's walk-away bid. Nil: do not bid.
type Effect struct {
	Before, After *money.Amount
	Steps         int64 // legal bids that lie between the two, either way; no bid counts as the one below the lowest
}

// Moved returns by how much the walk-away bid moves; no bid counts as nothing.
func (e Effect) Moved() money.Amount {
	value := func(a *money.Amount) money.Amount {
		if a == nil {
			return 0
		}
		return *a
	}
	return value(e.After) - value(e.Before)
}

// Compare returns what the proposed factors would do to a lot's walk-away bid, by valuing it with today's and with them.
// Limits and errors: those of [Value].
func (m *Memory) Compare(c Case, k Knowledge, now, proposed learn.Factors) (Effect, error) {
	before, err := m.Value(c.With(now), k)
	if err != nil {
		return Effect{}, err
	}
	after, err := m.Value(c.With(proposed), k)
	return Effect{before.WalkAway, after.WalkAway, stepsBetween(c.Buying.BidSteps, before.WalkAway, after.WalkAway)}, err
}

func stepsBetween(steps []invoice.Step, a, b *money.Amount) int64 {
	count := func(x *money.Amount) int64 {
		if x == nil {
			return 0
		}
		_, n := invoice.Stand(steps, *x)
		return n
	}
	return max(count(a)-count(b), count(b)-count(a))
}

// The verdicts of a replay.
const (
	StillBought = "still bought"       // the walk-away bid reaches the hammer price
	Refused     = "refused"            // it does not
	WouldBuy    = "would be bought"    // another bought it below our walk-away bid of today
	StillLost   = "still left"         // another paid more than we would
	NotReplayed = "cannot be replayed" // no case was kept, or the hammer price is not known
)

// Replayed is one past lot valued with today's factors.
type Replayed struct {
	Build   int64
	Name    string
	Then    *money.Amount // walk-away bid as foretold; nil: none
	Now     *money.Amount // with today's factors; nil: none
	Hammer  *money.Amount // nil: not known
	Profit  *money.Amount // as it came; nil: not known, or another's
	Verdict string
}

// ReplayScenarios is the most scenarios that a past lot is replayed with: thousands of them are waited for.
const ReplayScenarios = 4096

// Replay values a past lot's frozen case with today's factors. The case's own rules, comparables and seed stay, and so does what the
// engine of its day took for keys that it did not know: only what was learned since is new. For the fewer scenarios it may differ from a
// full valuation by a bid step.
// Limits: c has passed Check; a nil case cannot be replayed. Errors: those of [Value].
func (m *Memory) Replay(b learn.Build, c *Case, k Knowledge, f learn.Factors) (Replayed, error) {
	r := Replayed{Build: b.ID, Name: b.Name, Hammer: b.Hammer, Verdict: NotReplayed, Profit: hindsight.Made(b)}
	if b.Foretold != nil {
		r.Then = b.Foretold.WalkAway
	}
	if c == nil {
		return r, nil
	}
	engine := FirstEngine // which kept no forecast at first
	if b.Foretold != nil && b.Foretold.Engine != "" {
		engine = b.Foretold.Engine
	}
	quick := c.With(f).InForce(engine)
	quick.Run.Scenarios = min(quick.Run.Scenarios, ReplayScenarios)
	a, err := m.Value(quick, k)
	if err != nil {
		return r, err
	}
	r.Now = a.WalkAway
	if r.Hammer == nil {
		return r, nil
	}
	reached := r.Now != nil && *r.Now >= *r.Hammer
	switch {
	case b.Ending == learn.LostTo && reached:
		r.Verdict = WouldBuy
	case b.Ending == learn.LostTo:
		r.Verdict = StillLost
	case reached:
		r.Verdict = StillBought
	default:
		r.Verdict = Refused
	}
	return r, nil
}

// ReplaySum is what a replay comes to, in minor units of one currency.
type ReplaySum struct {
	Bought, Refused, WouldBuy, Left, NotReplayed int
	LossesRefused, GainsRefused                  int
	LossAvoided, GainMissed                      money.Amount // both positive
	Unknown                                      int          // refused buys whose profit is not known
	Selection                                    string
}

// Sum adds a replay up.
func Sum(all []Replayed) ReplaySum {
	s := ReplaySum{Selection: learn.Selection}
	for _, r := range all {
		switch r.Verdict {
		case StillBought:
			s.Bought++
		case WouldBuy:
			s.WouldBuy++
		case StillLost:
			s.Left++
		case NotReplayed:
			s.NotReplayed++
		case Refused:
			s.Refused++
			s.refuse(r.Profit)
		}
	}
	return s
}

// refuse counts the profit of a buy that would have been refused.
func (s *ReplaySum) refuse(profit *money.Amount) {
	switch {
	case profit == nil:
		s.Unknown++
	case *profit < 0:
		s.LossesRefused++
		s.LossAvoided -= *profit
	default:
		s.GainsRefused++
		s.GainMissed += *profit
	}
}
