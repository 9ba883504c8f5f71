package desk_test

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
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
// not
// anybody has looked, and with capital that each price ties up.
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

// twoDays returns a user with a build in hand before the plan of a lot, and of a marked one a month later.
func twoDays(t *testing.T) (u *user, built int64) {
	t.Helper()
	u, _ = planning(t)
	later, bought := sound("3"), sound("9")
	later.Lot.SaleDate, later.Market.HammerGuess = "2026-12-01", &prob.Three{Low: 3000, Likely: 5000, High: 7000}
	bought.Lot.SaleDate = "2026-10-01"
	bought.Repair.Lines = []repair.Line{{ID: "1", Job: "Fender", Hours: map[string]prob.Three{"body": {Low: 8, Likely: 10, High: 15}}}}
	bought.Time.DaysToSell = prob.Three{Low: 5, Likely: 10, High: 15}
	ids := u.add(later, bought)
	u.well(desk.MarkLots(lot.Bid, ids[0]), desk.OpenLot(ids[1]), desk.Go(desk.Live), desk.Call(100000), desk.RecordResult(lot.Won),
		desk.Go(desk.SalePlan), desk.ShowDay("2026-11-01"), desk.EditDay("bays", func(d *desk.SaleDay) { d.Bays = 4 }))
	return u, ids[1]
}

// What comes in before the second day is there for its lot, and not for those of the first day.
func TestMoneyThatComesInIsThereFromItsDayOn(t *testing.T) {
	u, _ := twoDays(t)
	hand := u.plan().Hand.Cash
	bids := func(day lot.Date) (bid []bool) {
		u.well(desk.EditDay("cash", func(d *desk.SaleDay) {
			d.Cash, d.In = hand, []desk.Coming{{Day: day, Amount: 900_000}}
		}))
		for _, b := range u.plan().Answer.Lots {
			bid = append(bid, b.Bid != nil)
		}
		return bid
	}
	for day, want := range map[lot.Date][]bool{"2026-11-01": {true, true, true}, "2026-11-20": {false, false, true},
		"2026-12-01": {false, false, true}, "2026-12-02": {false, false, false}} {
		if got := bids(day); !slices.Equal(got, want) {
			t.Errorf("money from %s: bids on %v, want %v", day, got, want)
		}
	}
	u.well(desk.EditDay("cash", func(d *desk.SaleDay) { d.In = append(d.In, desk.Coming{Amount: 100}) }))
	if p := u.plan(); len(p.Sale.In) != 1 || len(p.Out) != 1 {
		t.Errorf("money without a day: %+v, %q", p.Sale.In, p.Out)
	}
}

// A build with a sold price takes no cash, hours or bay any more, whether it was won on the planned day or before, and a sale without its
// day is named.
func TestASoldBuildIsOverForThePlan(t *testing.T) {
	u, built := twoDays(t)
	ids := []int64{built, u.plan().Lots[0].ID}
	u.well(desk.OpenLot(ids[1]), desk.Go(desk.Live), desk.Call(300000), desk.RecordResult(lot.Won))
	for i, id := range ids {
		if p := u.plan(); p.Sale.Bays != 2+i || len(p.Undated) != i {
			t.Fatalf("before the sale: %+v, undated %q", p.Sale.Purse, p.Undated)
		}
		price := u.s.Day.Plan.Sale.Currency.FromMajor(15500)
		u.well(desk.Go(desk.Builds), desk.ShowBuild(id), desk.EditBuild("sold", func(b *build.Build) { b.Sale.Price = &price }),
			desk.Go(desk.SalePlan), desk.ShowDay("2026-11-01"))
	}
	p := u.plan()
	if want := (sale.Purse{Cash: 1_000_000, Hours: 500, Bays: 4}); p.Sale.Purse != want || p.Hand.Builds != 0 {
		t.Errorf("left %+v, want %+v; in hand %+v", p.Sale.Purse, want, p.Hand)
	}
	if len(p.Undated) != 2 {
		t.Errorf("sold without a day: %q", p.Undated)
	}
}

// Live goes on from the last lot of a day to the first marked one of the next, and its plan follows: a result of the second day moves
// what is left at once, and a day that the plan has no say on is planned by its own row.
func TestLiveFollowsResultsAcrossDays(t *testing.T) {
	u, _ := twoDays(t)
	before := u.plan()
	last := before.Lots[2].ID
	u.well(desk.OpenLot(before.Lots[1].ID), desk.Go(desk.Live))
	if s := u.do(desk.NextLot(1)); s.Open.ID != last || s.Day.Date != "2026-11-01" || s.Place != desk.Live {
		t.Fatalf("after the last lot of the day: lot %d, plan of %s", s.Open.ID, s.Day.Date)
	}
	if b, in := u.plan().TodaysBid(last); !in || b.Bid == nil {
		t.Error("the second day's lot has no bid today")
	}
	u.well(desk.Call(300000), desk.RecordResult(lot.Won))
	if u.s.Planned() != nil {
		t.Error("the plan from before the result is still shown")
	}
	if want := before.Sale.Won(before.Sale.Lots[2], 300000, before.Sale.Currency); u.plan().Sale.Purse != want {
		t.Errorf("left %+v, want %+v", u.plan().Sale.Purse, want)
	}
	if s := u.do(desk.NextLot(-1)); s.Open.Case.Lot.SaleDate != "2026-10-01" {
		t.Errorf("before it lies %+v", s.Open.Case.Lot)
	}
}

