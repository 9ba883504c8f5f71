package desk_test

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/sale"
)

// planning returns a user before the plan of two lots, of which cash and bays are enough for one.
func planning(t *testing.T) (*user, []int64) {
	t.Helper()
	u := newUser(t)
	var cases []valuation.Case
	for _, number := range []string{"14", "27"} {
		c := sound(number)
		c.Market.HammerGuess = &prob.Three{Low: 3000, Likely: 5000, High: 7000}
		cases = append(cases, c)
	}
	ids := u.add(cases...)
	u.well(desk.Go(desk.SalePlan), desk.EditDay("cash", func(d *desk.SaleDay) { d.Cash = 1_000_000 }),
		desk.EditDay("hours", func(d *desk.SaleDay) { d.Hours = 500 }), desk.EditDay("bays", func(d *desk.SaleDay) { d.Bays = 1 }))
	return u, ids
}

// plan works the plan out as the window does.
func (u *user) plan() *desk.DayPlan {
	u.t.Helper()
	of, due := u.s.PlanDue()
	if !due {
		u.t.Fatal("no plan is due")
	}
	p, err := u.PlanDay(u.t.Context(), u.s)
	if u.s = u.s.DayPlanned(of, p, err); u.s.Planned() == nil {
		u.t.Fatalf("no plan: %v", u.s.Day.Problem)
	}
	return u.s.Planned()
}

func TestTheDayIsPlannedBySolverOfTheTerminal(t *testing.T) {
	u, ids := planning(t)
	p := u.plan()
	if len(p.Lots) != 2 || p.Lots[0].ID != ids[0] || p.Sale.Bays != 1 || len(p.Out) > 0 {
		t.Fatalf("%+v", p)
	}
	if want := sale.New(p.Sale).Answer(); want.Expected != p.Answer.Expected || !(p.Answer.Bay > 0) {
		t.Errorf("brings %v, the solver says %v; a bay %v", p.Answer.Expected, want.Expected, p.Answer.Bay)
	}
	first, in := p.TodaysBid(ids[0])
	if walk := p.Sale.Lots[0].WalkAway; !in || first.Bid == nil || walk == nil || *first.Bid >= *walk {
		t.Errorf("with one bay for two lots the first is bid %v, walk-away %v", first.Bid, walk)
	}
	if last, _ := p.TodaysBid(ids[1]); last.Bid == nil || *last.Bid != *p.Sale.Lots[1].WalkAway {
		t.Errorf("the last lot is bid %v, walk-away %v", last.Bid, p.Sale.Lots[1].WalkAway)
	}
}

// With enough of everything the plan bids the walk-away bid, and what it expects of a lot is what the Board says: one figure, whether or
// not anybody has looked, and with capital that each price ties up.
func TestThePlanExpectsWhatTheBoardSays(t *testing.T) {
	u, ids := planning(t)
	for i, id := range ids {
		l := u.lot(id)
		l.Case.Time.CapitalRate, l.Case.Time.DaysToSell = .12, prob.Three{Low: 30, Likely: 90, High: 200}
		if i == 1 {
			l.Case.Repair.UseCatalogue, l.Case.Hidden.UseCatalogue, l.Case.Findings = true, true, nil
			l.Case.Lot.Loss, l.Case.Lot.ModelYear = []string{"collision"}, 2019
			l.Case.Resale.Guess = &prob.Three{Low: 24000, Likely: 26000, High: 28000}
		}
		u.change(l)
	}
	u.well(desk.Go(desk.Board))
	u.guessed(ids)
	board := answers(u.s)
	u.well(desk.Go(desk.SalePlan), desk.EditDay("much", func(d *desk.SaleDay) { d.Cash, d.Bays, d.Guesses = 100_000_000, 9, true }))
	p := u.plan()
	if len(p.Lots) != len(ids) {
		t.Fatalf("left out: %q", p.Out)
	}
	for i, id := range ids {
		said, b := board[id], p.Answer.Lots[i]
		if b.Bid == nil || *b.Bid != *said.WalkAway || math.Abs(b.Expected-*said.ExpectedGain) > .02 ||
			math.Abs(b.WinChance-*said.WinChance) > 1e-9 {
			t.Errorf("lot %d: the plan bids %v and expects %v, the Board says %v and %v", id, *b.Bid, b.Expected, *said.WalkAway, *said.ExpectedGain)
		}
	}
	if !board[ids[1]].FirstGuess || board[ids[0]].FirstGuess {
		t.Error("one of them is no first guess")
	}
}

func TestResultsMoveThePlanAtOnce(t *testing.T) {
	u, ids := planning(t)
	before := u.plan()
	u.well(desk.OpenLot(ids[0]), desk.Go(desk.Live), desk.Call(300000), desk.RecordResult(lot.Lost))
	if u.s.Planned() != nil {
		t.Fatal("the plan from before the result is still shown")
	}
	lost := u.plan()
	if len(lost.Lots) != 1 || lost.Sale.Purse != before.Sale.Purse {
		t.Errorf("a lost lot: %+v left of %+v", lost.Sale.Purse, before.Sale.Purse)
	}
	u.well(desk.Undo(), desk.Call(300000), desk.RecordResult(lot.Won))
	won := u.plan()
	want := before.Sale.Won(before.Sale.Lots[0], 300000, before.Sale.Currency)
	if len(won.Lots) != 1 || won.Sale.Purse != want || won.Sale.Bays != 0 {
		t.Errorf("a won lot leaves %+v, want %+v", won.Sale.Purse, want)
	}
	if b, _ := won.TodaysBid(ids[1]); b.Bid != nil {
		t.Errorf("with no bay left the next is bid %v", *b.Bid)
	}
}

