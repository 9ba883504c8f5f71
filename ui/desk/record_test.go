package desk_test

import (
	"context"
	"errors"
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/build"
	"walkline/valuation/hidden"
	"walkline/valuation/invoice"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// lessons keeps decisions in memory.
type lessons struct {
	decided []desk.Decision
	frozen  map[int64]valuation.Case
	said    map[int64]learn.Prediction
}

func (b *book) Decisions(context.Context) ([]desk.Decision, error) { return b.decided, b.broken }

func (b *book) Decide(_ context.Context, d desk.Decision) error {
	if b.broken != nil {
		return b.broken
	}
	d.ID, d.On = int64(len(b.decided)+1), "2026-11-20"
	b.decided = append(b.decided, d)
	return nil
}

func (b *book) FrozenCases(context.Context) (map[int64]valuation.Case, []string, error) {
	return b.frozen, nil, b.broken
}

// workshop is a case with one line of body work, one risk and a guess, so that hours that run over move its bid.
func workshop() valuation.Case {
	c := valuation.Defaults()
	least := money.Amount(50000)
	c.Currency, c.ValuedOn, c.Run.Scenarios = "USD", "2026-11-20", 512
	c.Repair.UseCatalogue, c.Hidden.UseCatalogue = false, false
	c.Repair.Lines = []repair.Line{{ID: "a", Job: "front", Hours: map[string]prob.Three{"body": {Low: 20, Likely: 30, High: 50}}}}
	c.Hidden.Risks = []hidden.Risk{{ID: "h", Name: "mount", Chance: hidden.Beta{A: 2, B: 6}, Cost: prob.Certain(300)}}
	c.Resale.Guess = &prob.Three{Low: 9000, Likely: 10000, High: 11000}
	c.Labour.Rates = map[string]float64{"body": 40}
	c.Buying.BidSteps = []invoice.Step{{Step: 2500}}
	c.Rules = bid.Rules{MinProfit: &least}
	return c
}

// taught returns a desk with eight finished buys whose hours ran over by half, and one lot that is still to be bid for.
func taught(t *testing.T) (*desk.Desk, *book, desk.State) {
	t.Helper()
	ctx := t.Context()
	d, b := newDesk()
	b.frozen, b.said = map[int64]valuation.Case{}, map[int64]learn.Prediction{}
	for range 8 {
		c := workshop()
		id, err := b.Add(ctx, c)
		if err != nil {
			t.Fatal(err)
		}
		hammer, price := money.Amount(300000), money.Amount(1000000)
		if b.said[id], err = valuation.Foretell(c, d.Know, &hammer); err != nil {
			t.Fatal(err)
		}
		b.frozen[id] = c
		b.entries[b.place(id)].State = lot.Won
		b.came[id] = build.Build{Outcome: build.Sold, Hammer: &hammer, Dates: build.Dates{Bought: "2026-01-01", Sold: "2026-04-01"},
			Sale: build.Sale{Price: &price}, Hours: []build.Work{{Trade: "body", Line: "a", Hours: 47.5}}, Receipts: []build.Receipt{{Kind: "freight", Amount: 1}}}
	}
	if _, err := b.Add(ctx, workshop()); err != nil {
		t.Fatal(err)
	}
	return d, b, learned(t, d, d.Load(ctx))
}

func learned(t *testing.T, d *desk.Desk, s desk.State) desk.State {
	t.Helper()
	s = d.Go(t.Context(), s, desk.Record)
	r, err := d.Learn(t.Context(), s.Bought)
	if err != nil {
		t.Fatal(err)
	}
	return s.Learned(r, nil)
}

// body returns the proposal on the hours of body work.
func body(t *testing.T, s desk.State) learn.Proposal {
	t.Helper()
	for _, p := range s.Record.Proposals {
		if p.Key == "hours/body" {
			return p
		}
	}
	t.Fatalf("no proposal on body hours among %+v", s.Record.Proposals)
	return learn.Proposal{}
}

func TestPastBuysProposeFactorsWithWhatTheyWouldChange(t *testing.T) {
	d, _, s := taught(t)
	p := body(t, s)
	if s.Record.Buys != 8 || s.Record.Currency != "USD" || !(p.Proposed.At > 1.1 && p.Proposed.At < 1.55) || len(p.Evidence) != 8 {
		t.Fatalf("%d buys in %s, proposed %+v", s.Record.Buys, s.Record.Currency, p)
	}
	effects, err := d.Effects(t.Context(), *s.Record, p)
	if err != nil || len(effects) != 1 || effects[0].Before == nil || effects[0].Moved() >= 0 {
		t.Fatalf("%+v %v", effects, err)
	}
	if s = s.Shown(p.Key, effects, nil); len(s.Record.Effects[p.Key]) != 1 {
		t.Error("the effects were lost")
	}
}

func TestALotFrozenBeforeFiguresWereKeptIsForetoldAnew(t *testing.T) {
	d, b, s := taught(t)
	want := body(t, s)
	b.said = nil
	s = learned(t, d, s)
	if got := body(t, s); got.Proposed.At != want.Proposed.At || s.Record.Judged.Buys != 8 {
		t.Errorf("%+v, want %+v, %d buys", got.Proposed, want.Proposed, s.Record.Judged.Buys)
	}
	b.frozen = nil
	if s = learned(t, d, s); s.Record.Judged.Buys != 0 || len(s.Record.Judged.LeftOut) == 0 {
		t.Errorf("with nothing frozen %d buys are judged: %q", s.Record.Judged.Buys, s.Record.Judged.LeftOut)
	}
}

func TestAcceptedFactorsReachTheNextBidAndNoFrozenPrediction(t *testing.T) {
	d, b, s := taught(t)
	ctx := t.Context()
	s = d.OpenLot(ctx, s, 9)
	revision, frozen := s.Open.Revision, b.frozen[1]
	effects, err := d.Effects(ctx, *s.Record, body(t, s))
	if err != nil {
		t.Fatal(err)
	}
	if s = d.Accept(ctx, s, "hours/body"); s.Trouble != "" || !s.Record.Stale || s.Open.Case.Factors == nil || s.Open.Revision <= revision || s.Open.Fresh {
		t.Fatalf("%q %+v", s.Trouble, s.Open)
	}
	v, err := d.Value(s.Open.Case)
	if err != nil || *v.Answer.WalkAway != *effects[0].After {
		t.Fatalf("the bid is %v, foretold was %v, %v", v.Answer.WalkAway, effects[0].After, err)
	}
	if b.frozen[1].Factors != nil || frozen.Factors != nil {
		t.Error("a frozen case was changed")
	}
	if s = d.OpenLot(ctx, s, 9); s.Open.Case.Factors == nil {
		t.Error("a lot that is opened later has no factors")
	}
	s = d.Edit(ctx, s, "make", func(c *valuation.Case) { c.Lot.Make = "x" })
	if s = d.Undo(ctx, s); s.Open.Case.Factors == nil {
		t.Error("undo took the factors off")
	}
	s = learned(t, d, s)
	if len(s.Record.History) != 1 || s.Record.History[0].What != desk.Accepted || !strings.Contains(s.Record.History[0].Words, "Hours, body: 1.00 to ") {
		t.Fatalf("%+v", s.Record.History)
	}
	if p := body(t, s); p.Now.At != p.Proposed.At {
		t.Errorf("learned twice: now %v, proposed %v", p.Now.At, p.Proposed.At)
	}
	s = d.Restore(ctx, s, 1)
	if got, want := b.decided[1].Words, "All factors as they were before Hours, body was accepted on 2026-11-20."; got != want {
		t.Errorf("%q, not %q", got, want)
	}
	if s = d.OpenLot(ctx, s, 9); s.Open.Case.Factors != nil {
		t.Errorf("restored, the lot has %+v", s.Open.Case.Factors)
	}
}

func TestARefusedProposalIsRememberedAndChangesNothing(t *testing.T) {
	d, b, s := taught(t)
	p := body(t, s)
	if s.Record.Seen(p) != "" {
		t.Error("decided before anyone did")
	}
	if s = d.Refuse(t.Context(), s, p.Key); s.Trouble != "" || len(b.decided) != 1 {
		t.Fatal(s.Trouble, b.decided)
	}
	s = learned(t, d, s)
	if got := s.Record.Seen(body(t, s)); got != "refused on 2026-11-20" || !s.Record.Now.Empty() {
		t.Errorf("%q %+v", got, s.Record.Now)
	}
	b.broken = errors.New("full")
	if s = d.Accept(t.Context(), s, p.Key); !strings.Contains(s.Trouble, "full") {
		t.Errorf("%q", s.Trouble)
	}
}

func TestReplayTriesTodaysFactorsOnPastLots(t *testing.T) {
	d, b, s := taught(t)
	lost, _ := b.Add(t.Context(), workshop())
	cheap := money.Amount(100000)
	b.entries[b.place(lost)].State, b.came[lost], b.frozen[lost] = lot.Lost, build.Build{Hammer: &cheap}, workshop()
	reports := 0
	s = d.Go(t.Context(), s, desk.Record)
	r, err := d.Again(t.Context(), s.Bought, s.Record.Now, "USD", func(float64, string) { reports++ })
	if err != nil || len(r.Lots) != 9 || reports != 9 || r.Sum.Bought+r.Sum.Refused != 8 || r.Sum.WouldBuy != 1 {
		t.Fatalf("%+v %v, %d reports", r.Sum, err, reports)
	}
	if s = s.Replayed(r, nil); s.Record.Replay == nil || s.Record.Replay.Sum.Selection == "" {
		t.Error("the replay was lost")
	}
	gone, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := d.Again(gone, s.Bought, s.Record.Now, "USD", func(float64, string) {}); err == nil {
		t.Error("a cancelled replay went on")
	}
}
