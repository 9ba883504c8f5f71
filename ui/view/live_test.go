package view_test

import (
	"slices"
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

func called(o desk.Open, at money.Amount) desk.State {
	o.Current = at
	return desk.State{Place: desk.Live, Open: &o}
}

// The lot's steps are 25 each, so the steps left are the distance over 25.
func TestLiveCountsTheStepsThatAreLeft(t *testing.T) {
	o := weighed(t)
	walk := *o.Valued.Answer.WalkAway
	for _, c := range []struct {
		at    money.Amount
		steps string
		stop  bool
	}{{walk - 3*2500, "3 steps left", false}, {walk - 2500, "1 step left", false}, {walk - 100, "1 step left", false},
		{walk, "no step left", false},
		{walk + 1, "STOP", true}, {walk + 2500, "STOP", true}, {walk * 10, "STOP", true}} {
		if v := view.NewLive(called(o, c.at)); v.Steps != c.steps || v.Stop != c.stop {
			t.Errorf("at %d of %d: %q, stop %v", c.at, walk, v.Steps, v.Stop)
		}
	}
	if v := view.NewLive(called(o, 0)); v.Current != "none yet" || v.At != "At a bid of USD 25" || v.Stop || v.Pays != "" {
		t.Errorf("before the bidding: %+v", v)
	}
}

// Past the limit the page says what would be lost, under that word, and which rules break.
func TestLiveIsHonestPastTheLimit(t *testing.T) {
	o := weighed(t)
	walk := *o.Valued.Answer.WalkAway
	v := view.NewLive(called(o, walk+2500))
	if !strings.HasPrefix(v.Binds, "Breaks: ") || v.Odds[0].Name != "Expected profit" {
		t.Errorf("a step past: %+v", v)
	}
	v = view.NewLive(called(o, 4*walk))
	if v.Odds[0].Name != "Expected LOSS" || strings.Contains(v.Odds[0].Figure, "-") || !v.Odds[0].Bad || v.Odds[1].Figure != "100 %" ||
		v.Odds[2].Name != "Worst tenth loses" {
		t.Errorf("far past: %+v", v.Odds)
	}
	if facts := v.Facts(); !slices.Contains(facts, "STOP") || !slices.Contains(facts, "Expected LOSS: "+v.Odds[0].Figure) {
		t.Errorf("in words: %q", facts)
	}
}

// No figure is shown that is not of the lot as it stands.
func TestLiveShowsNoOldFigure(t *testing.T) {
	o := weighed(t)
	stale, broken, problem, none := o, o, o, o
	stale.Fresh = false
	broken.Fresh, broken.Faults = false, []valuation.Fault{{Key: "resale"}}
	problem.Fresh, problem.Problem = false, "no price"
	none.Valued, none.Fresh = nil, false
	for name, c := range map[string]struct {
		o    desk.Open
		says string
	}{"edited": {stale, "valued anew"}, "faults": {broken, "Resale: import"}, "problem": {problem, "No price"},
		"not valued": {none, "Being valued"}} {
		v := view.NewLive(called(c.o, 100000))
		if v.Limit != "not known" || v.Steps != "" || v.Stop || !strings.Contains(v.Binds, c.says) || v.Current != "1,000" || v.At != "" {
			t.Errorf("%s: %+v", name, v)
		}
		for _, odd := range v.Odds {
			if odd.Figure != view.Dash {
				t.Errorf("%s: %s reads %s", name, odd.Name, odd.Figure)
			}
		}
	}
}

func TestLiveRefusesFromTheFirstBid(t *testing.T) {
	o := weighed(t)
	v := *o.Valued
	v.Answer.WalkAway, v.Answer.Decision, v.Answer.Reasons = nil, "do_not_bid", []string{"The title reads \"Parts Only\"."}
	o.Valued = &v
	for _, at := range []money.Amount{0, 2500} {
		if l := view.NewLive(called(o, at)); !l.Stop || l.Steps != "STOP" || l.Limit != "do not bid" || !strings.Contains(l.Binds, "Parts Only") {
			t.Errorf("at %d: %+v", at, l)
		}
	}
}

func TestLiveSaysWhatTheSaleTakes(t *testing.T) {
	o := weighed(t)
	if v := view.NewLive(called(o, 101000)); !v.Doubt || v.Pays != "Not a bid of this sale: it takes 1,000 or 1,025." {
		t.Errorf("%q", v.Pays)
	}
	if v := view.NewLive(called(o, 100000)); v.Doubt || !strings.HasPrefix(v.Pays, "costs USD 1,0") {
		t.Errorf("%q", v.Pays)
	}
	o.Case.Buying.BidSteps = nil
	if view.Steps(o) != nil {
		t.Error("steps of nothing")
	}
	o.State = lot.Passed
	if v := view.NewLive(called(o, 0)); v.State != "marked: passed" || v.Steps != "PASSED" {
		t.Errorf("%q", v.State)
	}
	o.State, o.Went = lot.Lost, usd(1400)
	if v := view.NewLive(called(o, 0)); v.State != "marked: lost at USD 1,400" || v.Steps != "LOST" || v.Stop {
		t.Errorf("%q", v.State)
	}
	if v := view.NewLive(desk.State{}); v.Lot != "" {
		t.Errorf("%+v", v)
	}
}

// A lot that nobody has looked at says so before anything else, with a bid and without one; a lot that was looked at does not.
func TestLiveSaysThatNobodyHasLooked(t *testing.T) {
	const first = "FIRST GUESS: nobody has looked at this lot."
	o := weighed(t)
	said := func(walk *money.Amount, guessed bool) string {
		v := *o.Valued
		v.Answer.WalkAway = walk
		v.Answer.FirstGuess = nil
		if guessed {
			v.Answer.FirstGuess = &valuation.FirstGuess{}
		}
		over := o
		over.Valued = &v
		return view.NewLive(called(over, 0)).Binds
	}
	for _, walk := range []*money.Amount{o.Valued.Answer.WalkAway, nil} {
		if got := said(walk, true); !strings.HasPrefix(got, first) || len(got) < len(first)+40 {
			t.Errorf("bid %v, not looked at: %q", walk, got)
		}
		if got := said(walk, false); strings.Contains(got, "FIRST GUESS") {
			t.Errorf("bid %v, looked at: %q", walk, got)
		}
	}
}