func TestLivePlansTheDayOfItsLot(t *testing.T) {
	u, _ := planning(t)
	later := sound("3")
	later.Lot.SaleDate = "2026-12-01"
	id := u.add(later)[0]
	u.well(desk.Go(desk.SalePlan), desk.ShowDay("2026-11-01"), desk.OpenLot(id), desk.Go(desk.Live))
	if u.s.Day.Date != "2026-11-01" {
		t.Errorf("a day of which nothing is known is planned: %s", u.s.Day.Date)
	}
	u.well(desk.Go(desk.SalePlan), desk.ShowDay("2026-12-01"), desk.EditDay("cash", func(d *desk.SaleDay) { d.Cash = 500_000 }),
		desk.ShowDay("2026-11-01"), desk.OpenLot(id), desk.Go(desk.Live))
	if u.s.Day.Date != "2026-12-01" || u.s.Day.Has == nil || u.s.Day.Has.Cash != 500_000 {
		t.Errorf("%s: %+v", u.s.Day.Date, u.s.Day.Has)
	}
}

// A build in hand brings what it beats nine times in ten, by the day that it keeps nine times in ten; each is taken once.
func TestBuildsInHandProposeMoney(t *testing.T) {
	u, id := twoDays(t)
	u.plan()
	u.well(desk.TakeComing())
	in := u.s.Day.Has.In
	if len(in) != 1 || in[0].Build != id || in[0].Number != "9" {
		t.Fatalf("%+v", in)
	}
	l := u.lot(id)
	f, err := u.Foresee(l.Case, l.Build)
	if err != nil {
		t.Fatal(err)
	}
	wait, known := u.Today().Days(in[0].Day)
	if got := float64(in[0].Amount) / 100; !known || float64(wait) < f.Days.P90 || float64(wait) > f.Days.P90+1 ||
		!(got > .5*f.Resale.P10 && got <= f.Resale.P10) {
		t.Errorf("%+v of a price of %v..%v in %v days", in[0], f.Resale.P10, f.Resale.P90, f.Days)
	}
	u.plan()
	if s := u.do(desk.TakeComing()); len(s.Day.Has.In) != 1 {
		t.Errorf("taken twice: %+v", s.Day.Has.In)
	}
	u.well(desk.Undo())
	if len(u.s.Day.Has.In) != 0 {
		t.Errorf("after undo: %+v", u.s.Day.Has.In)
	}
}

// A lot that nobody has looked at is planned only where that is asked for.
func TestFirstGuessesAreLeftOutUnlessAskedFor(t *testing.T) {
	u, _ := planning(t)
	c := sound("30")
	c.Repair.UseCatalogue, c.Hidden.UseCatalogue, c.Lot.Loss, c.Lot.ModelYear = true, true, []string{"collision"}, 2019
	c.Findings, c.Market.HammerGuess = nil, &prob.Three{Low: 3000, Likely: 5000, High: 7000}
	u.add(c)
	u.well(desk.Go(desk.SalePlan))
	if p := u.plan(); len(p.Lots) != 2 || len(p.Unlooked) != 1 || p.Unlooked[0] != "30" {
		t.Errorf("%d lots, not looked at %q, out %q", len(p.Lots), p.Unlooked, p.Out)
	}
	u.well(desk.EditDay("guesses", func(d *desk.SaleDay) { d.Guesses = true }))
	if p := u.plan(); len(p.Lots) != 3 || len(p.Unlooked) != 0 || !p.Lots[2].FirstGuess {
		t.Errorf("asked for: %d lots, not looked at %q", len(p.Lots), p.Unlooked)
	}
}

// What a bay brings is the year's profit over the bays' days, times the days of a build: the long-run average rate of a renewal process
// prices its time (Ross, Applied Probability Models with Optimization Applications, 1970, from memory).
func TestThePastYearPricesABay(t *testing.T) {
	u, id := twoDays(t)
	u.plan()
	if s := u.do(desk.TakePastYear()); !strings.Contains(s.Notice, "No build was sold") || s.Day.Has.Later != (desk.Later{}) {
		t.Fatalf("without a past year: %q, %+v", s.Notice, s.Day.Has.Later)
	}
	price := u.s.Day.Plan.Sale.Currency.FromMajor(9000)
	u.well(desk.Go(desk.Builds), desk.ShowBuild(id), desk.EditBuild("sold", func(b *build.Build) {
		b.Outcome, b.Sale.Price, b.Dates.Bought, b.Dates.Sold = build.Sold, &price, "2026-08-01", "2026-10-30"
	}), desk.Go(desk.SalePlan), desk.ShowDay("2026-11-01"))
	p := u.plan()
	r, _ := desk.PastOf(u.s.Bought[0]).Account().Result()
	bays, days := 4.0, 90.0
	if want := r.Profit / (bays * 365) * days; p.Year.Builds != 1 || math.Abs(p.Year.Bay()-want) > .5 {
		t.Errorf("%+v: a bay brings %v, want %v", p.Year, p.Year.Bay(), want)
	}
	u.well(desk.TakePastYear())
	after := u.plan()
	if after.Sale.Later.Bay != p.Year.Bay() || !(after.Answer.Expected < p.Answer.Expected) {
		t.Errorf("%+v brings %v, without it %v", after.Sale.Later, after.Answer.Expected, p.Answer.Expected)
	}
}

