package learn

import (
	"math"
	"slices"
	"strings"
	"testing"

	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

const today = lot.Date("2026-11-20")

var starter = Starter{AskedToSold: prob.Three{Low: 0.9, Likely: 0.95, High: 1}, Loading: 0.3, Risks: []StarterRisk{
	{"rail", "Rail end bent", "structure", 3, 11}, {"tower", "Tower moved", "structure", 2, 10},
	{"leak", "Radiator leaks", "mechanical", 4, 11}}}

// built is a build of two lines whose hours came out at ratio times the forecast, closed that many days ago.
func built(id int64, ratio float64, daysAgo int) Build {
	p := &Prediction{Resale: normalFigure(12000, 1200), Terms: Terms{Brand: "rebuilt", AskedToSold: 0.95, DaysToSell: 30, DaysSD: 9},
		Items: []Item{{Line: "a", Kind: HoursKind, Key: "body", Chance: 1, Mean: 8, SD: 2},
			{Line: "b", Kind: HoursKind, Key: "paint", Chance: 1, Mean: 6, SD: 1.5},
			{Line: "b", Kind: MaterialsKind, Chance: 1, Mean: 200, SD: 40}, {Line: "a", Part: "cover", Kind: PartKind, Key: "used", Chance: 0.6,
				Mean: 180, SD: 40},
			{Line: "a", Part: "cover", Kind: PartKind, Key: "new_maker", Chance: 0.4, Mean: 440, SD: 60}},
		Risks: []Risk{{ID: "rail", Base: 3.0 / 14, Chance: 3.0 / 14}}}
	return Build{ID: id, Name: "Lot", Currency: "USD", Ending: Sold, Closed: day(daysAgo), Foretold: p, Came: Came{
		Worked: []Worked{{Line: "a", Trade: "body", Hours: 8 * ratio}, {Line: "b", Trade: "paint", Hours: 6 * ratio}}}}
}

// day returns the date that many days before today, for up to ten years.
func day(ago int) lot.Date {
	for y := 2016; y <= 2026; y++ {
		for m := 1; m <= 12; m++ {
			for d := 1; d <= 28; d++ {
				at := lot.Date(date(y, m, d))
				if n, ok := at.Days(today); ok && n <= ago {
					return at
				}
			}
		}
	}
	return today
}

func date(y, m, d int) string {
	two := func(x int) string { return string([]byte{byte('0' + x/10), byte('0' + x%10)}) }
	return "20" + two(y-2000) + "-" + two(m) + "-" + two(d)
}

func find(t *testing.T, all []Proposal, key string) Proposal {
	t.Helper()
	i := slices.IndexFunc(all, func(p Proposal) bool { return p.Key == key })
	if i < 0 {
		t.Fatalf("no proposal %s", key)
	}
	return all[i]
}

func TestThreeBuysMoveLittleAndSayWhy(t *testing.T) {
	var few, many []Build
	for i := range 60 {
		many = append(many, built(int64(i), 1.5, 10*i))
	}
	few = many[:3]
	p, q := find(t, Propose(few, today, Factors{}, starter), "hours/body"), find(t, Propose(many, today, Factors{}, starter), "hours/body")
	if p.Proposed.At < 1.05 || p.Proposed.At > 1.3 || p.Pull > 0.75 || p.Alone == nil || math.Abs(*p.Alone-1.5*math.Exp(0.03)) > 0.05 {
		t.Errorf("three buys at 1.5 propose %.3f, pull %.2f, alone %v", p.Proposed.At, p.Pull, *p.Alone)
	}
	if q.Proposed.At < 1.4 || q.Pull < 0.8 || q.Proposed.High-q.Proposed.Low > p.Proposed.High-p.Proposed.Low {
		t.Errorf("sixty buys at 1.5 propose %.3f (%.3f to %.3f), pull %.2f", q.Proposed.At, q.Proposed.Low, q.Proposed.High, q.Pull)
	}
	if len(p.Evidence) != 3 || !strings.Contains(strings.Join(p.Why, " "), "of the way there from 1.00") {
		t.Errorf("why: %q", p.Why)
	}
	if *p.Proposed.Spread > 0.15 {
		t.Errorf("three buys that agree widen the range by %.2f", *p.Proposed.Spread)
	}
}

// What was accepted before is not learned twice: forecasts made with the factor in force, come true, leave it where it is.
func TestAnAcceptedFactorIsNotLearnedTwice(t *testing.T) {
	var before, after []Build
	for i := range 30 {
		before = append(before, built(int64(i), 1.4, 10*i))
		b := built(int64(i), 1.4, 10*i)
		b.Foretold.Factors = Factors{Hours: map[string]Ratio{"body": {Factor: 1.4}, "paint": {Factor: 1.4}}}
		for k := range b.Foretold.Items {
			if b.Foretold.Items[k].Kind == HoursKind {
				b.Foretold.Items[k].Mean *= 1.4
				b.Foretold.Items[k].SD *= 1.4
			}
		}
		after = append(after, b)
	}
	for _, key := range []string{"hours/body", "hours/paint"} {
		a, b := find(t, Propose(before, today, Factors{}, starter), key), find(t, Propose(after, today, after[0].Foretold.Factors, starter), key)
		near(t, key, b.Proposed.At, a.Proposed.At, 1e-9)
	}
}

func TestOldBuysFade(t *testing.T) {
	builds := []Build{built(1, 1.6, 3650), built(2, 0.9, 30)}
	p := find(t, Propose(builds, today, Factors{HalfLife: 365}, starter), "hours/body")
	near(t, "weight of the old one", p.Evidence[0].Weight, math.Exp2(-3650.0/365), 2e-4)
	if p.Proposed.At > 1 || p.Evidence[0].Build != 1 {
		t.Errorf("a ten year old buy still rules: %.3f, %+v", p.Proposed.At, p.Evidence)
	}
	slow := find(t, Propose(builds, today, Factors{HalfLife: 36500}, starter), "hours/body")
	if slow.Proposed.At < 1.02 {
		t.Errorf("with a long half-life both count: %.3f", slow.Proposed.At)
	}
}

func TestASlipOfThePenIsLeftOutByName(t *testing.T) {
	builds := []Build{built(1, 1.1, 30), built(2, 40, 60)}
	builds[1].Name = "Lot 77"
	p := find(t, Propose(builds, today, Factors{}, starter), "hours/body")
	if len(p.Evidence) != 1 || !strings.Contains(strings.Join(p.Why, " "), "Lot 77 is left out") {
		t.Errorf("evidence %v, why %q", p.Evidence, p.Why)
	}
}

// A trade without a buy of its own follows the others part of the way; a source's price is held against that source's own
// forecast, whatever the chance of having to buy there.
func TestPooling(t *testing.T) {
	var builds []Build
	for i := range 20 {
		b := built(int64(i), 1.5, 30*i)
		b.Came.Worked = b.Came.Worked[:1]
		b.Came.Worked[0].Line = "a"
		b.Came.Receipts = []Receipt{{Line: "a", Part: "cover", Kind: PartKind, Source: "used", Paid: 21600}}
		builds = append(builds, b)
	}
	all := Propose(builds, today, Factors{}, starter)
	body, paint := find(t, all, "hours/body"), find(t, all, "hours/paint")
	if len(paint.Evidence) != 0 || paint.Proposed.At <= 1.05 || paint.Proposed.At >= body.Proposed.At ||
		!strings.Contains(paint.Why[0], "follows") {
		t.Errorf("body %.3f, paint %.3f, %q", body.Proposed.At, paint.Proposed.At, paint.Why)
	}
	used := find(t, all, "parts/used")
	near(t, "used parts alone", *used.Alone, 1.2*math.Exp(math.Log1p(40.0*40/180/180)/2), 1e-9)
}

// A bill that may be for either of two parts, or for a part from a source that its line does not know, teaches no price.
func TestBillsThatTellNoPrice(t *testing.T) {
	b := built(1, 1, 10)
	b.Foretold.Items = append(b.Foretold.Items, Item{Line: "a", Part: "lamp", Kind: PartKind, Key: "used", Chance: 0.6, Mean: 90, SD: 20})
	b.Came.Receipts = []Receipt{{Line: "a", Kind: PartKind, Source: "used", Paid: 9000},
		{Line: "a", Part: "cover", Kind: PartKind, Source: "made", Paid: 100}}
	if got := b.spent(); len(got) != 0 {
		t.Errorf("learned %+v", got)
	}
	b.Came.Receipts[0].Part = "lamp"
	got := b.spent()
	if len(got) != 1 || got[0].key != "parts/used" || math.Abs(got[0].log-math.Log1p(20.0*20/90/90)/2) > 1e-9 {
		t.Errorf("a named part as forecast: %+v", got)
	}
}

func TestRisksLearnAndPool(t *testing.T) {
	var builds []Build
	for i := range 12 {
		b := built(int64(i), 1, 10)
		b.Came.Risks = map[string]Seen{"rail": Found, "leak": NotKnown}
		if i < 2 {
			b.Came.Risks["tower"] = NotThere
		}
		b.Came.Risks["unheard of"] = Found
		builds = append(builds, b)
	}
	all := Propose(builds, today, Factors{}, starter)
	rail, tower := find(t, all, "risk/rail"), find(t, all, "risk/tower")
	if rail.Proposed.At < 0.5 || len(rail.Evidence) != 12 {
		t.Errorf("found on twelve of twelve: %.2f", rail.Proposed.At)
	}
	alone := 2.0 / 14
	if tower.Proposed.At <= alone || !strings.Contains(strings.Join(tower.Why, " "), "Similar damage") {
		t.Errorf("similar damage is found more often, yet the tower goes to %.3f: %q", tower.Proposed.At, tower.Why)
	}
	if slices.ContainsFunc(all, func(p Proposal) bool { return p.Key == "risk/leak" || p.Key == "risk/unheard of" }) {
		t.Error("a proposal rests on nothing that is known")
	}
}

func TestSalesTeachBiasAskingAndDays(t *testing.T) {
	var builds []Build
	for i := range 40 {
		b := built(int64(i), 1, 10)
		price, asked, days := money.Amount(1_080_000), money.Amount(1_200_000), 60.0
		b.Came.Sale, b.Came.Days.Sell = &Sale{Price: price, Asked: &asked, Brand: "rebuilt"}, &days
		builds = append(builds, b)
	}
	builds[0].Came.Sale = &Sale{Price: 1, Brand: "rebuilt"}
	builds[1].Came.Sale.Brand = "clear" // not what was foretold: no evidence
	all := Propose(builds, today, Factors{}, starter)
	resale, asked, days := find(t, all, "resale"), find(t, all, "asked_to_sold"), find(t, all, "days_to_sell")
	if len(resale.Evidence) != 38 || math.Abs(resale.Proposed.At-0.9) > 0.02 || *resale.Proposed.Spread > 1 {
		t.Errorf("resale %.3f, spread %.2f from %d", resale.Proposed.At, *resale.Proposed.Spread, len(resale.Evidence))
	}
	if asked.Proposed.At > 0.97 || asked.Proposed.At < 0.9/0.95 || days.Proposed.At < 1.8 {
		t.Errorf("asked to sold %.3f, days %.2f", asked.Proposed.At, days.Proposed.At)
	}
	f := Factors{}
	for _, p := range all {
		f = Apply(f, p)
	}
	if f.Resale.From != 38 || f.DaysToSell.Factor != days.Proposed.At || f.AskedToSold.When != today || len(f.Hours) != 2 {
		t.Errorf("applied: %+v", f)
	}
}

// The winner's allowance is taken off before a ratio is learned: a forecast that knew of the curse does not learn it again.
func TestTheAllowanceIsNotLearnedTwice(t *testing.T) {
	b := built(1, 1, 10)
	b.Foretold.Terms.ResaleAllow, b.Foretold.Terms.SellPercent = 855, 0.05
	b.Came.Sale = &Sale{Price: 1_110_000}
	f, ok := b.sale(Factors{})
	if !ok {
		t.Fatal("no evidence")
	}
	near(t, "log", f.log, 0, 1e-12)
	b.Foretold.Cost, b.Foretold.Terms.CostAllow = Figure{Mean: 1000}, 100
	free := built(1, 1, 10)
	near(t, "hours", b.hours()[0].log, free.hours()[0].log-math.Log(1.1), 1e-12)
}

// Open builds, another's lots and builds without a forecast speak only of what they can.
func TestWhoSpeaks(t *testing.T) {
	open, theirs, bare := built(1, 3, 10), built(2, 3, 10), built(3, 3, 10)
	open.Ending, theirs.Ending, bare.Foretold = Open, LostTo, nil
	open.Came.Risks, theirs.Came.Risks, bare.Came.Risks = map[string]Seen{"rail": Found}, map[string]Seen{"rail": Found},
		map[string]Seen{"rail": NotThere}
	all := Propose([]Build{open, theirs, bare}, today, Factors{}, starter)
	if len(all) != 1 || all[0].Key != "risk/rail" || len(all[0].Evidence) != 2 {
		t.Errorf("proposals %+v", all)
	}
	if got := Propose(nil, today, Factors{}, starter); got != nil {
		t.Errorf("no buys propose %v", got)
	}
}
