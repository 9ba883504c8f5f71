package desk_test

import (
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/prob"
)

// valued has the open lot valued as the window does.
func (u *user) valued() desk.State {
	u.t.Helper()
	o := u.s.Open
	v, err := u.ValueLot(u.t.Context(), o.ID, o.Posed())
	if err != nil {
		u.t.Fatal(err)
	}
	u.s = u.Arrived(u.t.Context(), u.s, o.ID, o.Revision, v, nil)
	if u.s.Trouble != "" || !u.s.Open.Fresh {
		u.t.Fatal(u.s.Trouble)
	}
	return u.s
}

// guess returns the edit of what the open lot should sell for.
func guess(likely float64) desk.Action {
	return desk.EditLot("my guess", func(c *valuation.Case) {
		c.Resale.Guess = &prob.Three{Low: likely - 1000, Likely: likely, High: likely + 1000}
	})
}

func TestAListingIsOneStep(t *testing.T) {
	u := newUser(t)
	id := u.newLot()
	blank := u.lot(id).Case
	s := u.well(desk.FillIn("2017 Ostrane Pell S, 61,200 miles, salvage title, front end damage, no keys, chrome hubcaps"))
	if s.Place != desk.Listing || s.Open.Listed == nil || len(s.Open.Listed.Left) != 1 || s.Open.Listed.Left[0] != "chrome hubcaps" {
		t.Fatalf("on %q, listed %+v", s.Place, s.Open.Listed)
	}
	if l := u.lot(id).Case.Lot; l.Model != "Pell" || l.Title.Document != "salvage" || l.Keys == nil || *l.Keys {
		t.Errorf("kept %+v", l)
	}
	if needs := s.Open.Case.Needs(); len(needs) != 1 || needs[0].Key != "resale" {
		t.Errorf("needs %+v", needs)
	}
	if s = u.well(desk.Undo()); s.Open.Listed != nil || u.lot(id).Case.Lot.Model != blank.Lot.Model || len(u.lot(id).Case.Damage) > 0 {
		t.Errorf("one undo leaves %+v", u.lot(id).Case.Lot)
	}
	if s = u.well(desk.Redo()); s.Open.Listed == nil || s.Open.Listed.Left[0] != "chrome hubcaps" {
		t.Errorf("redo does not say what was left: %+v", s.Open.Listed)
	}
	if s = u.well(guess(9000), desk.Undo()); s.Open.Listed == nil {
		t.Error("the undo of another step takes away what the listing gave")
	}
	if s = u.do(desk.FillIn(strings.Repeat("a", 9000))); s.Trouble == "" {
		t.Error("a book is taken for a listing")
	}
}

func TestWhatIsSoughtIsGoneTo(t *testing.T) {
	u := newUser(t)
	u.newLot()
	for key, place := range map[string]desk.Place{"lot.title.document": desk.Listing, "damage": desk.Listing, "resale": desk.Listing,
		"rules": desk.Worksheet, "buying.bid_steps": desk.Worksheet} {
		before := u.s.Seeks
		if s := u.well(desk.Go(desk.Why), desk.Seek(key)); s.Place != place || s.Sought != key || s.Seeks != before+1 {
			t.Errorf("%s leads to %q", key, s.Place)
		}
	}
}

func TestTheBidSaysWhatMovedIt(t *testing.T) {
	u := newUser(t)
	id := u.add(sound("14"))[0]
	u.well(desk.OpenLot(id))
	if s := u.valued(); s.Open.Moved != nil {
		t.Errorf("a lot that is opened for the first time: %+v", s.Open.Moved)
	}
	was := *u.s.Open.Valued.Answer.WalkAway
	u.well(rename("make", "Tarn"), guess(8000))
	m := u.valued().Open.Moved
	if m == nil || *m.Was != was || *m.Is >= was || m.By != "my guess, and 1 more" || m.Since {
		t.Fatalf("moved %+v", m)
	}
	u.well(desk.Undo())
	if m = u.valued().Open.Moved; m == nil || *m.Is != was || m.By != "Undone: my guess" {
		t.Errorf("after undo: %+v", m)
	}
	u.start()
	u.well(desk.OpenLot(id))
	if m = u.valued().Open.Moved; m != nil {
		t.Errorf("opened again as it was: %+v", m)
	}
}

// TestSinceLastTime: what changed while the lot was closed is said when it is opened again, by what it was.
func TestSinceLastTime(t *testing.T) {
	u := newUser(t)
	u.Know.Jobs.Currency, u.Know.Risks.Currency = "USD", "USD"
	u.start()
	c := sound("14")
	id := u.add(c)[0]
	u.well(desk.OpenLot(id))
	was := *u.valued().Open.Valued.Answer.WalkAway
	changed := u.lot(id)
	changed.Case.Resale.Guess = &prob.Three{Low: 6000, Likely: 7000, High: 8000}
	u.change(changed)
	u.start()
	u.well(desk.OpenLot(id))
	if m := u.valued().Open.Moved; m == nil || !m.Since || *m.Was != was || *m.Is >= was || m.By != "the lot" {
		t.Errorf("since last time: %+v", m)
	}
}

// TestATryKeepsNothing: without a rule the bid is what the engine gives for a case without it; nothing is kept, and leaving ends it.
func TestATryKeepsNothing(t *testing.T) {
	u := newUser(t)
	c := sound("14")
	chance := .02
	c.Rules.MaxLossChance = &chance
	id := u.add(c)[0]
	u.well(desk.OpenLot(id))
	a := u.valued().Open.Valued.Answer
	limits, err := u.LimitsOf(t.Context(), id, u.s.Open.Case, a)
	if err != nil || len(limits.Without) != 1 {
		t.Fatal(limits, err)
	}
	kept := u.lot(id)
	s := u.well(desk.Try(a.BindingRule, true))
	if s = u.valued(); *s.Open.Valued.Answer.WalkAway <= *a.WalkAway ||
		*s.Open.Valued.Answer.WalkAway != *limits.Without[a.BindingRule] || s.Open.Moved != nil {
		t.Errorf("a try gives %v, foretold %v", s.Open.Valued.Answer.WalkAway, limits.Without)
	}
	if other := map[string]string{bid.MinProfit: bid.MaxLossChance, bid.MaxLossChance: bid.MinProfit}[a.BindingRule]; len(
		u.do(desk.Try(other, true)).Open.Tried) != 1 {
		t.Error("the last limit that a high bid breaks can be left out")
	}
	entry := u.Do(t.Context(), u.s, desk.Go(desk.Board)).Entries[0]
	if now := u.lot(id); now.Revision != kept.Revision || *entry.Answer.WalkAway != *a.WalkAway {
		t.Errorf("a try was kept: %v", entry.Answer)
	}
	if s = u.well(desk.Go(desk.Live)); len(s.Open.Tried) > 0 || s.Open.Fresh {
		t.Error("leaving the worksheet does not end the try")
	}
}
