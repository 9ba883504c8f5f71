package desk_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
	"walkline/valuation/sale"
)

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
