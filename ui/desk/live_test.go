package desk_test

import (
	"errors"
	"strings"
	"testing"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// atSale returns a user with lots of one sale, in the order in which they were entered, and one of another; the first is open on the
// Live page.
func atSale(t *testing.T, numbers ...string) *user {
	t.Helper()
	u := newUser(t)
	var cases []valuation.Case
	for _, n := range numbers {
		c := sound(n)
		c.Resale.Guess = nil // nothing to foretell
		cases = append(cases, c)
	}
	elsewhere := sound("1")
	elsewhere.Lot.Sale = "Elsewhere"
	u.well(desk.OpenLot(u.add(append(cases, elsewhere)...)[0]), desk.Go(desk.Live))
	return u
}

func TestCallingBidsNothing(t *testing.T) {
	u := atSale(t, "27")
	before := u.lot(u.s.Open.ID)
	for _, at := range []money.Amount{100, 250000, 0, -5} {
		if s := u.well(desk.Call(at)); s.Open.Current != max(at, 0) || s.Place != desk.Live {
			t.Errorf("called %d: %+v", at, s.Open)
		}
	}
	if s := u.well(desk.AskOdds(700)); s.Open.Asked != 700 || s.Open.Current != 0 {
		t.Errorf("asked: %+v", s.Open)
	}
	s := u.well(desk.RecordResult(lot.Won))
	if !strings.Contains(s.Notice, "At what price?") || s.Reach != (book.Reach{}) {
		t.Errorf("recorded without a price: %q", s.Notice)
	}
	if l := u.lot(s.Open.ID); l.Build.Hammer != nil || l.State != before.State || l.Revision != before.Revision || u.frozen() != 0 {
		t.Error("a price that was shown was kept")
	}
}

// A result is told from the list too, with no lot open, and undo there takes it back.
func TestAResultIsToldFromTheList(t *testing.T) {
	u := atSale(t, "27")
	id := u.s.Open.ID
	s := u.well(desk.Go(desk.Board), desk.TellResult(id, lot.Lost, 140000))
	if l := u.lot(id); l.State != lot.Lost || *l.Build.Hammer != 140000 ||
		!strings.HasPrefix(s.Notice, "Recorded: lot 27 lost at USD 1,400.") {
		t.Fatalf("%q, state %s, came %+v", s.Notice, l.State, l.Build)
	}
	s = u.well(desk.Undo())
	if l := u.lot(id); l.State != lot.ToLookAt || l.Build.Hammer != nil || s.Notice != "Undone: lot 27 lost at USD 1,400." {
		t.Errorf("taken back: %q, state %s", s.Notice, l.State)
	}
	s = u.well(desk.Redo(), desk.TellResult(id, lot.Won, 150000))
	if l := u.lot(id); l.State != lot.Won || *l.Build.Hammer != 150000 || s.Trouble != "" {
		t.Errorf("told again: %q, state %s", s.Trouble, l.State)
	}
}

func TestALostLotIsRecordedAndTakenBack(t *testing.T) {
	u := atSale(t, "27")
	id := u.s.Open.ID
	s := u.well(desk.Call(140000), desk.RecordResult(lot.Lost))
	if s.Place != desk.Live || s.Open.State != lot.Lost || *u.lot(id).Build.Hammer != 140000 ||
		!strings.HasPrefix(s.Notice, "Recorded: lot 27 lost at USD 1,400. Ctrl+Z") {
		t.Fatalf("%q, state %s, came %+v", s.Notice, s.Open.State, u.lot(id).Build)
	}
	if s.Open.Went == nil || *s.Open.Went != 140000 || s.Reach != (book.Reach{Undo: "lot 27 lost at USD 1,400"}) {
		t.Errorf("went for %v, reach %+v", s.Open.Went, s.Reach)
	}
	s = u.well(desk.Undo())
	if s.Open.State != lot.ToLookAt || u.lot(id).Build.Hammer != nil || s.Open.Current != 140000 ||
		s.Notice != "Undone: lot 27 lost at USD 1,400." || s.Place != desk.Live {
		t.Errorf("taken back: %q, state %s, current %d", s.Notice, s.Open.State, s.Open.Current)
	}
	if s = u.well(desk.Undo()); !strings.HasPrefix(s.Notice, "There is nothing to undo or redo") || s.Open.State != lot.ToLookAt {
		t.Errorf("taken back twice: %q", s.Notice)
	}
	if s = u.well(desk.Redo()); s.Open.State != lot.Lost || *u.lot(id).Build.Hammer != 140000 {
		t.Errorf("recorded again: %q, state %s", s.Notice, s.Open.State)
	}
}

func TestAWonLotBeginsItsBuild(t *testing.T) {
	u := atSale(t, "27")
	id := u.s.Open.ID
	s := u.well(desk.Call(132500), desk.RecordResult(lot.Won))
	if b := u.lot(id).Build; s.Open.State != lot.Won || *b.Hammer != 132500 || b.Outcome != build.Open ||
		!strings.Contains(s.Notice, "No prediction was frozen") {
		t.Errorf("%q, came %+v", s.Notice, b)
	}
	s = u.well(desk.Undo())
	if b := u.lot(id).Build; s.Open.State != lot.ToLookAt || b.Hammer != nil || b.Outcome != "" || len(b.Charges) > 0 ||
		b.Dates.Bought != "" {
		t.Errorf("taken back: %q, came %+v", s.Notice, b)
	}
}

// A slip is often seen when the next lot is already up: undo goes back to the lot.
// A lot whose price nobody heard is lost all the same, and one that is withdrawn is passed; each is one step, and undo takes back just
// that.
func TestALotIsLostWithoutItsPriceOrWithdrawn(t *testing.T) {
	for state, said := range map[lot.State]string{lot.Lost: "Recorded: lot 27 lost. Ctrl+Z takes it back. If you hear its price",
		lot.Passed: "Recorded: lot 27 passed. Ctrl+Z"} {
		u := atSale(t, "27", "28")
		if state == lot.Passed {
			u.well(desk.Call(250000))
		}
		s := u.well(desk.RecordResult(state))
		if l := u.lot(s.Open.ID); l.State != state || l.Build.Hammer != nil || !strings.HasPrefix(s.Notice, said) {
			t.Errorf("%s at %v: %q", l.State, l.Build.Hammer, s.Notice)
		}
		s = u.well(desk.NextLot(1), desk.Undo())
		if l := u.lot(s.Open.ID); l.Case.Lot.Number != "27" || l.State != lot.ToLookAt {
			t.Errorf("undone: lot %s %s", l.Case.Lot.Number, l.State)
		}
		if s = u.well(desk.Redo()); u.lot(s.Open.ID).State != state {
			t.Errorf("done again: %s", u.lot(s.Open.ID).State)
		}
	}
}

// The lots between one sale and the next marked lot are named, with why they are not turned to; a sale without a name leaves no hole.
func TestTurningSaysWhatItPassesOver(t *testing.T) {
	u := newUser(t)
	var cases []valuation.Case
	for i, number := range []string{"205", "206", "207", "208"} {
		c := sound(number)
		c.Lot.Sale, c.Lot.SaleDate = "", []lot.Date{"2026-12-01", "2026-12-02"}[i/2]
		cases = append(cases, c)
	}
	ids := u.add(cases...)
	u.well(desk.MarkLots(lot.Bid, ids[0], ids[3]), desk.OpenLot(ids[1]), desk.Go(desk.Live))
	last := "That was the last lot of this sale. This one is sold on " + desk.DayShown("2026-12-02") + ". Passed over, not marked bid: 207."
	if s := u.well(desk.NextLot(1)); s.Open.ID != ids[3] || s.Notice != last {
		t.Errorf("after 206 comes %s: %q", s.Open.Case.Lot.Number, s.Notice)
	}
	u.well(desk.MarkLots(lot.Passed, ids[1]), desk.NextLot(-1))
	if s := u.well(desk.NextLot(-1)); s.Open.ID != ids[0] || !strings.HasSuffix(s.Notice, " Passed over, marked passed: 206.") {
		t.Errorf("before 207 comes %s: %q", s.Open.Case.Lot.Number, s.Notice)
	}
}

// A number leads to the lot of this sale, else to the only one of that number; nothing is turned to otherwise, with the reason.
func TestALotIsCalledByItsNumber(t *testing.T) {
	u := atSale(t, "27", "33B")
	for number, want := range map[string]string{" 33b ": "33B", "1": "1", "99": "27"} {
		u.well(desk.OpenLot(u.s.Entries[0].ID), desk.Go(desk.Live), desk.CallLot("27"))
		if s := u.well(desk.CallLot(number)); s.Open.Case.Lot.Number != want || s.Place != desk.Live ||
			number == "99" && s.Notice != "There is no lot 99 on the Board." ||
			number == "1" && s.Notice != "This one is sold at Elsewhere on "+desk.DayShown("2026-11-01")+"." {
			t.Errorf("%q leads to %s: %q", number, s.Open.Case.Lot.Number, s.Notice)
		}
	}
	other := sound("1")
	other.Lot.Sale = "Third yard"
	u.add(other)
	u.well(desk.Go(desk.Board), desk.OpenLot(u.s.Entries[0].ID), desk.Go(desk.Live), desk.CallLot("27"))
	if s := u.well(desk.CallLot("1")); !strings.Contains(s.Notice, "2 other sales have one") {
		t.Errorf("two of a number: %q", s.Notice)
	}
}

func TestUndoGoesBackToTheLot(t *testing.T) {
	u := atSale(t, "27", "33")
	first := u.s.Open.ID
	s := u.well(desk.Call(140000), desk.RecordResult(lot.Won), desk.NextLot(1))
	if s.Open.ID == first || s.Open.Current != 0 || s.Place != desk.Live {
		t.Fatalf("next lot: %+v", s.Open)
	}
	if s = u.well(desk.Undo()); s.Open.ID != first || s.Open.State != lot.ToLookAt || s.Place != desk.Live ||
		u.lot(first).Build.Hammer != nil {
		t.Errorf("taken back: %+v", s.Open)
	}
}

func TestLotsOfTheSaleComeInTheirOrder(t *testing.T) {
	u := atSale(t, "9", "110", "33B", "33A", "x")
	var seen []string
	for range 6 {
		seen = append(seen, u.s.Open.Case.Lot.Number)
		u.well(desk.NextLot(1))
	}
	if got := strings.Join(seen, " "); got != "9 33A 33B 110 x x" || u.s.Notice != "That was the last lot of this sale." {
		t.Errorf("%s, then %q", got, u.s.Notice)
	}
	if s := u.well(desk.NextLot(-9)); s.Notice != "That was the first lot of this sale." || s.Open.Case.Lot.Number != "x" {
		t.Errorf("%q at %s", s.Notice, s.Open.Case.Lot.Number)
	}
}

func TestWhatCannotBeRecordedIsSaid(t *testing.T) {
	u := atSale(t, "27")
	u.well(desk.Call(140000))
	u.kept.broken = errors.New("the disk is full")
	if s := u.do(desk.RecordResult(lot.Lost)); !strings.Contains(s.Trouble, "the disk is full") || s.Open.State != lot.ToLookAt {
		t.Errorf("%q", s.Trouble)
	}
	u.kept.broken = nil
	u.well(desk.RecordResult(lot.Lost))
	u.kept.broken = errors.New("the disk is full")
	if s := u.do(desk.Undo()); !strings.Contains(s.Trouble, "the disk is full") || s.Open.State != lot.Lost {
		t.Errorf("%q", s.Trouble)
	}
	u.kept.broken, u.s = nil, desk.State{}
	for _, a := range []desk.Action{desk.Call(1), desk.AskOdds(1), desk.NextLot(1), desk.RecordResult(lot.Won)} {
		if s := u.well(a); s.Open != nil {
			t.Errorf("with no lot open: %+v", s)
		}
	}
}

// With room made after a write was refused, the whole of the result is kept the second time, and what is said is so.
func TestAResultThatWasRefusedIsRecordedWholeTheNextTime(t *testing.T) {
	u := newUser(t)
	id := u.add(sound("27"))[0]
	u.well(desk.OpenLot(id), desk.Go(desk.Live), desk.Call(125000))
	before := u.lot(id)
	u.kept.broken = errors.New("the disk is full")
	if s := u.do(desk.RecordResult(lot.Won)); !strings.Contains(s.Trouble, "the disk is full") || u.lot(id).State != before.State ||
		u.lot(id).Build.Hammer != nil || u.frozen() != 0 {
		t.Errorf("refused: %q, kept %+v", s.Trouble, u.lot(id))
	}
	u.kept.broken = nil
	s := u.well(desk.RecordResult(lot.Won))
	if l := u.lot(id); l.State != lot.Won || l.Build.Hammer == nil || *l.Build.Hammer != 125000 || l.Build.Outcome != build.Open ||
		len(l.Build.Charges) != 1 || u.frozen() != 1 {
		t.Errorf("%q: kept %s %+v, %d frozen", s.Notice, l.State, l.Build, u.frozen())
	}
}

// What a lot went for moves the odds of others of its kind, and never its own.
func TestALotsOwnResultDoesNotTeachItsOdds(t *testing.T) {
	u := newUser(t)
	one, other := sound("27"), sound("28")
	ids := u.add(one, other)
	odds := func(id int64) float64 {
		t.Helper()
		s := u.well(desk.OpenLot(id))
		v, err := u.ValueLot(t.Context(), id, s.Open.Case)
		if err != nil || v.Answer.WinChance == nil {
			t.Fatalf("%v, %v", v.Answer.WinChance, err)
		}
		return *v.Answer.WinChance
	}
	before, beside := odds(ids[0]), odds(ids[1])
	u.well(desk.TellResult(ids[0], lot.Won, 140000))
	if after := odds(ids[0]); after != before {
		t.Errorf("its own result takes its odds from %g to %g", before, after)
	}
	if after := odds(ids[1]); after == beside {
		t.Errorf("a result of its kind leaves the odds of another at %g", after)
	}
}

// A lot that was sold has the same odds on a list as on its worksheet.
func TestARatingLeavesALotsOwnResultOut(t *testing.T) {
	u := newUser(t)
	id := u.add(sound("27"))[0]
	u.well(desk.TellResult(id, lot.Lost, 140000), desk.OpenLot(id))
	v, err := u.ValueLot(t.Context(), id, u.s.Open.Case)
	if err != nil {
		t.Fatal(err)
	}
	r, err := u.NewRating(t.Context(), u.s.Factors)
	if err != nil {
		t.Fatal(err)
	}
	one, _, err := r.Rate(t.Context(), id)
	if err != nil || one.Answer.WinChance == nil || *one.Answer.WinChance != *v.Answer.WinChance {
		t.Errorf("rated %+v, %v; on the worksheet the odds are %v", one.Answer, err, *v.Answer.WinChance)
	}
}