// A bay is where a vehicle is worked on, as cmd/season has it: it is free for lots from the day on which the work ends, entered or foreseen
// nine times in ten, sold or not, and one of a vehicle that is done is free from the first day on.
func TestABayIsFreeWhenTheWorkEnds(t *testing.T) {
	u, id := twoDays(t)
	u.well(desk.EditDay("bays", func(d *desk.SaleDay) { d.Bays = 1 }))
	bids := func() (bid []bool) {
		for _, b := range u.plan().Answer.Lots {
			bid = append(bid, b.Bid != nil)
		}
		return bid
	}
	ended := func(day lot.Date) {
		u.well(desk.Go(desk.Builds), desk.ShowBuild(id), desk.EditBuild("finished", func(b *build.Build) { b.Dates.Finished = day }),
			desk.Go(desk.SalePlan), desk.ShowDay("2026-11-01"))
	}
	for day, want := range map[lot.Date][]bool{"2026-11-01": {true, true, true}, "2026-11-20": {false, false, true},
		"2026-12-01": {false, false, true}, "2026-12-02": {false, false, false}} {
		if ended(day); !slices.Equal(bids(), want) {
			t.Errorf("work ends on %s: bids on %v, want %v", day, bids(), want)
		}
	}
	ended("")
	l := u.lot(id)
	f, err := u.Foresee(l.Case, l.Build)
	if err != nil || !(f.InBay.P90 > 0) || !(f.InBay.P90 < f.Days.P90) {
		t.Fatalf("%v: in the bay for %v of %v days", err, f.InBay, f.Days)
	}
	day := u.Today().Plus(int(math.Ceil(f.InBay.P90)))
	bids()
	if p := u.s.Planned(); day > "2026-12-01" || len(p.Frees) != 1 || p.Frees[0] != (desk.Freeing{Day: day, Number: "9"}) {
		t.Errorf("foreseen from %s on: %+v", day, p.Frees)
	}
	u.well(desk.EditDay("money", func(d *desk.SaleDay) { d.In = []desk.Coming{{Day: "2026-11-01", Amount: 1, Build: id}} }))
	if !slices.Equal(bids(), []bool{true, true, true}) {
		t.Error("sold by the first day, its bay is not free")
	}
}

// A lot won on the first day leaves its bay to those of later days once its work is over by then.
func TestALotWonInThePlanFreesItsBay(t *testing.T) {
	u, _ := twoDays(t)
	first := u.plan().Lots[0].ID
	u.well(desk.OpenLot(first), desk.Go(desk.Live), desk.Call(300000), desk.RecordResult(lot.Won), desk.Go(desk.Builds), desk.ShowBuild(first))
	for day, bays := range map[lot.Date]int{"2026-11-25": 3, "2026-12-02": 2} {
		u.well(desk.Go(desk.Builds), desk.ShowBuild(first), desk.EditBuild("done", func(b *build.Build) { b.Dates.Finished = day }),
			desk.Go(desk.SalePlan), desk.ShowDay("2026-11-01"))
		p := u.plan()
		p.Sale.Lots = p.Sale.Lots[1:] // as on the second day
		if got := p.Sale.InHand().Bays; got-len(p.Frees) != 2 || got != 1+bays {
			t.Errorf("done on %s: %d bays on the second day, freed %+v", day, got, p.Frees)
		}
	}
}

// Money that was entered in one currency is not renamed into another by an edit beside it.
func TestADaysMoneyStaysInItsCurrency(t *testing.T) {
	u, _ := planning(t)
	u.well(desk.Go(desk.Bench), desk.SetCurrency("JPY"), desk.Go(desk.SalePlan), desk.EditDay("bays", func(d *desk.SaleDay) { d.Bays = 2 }))
	if has := *u.s.Day.Has; has.Currency != "USD" || has.Cash != 1_000_000 || has.Bays != 2 {
		t.Errorf("after an edit of the bays: %+v", has)
	}
	u.well(desk.Undo())
	if has := *u.s.Day.Has; has.Currency != "USD" || has.Bays != 1 {
		t.Errorf("taken back: %+v", has)
	}
	u.well(desk.EditDay("cash", func(d *desk.SaleDay) { d.Cash = 0 }))
	if has := *u.s.Day.Has; has.Currency != "JPY" {
		t.Errorf("without money the day is in the old currency: %+v", has)
	}
}
