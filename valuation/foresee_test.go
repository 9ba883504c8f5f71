package valuation_test

import (
	"math"
	"strings"
	"testing"

	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

func foreseen(t *testing.T, c valuation.Case, b build.Build, today string) valuation.Foresight {
	t.Helper()
	if faults := c.Check(); len(faults) > 0 {
		t.Fatal(faults)
	}
	f, err := valuation.Foresee(c, valuation.Knowledge{}, b, lot.Date(today))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func comesTo(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.Abs(got-want) > tolerance {
		t.Errorf("%s: %.3f, want %.3f", what, got, want)
	}
}

// sure is the uncertain case without a doubt in it: every figure at its likely value.
func sure() valuation.Case {
	c := uncertain(1, lossRule())
	c.Resale.Guess = &prob.Three{Low: 14000, Likely: 14000, High: 14000}
	a, b := &c.Repair.Lines[0], &c.Repair.Lines[1]
	a.Hours["body"], a.Materials, a.Parts = prob.Certain(10), prob.Certain(120), a.Parts[:0]
	b.Chance, b.Hours["structure"], b.Outside = nil, prob.Certain(9), prob.Certain(400)
	h := &c.Hidden.Risks[0]
	h.Cost, h.Hours["structure"] = prob.Certain(300), prob.Certain(3)
	c.Hidden.Risks = c.Hidden.Risks[:1]
	c.Hidden.Risks[0].Chance.A = 0
	c.Buying.Freight, c.Buying.Storage = prob.Certain(180), valuation.Storage{}
	c.Time.InspectionQueueDays, c.Time.DaysToSell = prob.Certain(14), prob.Certain(21)
	return c
}

// Source: the same figures on paper. 10 h of body at 35, 9 h of structure at 42, 120 + 400 in money, freight 180, and 19 h at
// 12 a week are 11.083 days, 35 more to the sale, at 6 a day.
func TestWhatIsLeftOfACertainBuildByHand(t *testing.T) {
	hammer := money.Amount(500000)
	c, b := sure(), build.Build{Hammer: &hammer, Dates: build.Dates{Bought: "2026-11-20"}}
	days := 19./12*7 + 35
	left := 350 + 378 + 520 + 180 + 6*days
	f := foreseen(t, c, b, "2026-11-20")
	comesTo(t, "to finish", f.ToFinish.Mean, left, .01)
	comesTo(t, "days", f.Days.Mean, days, .001)
	sell := 14000*.98 - 150
	invoice := 5350.
	comesTo(t, "profit", f.Whole.Mean, sell-left-invoice*(1+.12*days/365), .01)

	b.Dates.Home, b.Dates.Started = "2026-11-22", "2026-11-23"
	b.Receipts = []build.Receipt{{Kind: "freight", Amount: 20000}, {Kind: "materials", Line: "a", Amount: 5000},
		{Kind: "outside", Line: "b", Amount: 45000}}
	b.Hours = []build.Work{{Trade: "body", Line: "a", Hours: 4}, {Trade: "structure", Line: "b", Hours: 11}}
	b.Done = []string{"b"}
	b.Risks = []build.Seen{{Risk: "h", State: build.Found}}
	f = foreseen(t, c, b, "2026-12-10")
	days = (6+3)/12.*7 + 35 // 6 h of body left, 3 h for the mount that was found
	left = 6*35 + 3*42 + 70 + 300 + 6*days
	comesTo(t, "to finish", f.ToFinish.Mean, left, .01)
	comesTo(t, "your labor sunk", f.Sunk.Labour, 4*35+11*42, .001)
	comesTo(t, "profit", f.Whole.Mean, sell-left-700-602-invoice*(1+.12*(days+20)/365), .01)
	if f.Sunk.Bills != 70000 || *f.Sunk.Invoice != 535000 || f.Sunk.Days != 20 {
		t.Errorf("sunk %+v", f.Sunk)
	}
}

// The bid's own answer is another way to the same figure: nothing done, bought today.
// To have won tells nothing new of the vehicle: with rivals, the winner's allowance stays in the forecast.
func TestAnUntouchedBuildHasTheProfitOfItsBid(t *testing.T) {
	for _, rivals := range []int{0, 4} {
		c := uncertain(3, lossRule())
		c.Run.WinnersAllowance, c.Market.Rivals = rivals > 0, others(rivals)
		untouched(t, c)
	}
}

func untouched(t *testing.T, c valuation.Case) {
	t.Helper()
	a := value(t, c, valuation.Knowledge{})
	b := build.Build{Hammer: a.WalkAway}
	f := foreseen(t, c, b, string(c.ValuedOn))
	comesTo(t, "mean", f.Whole.Mean, a.Profit.Mean, .06) // eleven bars of the waterfall, each rounded to the cent
	comesTo(t, "10th percentile", f.Whole.P10, a.Profit.P10, .01)
	comesTo(t, "chance of loss", f.Loss, a.Profit.LossChance, 1e-9)
	comesTo(t, "hours", f.Hours.Mean, a.Hours.Mean, 1e-9)
}

func TestWhatIsSeenMovesTheForecastTheRightWay(t *testing.T) {
	c := uncertain(3, lossRule())
	left := func(b build.Build) float64 { return foreseen(t, c, b, "2026-11-20").ToFinish.Mean }
	none := left(build.Build{})
	found, clear := left(build.Build{Risks: []build.Seen{{Risk: "g", State: build.Found}}}),
		left(build.Build{Risks: []build.Seen{{Risk: "g", State: build.NotThere}}})
	if !(found > none && none > clear) {
		t.Errorf("found %.0f, not known %.0f, not there %.0f", found, none, clear)
	}
	if bought := left(build.Build{Receipts: []build.Receipt{{Kind: "part", Line: "a", What: "Lamp", Amount: 100}}}); !(bought < none) {
		t.Errorf("with its part bought the line costs %.0f of %.0f", bought, none)
	}
	done := foreseen(t, c, build.Build{Dates: build.Dates{Home: "2026-11-21", Finished: "2026-11-25", Inspected: "2026-12-01",
		Listed: "2026-12-01"}}, "2027-06-01")
	if done.ToFinish.Mean != 0 || done.Days.Mean != 0 || done.Hours.Mean != 0 {
		t.Errorf("finished, inspected and long listed, it still takes %+v", done)
	}
}

// Source: what a way brings, on paper.
func TestWaysOutLeaveSunkCostOut(t *testing.T) {
	c := sure()
	asIs, parts, hours := prob.Certain(6000), prob.Certain(7000), prob.Certain(20)
	hammer := money.Amount(500000)
	b := build.Build{Hammer: &hammer, Otherwise: build.Otherwise{AsIs: &asIs, PartOut: &parts, PartOutHours: &hours}}
	f := foreseen(t, c, b, "2026-11-20")
	days := 19./12*7 + 35
	net := 6000*.98 - 150
	comesTo(t, "finish", f.Ways[0].Spread.Mean, 14000*.98-150-(350+378+520+180+6*days)-net*.12*days/365, .01)
	comesTo(t, "as it stands", f.Ways[1].Spread.Mean, net, 1e-9)
	comesTo(t, "part out", f.Ways[2].Spread.Mean, 7000-20*35, 1e-9)
	before := f.Ways
	b.Receipts = []build.Receipt{{Kind: "other", Amount: 900000}}
	f = foreseen(t, c, b, "2026-11-20")
	for i, w := range f.Ways {
		comesTo(t, w.Name+" with more sunk", w.Spread.Mean, before[i].Spread.Mean, 1e-9)
	}
	if f.Best != 0 || f.Ways[1].Beats != 0 {
		t.Errorf("best %d, chance that finishing falls short %v", f.Best, f.Ways[1].Beats)
	}
	dear := prob.Certain(20000)
	b.Otherwise.PartOut = &dear
	if f = foreseen(t, c, b, "2026-11-20"); f.Best != 2 || f.Ways[2].Beats != 1 {
		t.Errorf("best %d: %+v", f.Best, f.Ways)
	}
	if f = foreseen(t, c, build.Build{}, "2026-11-20"); f.Best != -1 || f.Whole != nil {
		t.Errorf("with nothing judged the best is %d, the profit %v", f.Best, f.Whole)
	}
}

func TestDoubtsAreNamed(t *testing.T) {
	c := uncertain(3, lossRule())
	c.Repair.Lines[0].Parts = append(c.Repair.Lines[0].Parts, c.Repair.Lines[0].Parts[0])
	c.Repair.Lines[0].Parts[1].Name = "bracket"
	b := build.Build{Receipts: []build.Receipt{{Kind: "part", Line: "a", What: "thing", Amount: 100}, {Kind: "materials", Amount: 5000}},
		Hours: []build.Work{{Trade: "body", Line: "a", Hours: 30}, {Trade: "paint", Hours: 2}}}
	all := strings.Join(foreseen(t, c, b, "2026-11-20").Doubts, "\n")
	for _, want := range []string{"front has taken 30.0 hours of body", "names none of its parts",
		"USD 50 of bills for materials name no line",
		"2.0 hours of paint name no line"} {
		if !strings.Contains(all, want) {
			t.Errorf("%q is missing from\n%s", want, all)
		}
	}
	before := c.Clone()
	left, _ := valuation.Remaining(c, valuation.Knowledge{}, b, "2026-11-20")
	left.Repair.Lines[0].Hours["body"] = prob.Certain(99)
	if c.Repair.Lines[0].Hours["body"] != before.Repair.Lines[0].Hours["body"] {
		t.Error("what is left shares with the case")
	}
}

// By hand: what is certain brings 10,000 in ten days of selling; as it stands 4,000 less selling. Still to spend until stopping is as good
// is the difference, whatever has been spent.
func TestABuildHasAStopLine(t *testing.T) {
	c := twoStates(0, bid.Rules{MinProfit: usd(0)})
	c.Selling = valuation.Selling{Percent: .1, Flat: 100}
	c.Time.DaysToSell = prob.Certain(10)
	stands := prob.Certain(4000)
	f := foreseen(t, c, build.Build{Otherwise: build.Otherwise{AsIs: &stands}}, "2026-11-20")
	if f.StopLine == nil || f.StopWay != valuation.AsItStands {
		t.Fatalf("%v, %s", f.StopLine, f.StopWay)
	}
	comesTo(t, "stop line", *f.StopLine, 8900-3500, 1e-6)
	c.WaysOut.AsItStands.Money = nil
	if f = foreseen(t, c, build.Build{}, "2026-11-20"); f.StopLine != nil {
		t.Errorf("no way is judged, and the line is %g", *f.StopLine)
	}
}

// By hand, from [sure]: 30 of 120 for materials leave 90, 4.5 of 9 h of structure leave 4.5; of two bills for parts the one that names a
// part of the plan, 250 of 400, leaves the other part, 150, of which half is paid.
func TestWhatNamesNoLineTakesDownWhatIsLeftOfItsKind(t *testing.T) {
	c := sure()
	c.Buying.Freight = prob.Certain(0)
	part := func(name string, price float64) repair.Part {
		return repair.Part{Name: name, Options: []repair.Option{{Source: "used", Price: prob.Certain(price)}},
			Fallback: &repair.Fallback{Price: prob.Certain(price)}}
	}
	c.Repair.Lines[0].Parts = []repair.Part{part("fender", 250)}
	c.Repair.Lines[1].Parts = []repair.Part{part("rail", 150)}
	b := build.Build{Receipts: []build.Receipt{{Kind: "materials", Amount: 3000}, {Kind: "part", What: "Fender ", Amount: 26000},
		{Kind: "part", What: "odds and ends", Amount: 7500}}, Hours: []build.Work{{Trade: "structure", Hours: 4.5}}}
	f := foreseen(t, c, b, "2026-11-20")
	comesTo(t, "to finish", f.ToFinish.Mean, 10*35+4.5*42+90+400+75+6*(14.5/12*7+35), .01)
	var due, labour float64
	for _, d := range f.Due {
		due, labour = due+d.Cost, labour+d.Labour
	}
	comesTo(t, "the parts of it together", due, f.ToFinish.Mean, 1e-6)
	comesTo(t, "the parts of it without labor", due-labour, f.Cash.Mean, 1e-6)
	if words := strings.Join(f.Doubts, "\n"); !strings.Contains(words, "taken down by 25 %") ||
		!strings.Contains(words, "taken down by 50 %") {
		t.Errorf("%s", words)
	}
	b.Receipts[0].Amount = 50000
	f = foreseen(t, c, b, "2026-11-20")
	comesTo(t, "more than is left", f.ToFinish.Mean, 10*35+4.5*42+400+75+6*(14.5/12*7+35), .01)
	if words := strings.Join(f.Doubts, "\n"); !strings.Contains(words, "more than the open lines still need") {
		t.Errorf("%s", words)
	}
}

// A bill that nobody foresaw and that names no line can't raise the profit: what it takes off the lines is what was paid, and no more.
func TestABillWithoutALineNeverRaisesTheProfit(t *testing.T) {
	hammer := money.Amount(500000)
	b := build.Build{Hammer: &hammer, Dates: build.Dates{Bought: "2026-11-20"}}
	c := uncertain(3, lossRule())
	before := foreseen(t, c, b, "2026-11-20").Whole.Mean
	for _, kind := range []string{"part", "materials", "outside", "other"} {
		last := before
		for _, amount := range []money.Amount{10000, 25000, 90000, 200000} {
			b.Receipts = []build.Receipt{{Kind: kind, Amount: amount}}
			after := foreseen(t, c, b, "2026-11-20").Whole.Mean
			if after > last+.01 {
				t.Errorf("%s for %v: the profit goes from %.2f to %.2f", kind, amount, last, after)
			}
			last = after
		}
		if kind == "part" && last > before-900 {
			t.Errorf("2,000 for parts that were foreseen at less: %.2f after %.2f", last, before)
		}
	}
}

// Money back raises the profit by itself and leaves the work alone; what names a bill takes it back, and the work is to be paid again.
func TestMoneyBackLowersWhatWasPaidAlone(t *testing.T) {
	hammer := money.Amount(500000)
	c := uncertain(3, lossRule())
	at := func(bills ...build.Receipt) valuation.Foresight {
		return foreseen(t, c, build.Build{Hammer: &hammer, Dates: build.Dates{Bought: "2026-11-20"}, Receipts: bills}, "2026-11-20")
	}
	for _, kind := range build.Kinds {
		bill := build.Receipt{Kind: kind, What: "rear axle", Amount: 8000}
		for _, line := range []string{"", "a"} {
			before, after := at(bill), at(bill, build.Receipt{Kind: kind, What: "core deposit back", Amount: -5000, Line: line})
			comesTo(t, kind+": the profit", after.Whole.Mean, before.Whole.Mean+50, .01)
			comesTo(t, kind+": to finish", after.ToFinish.Mean, before.ToFinish.Mean, .001)
		}
		returned, never := at(bill, build.Receipt{Kind: kind, What: "Rear axle", Amount: -8000}), at()
		comesTo(t, kind+" returned: the profit", returned.Whole.Mean, never.Whole.Mean, .01)
		comesTo(t, kind+" returned: to finish", returned.ToFinish.Mean, never.ToFinish.Mean, .001)
	}
}

// By hand, from [sure]: what is found and on no list is known work, less what was worked and paid for it.
func TestUnlistedDamageIsKnownWork(t *testing.T) {
	c := sure()
	b := build.Build{Unlisted: []build.Unlisted{{ID: "unlisted-1", Name: "Pickup bent", Cost: prob.Certain(250), Trade: "body",
		Hours: prob.Certain(5)}}, Receipts: []build.Receipt{{Kind: "part", Line: "unlisted-1", Amount: 10000}},
		Hours: []build.Work{{Trade: "body", Line: "unlisted-1", Hours: 2}}}
	comesTo(t, "to finish", foreseen(t, c, b, "2026-11-20").ToFinish.Mean, 350+378+520+180+150+3*35+6*((19+3)/12.*7+35), .01)
	b.Done = []string{"unlisted-1"}
	comesTo(t, "done", foreseen(t, c, b, "2026-11-20").ToFinish.Mean, 350+378+520+180+6*(19./12*7+35), .01)
}

// By hand: a day costs 6 of holding and 12 % a year on what it would bring today, in every way out.
func TestDaysOfTheOtherWaysCostWhatFinishingsDaysCost(t *testing.T) {
	asIs, parts, days := prob.Certain(6000), prob.Certain(7000), prob.Certain(30)
	b := build.Build{Otherwise: build.Otherwise{AsIs: &asIs, PartOut: &parts, AsIsDays: &days, PartOutDays: &days}}
	f := foreseen(t, sure(), b, "2026-11-20")
	net := 6000*.98 - 150
	comesTo(t, "as it stands", f.Ways[1].Spread.Mean, net-30*(6+net*.12/365), 1e-6)
	comesTo(t, "part out", f.Ways[2].Spread.Mean, 7000-30*(6+net*.12/365), 1e-6)
	longer, none := sure(), prob.Three{}
	longer.Time.InspectionQueueDays = prob.Certain(longer.Time.InspectionQueueDays.Mean() + 30)
	later := foreseen(t, longer, b, "2026-11-20")
	b.Otherwise.AsIsDays, b.Otherwise.PartOutDays = &none, &none
	atOnce := foreseen(t, sure(), b, "2026-11-20")
	for i, cost := range []float64{f.Ways[0].Spread.Mean - later.Ways[0].Spread.Mean, atOnce.Ways[1].Spread.Mean - f.Ways[1].Spread.Mean,
		atOnce.Ways[2].Spread.Mean - f.Ways[2].Spread.Mean} {
		comesTo(t, "thirty days of "+f.Ways[i].Name, cost, 30*(6+net*.12/365), 1e-6)
	}
	b.Otherwise.PartOutDays = nil
	if words := strings.Join(foreseen(t, sure(), b, "2026-11-20").Doubts, " "); !strings.Contains(words,
		"Part out: its days are not entered") {
		t.Errorf("%q", words)
	}
}