// A hammer price that is put right, or entered under Builds, is money that is gone: the lot was marked as won before.
func TestWhatABuildSaysMovesThePlan(t *testing.T) {
	u, ids := planning(t)
	u.well(desk.EditDay("bays", func(d *desk.SaleDay) { d.Bays = 3 }))
	u.well(desk.OpenLot(ids[0]), desk.Go(desk.Live), desk.Call(100000), desk.RecordResult(lot.Won))
	first := u.plan().Sale.Cash
	u.well(desk.Call(400000), desk.RecordResult(lot.Won))
	if u.s.Planned() != nil {
		t.Error("the plan from before the price was put right is still shown")
	}
	if second := u.plan().Sale.Cash; second != first-300000 {
		t.Errorf("a price put right from 1,000 to 4,000 leaves %v of %v", second, first)
	}
	u.well(desk.Undo())
	if again := u.plan().Sale.Cash; again != first {
		t.Errorf("taken back: %v, want %v", again, first)
	}
	u.well(desk.Redo())
	if second := u.plan().Sale.Cash; second != first-300000 {
		t.Errorf("done again: %v of %v", second, first)
	}
}

func TestAPriceEnteredUnderBuildsLetsLivePlanAgain(t *testing.T) {
	u, ids := planning(t)
	u.well(desk.OpenLot(ids[1]), desk.MarkLots(lot.Won, ids[0]), desk.Go(desk.Live))
	of, _ := u.s.PlanDue()
	p, err := u.PlanDay(t.Context(), u.s)
	if u.s = u.s.DayPlanned(of, p, err); u.s.Day.Problem == "" {
		t.Fatal("a won lot without its price is planned")
	}
	u.well(desk.Go(desk.Builds), desk.ShowBuild(ids[0]), desk.SetHammer(at(100000)), desk.Go(desk.Live))
	if u.plan(); u.s.Day.Problem != "" {
		t.Errorf("the problem stays: %s", u.s.Day.Problem)
	}
}

// A keystroke in the plan's fields values no lot anew.
func TestWhatThereIsForADayChangesNoLot(t *testing.T) {
	u, ids := planning(t)
	revision := u.well(desk.OpenLot(ids[0]), desk.Go(desk.SalePlan)).Open.Revision
	s := u.well(desk.EditDay("cash", func(d *desk.SaleDay) { d.Cash = 12_000 }))
	if s.Open.Revision != revision || s.Day.Has.Cash != 12_000 {
		t.Errorf("revision %d, then %d; cash %v", revision, s.Open.Revision, s.Day.Has.Cash)
	}
	if s = u.well(desk.Undo()); s.Day.Has.Cash != 1_000_000 || s.Open.Revision != revision {
		t.Errorf("taken back: %v, revision %d", s.Day.Has.Cash, s.Open.Revision)
	}
}

func TestLaterDaysShareWhatThereIs(t *testing.T) {
	u, _ := planning(t)
	later := sound("3")
	later.Lot.SaleDate, later.Market.HammerGuess = "2026-12-01", &prob.Three{Low: 3000, Likely: 5000, High: 7000}
	id := u.add(later)[0]
	u.well(desk.Go(desk.SalePlan), desk.ShowDay("2026-11-01"))
	if p := u.plan(); len(p.Lots) != 2 || len(p.Unmarked) != 1 || desk.ByDay(p.Unmarked) != "2026-12-01: 3" {
		t.Errorf("a lot of a later day that is not marked: %d lots, said %q", len(p.Lots), desk.ByDay(p.Unmarked))
	}
	u.well(desk.OpenLot(u.s.Planned().Lots[1].ID), desk.Go(desk.Live))
	if s := u.do(desk.NextLot(1)); !strings.Contains(s.Notice, "No lot of a later day is marked bid. There are: 2026-12-01: 3.") {
		t.Errorf("after the last lot: %q", s.Notice)
	}
	u.well(desk.MarkLots(lot.Bid, id), desk.Go(desk.SalePlan))
	if p := u.plan(); len(p.Lots) != 3 || p.Lots[2].ID != id || len(p.Unmarked) != 0 {
		t.Errorf("a lot of a later day that is marked: %+v", p.Lots)
	}
	u.well(desk.ShowDay("2026-12-01"))
	if u.s.Day.Has != nil || u.s.Planned() != nil {
		t.Errorf("each day has a row of its own: %+v", u.s.Day)
	}
}

func TestADayIsKeptAndTakenBackStepByStep(t *testing.T) {
	u, _ := planning(t)
	u.start()
	if u.s.Day.Date != "2026-11-01" || u.s.Day.Has == nil ||
		!reflect.DeepEqual(*u.s.Day.Has, desk.SaleDay{Currency: "USD", Cash: 1_000_000, Hours: 500, Bays: 1}) {
		t.Fatalf("after a restart: %+v", u.s.Day)
	}
	u.well(desk.Go(desk.SalePlan))
	if u.s.Reach != (book.Reach{Undo: "bays"}) {
		t.Errorf("undo would take back %+v", u.s.Reach)
	}
	if u.well(desk.Undo()); u.s.Day.Has.Bays != 0 || u.s.Day.Has.Hours != 500 {
		t.Errorf("one step taken back: %+v", u.s.Day.Has)
	}
	if u.well(desk.Undo(), desk.Undo()); u.s.Day.Has != nil {
		t.Errorf("all taken back: %+v", u.s.Day.Has)
	}
}
