package valuation_test

import (
	"testing"

	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/hindsight"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// diary is a finished and sold build of the demo lot with a few bills.
func diary(t *testing.T) valuation.Past {
	t.Helper()
	c := demoLot(t)
	p, err := valuation.Foretell(c, shipped(t), nil)
	if err != nil {
		t.Fatal(err)
	}
	part := p.Items[0]
	return valuation.Past{ID: 9, Currency: "USD", State: lot.Won, SaleDate: "2026-03-01", Foretold: &p, Build: build.Build{
		Outcome: build.Sold, Hammer: usd(3000), Dates: build.Dates{Home: "2026-03-04", Finished: "2026-04-01", Listed: "2026-04-10",
			Sold: "2026-05-01"},
		Sale: build.Sale{Price: usd(11000), FirstAsked: usd(11500), Brand: "rebuilt"},
		Receipts: []build.Receipt{{Kind: "part", Line: part.Line, What: " " + part.Part, Source: "used", Amount: 15000},
			{Kind: "part", Line: part.Line, What: part.Part, Source: "used", Amount: -2000},
			{Kind: "materials", Line: "radiator_leak", Amount: 9000}, {Kind: "other", Amount: 700}, {Kind: "freight", Amount: 20000}},
		Hours: []build.Work{{Trade: "body", Line: part.Line, Hours: 3}, {Trade: "mechanical", Line: "radiator_leak", Hours: 2}},
		Risks: []build.Seen{{Risk: "radiator_leak", State: build.Found}}}}
}

// Source: added up by hand.
func TestADiaryIsReadForLearning(t *testing.T) {
	p := diary(t)
	b := p.Learned()
	c := b.Came
	if len(c.Receipts) != 2 || c.Receipts[0].Paid != 13000 || c.Receipts[0].Part != p.Foretold.Items[0].Part ||
		c.Receipts[1].Kind != learn.HiddenKind || c.Receipts[1].Risk != "radiator_leak" {
		t.Errorf("receipts %+v", c.Receipts)
	}
	if *c.Repair != 13700 || *c.Hidden != 9000 || *c.Freight != 20000 || *c.Storage != 0 || *c.Selling != 0 || *c.Hours != 5 ||
		c.Holding != nil {
		t.Errorf("sums %+v", c)
	}
	cur, _ := money.Lookup("USD")
	if want := demoLot(t).Buying.Total(300000, cur).Total - 300000; *c.Fees != want {
		t.Errorf("fees %d, want those of the terms, %d", *c.Fees, want)
	}
	if *c.Days.Fetch != 3 || *c.Days.Repair != 28 || c.Days.Inspect != nil || *c.Days.Sell != 21 || *c.Days.All != 61 ||
		b.Closed != "2026-05-01" {
		t.Errorf("days %+v, closed %s", c.Days, b.Closed)
	}
	if b.Ending != learn.Sold || c.Risks["radiator_leak"] != learn.Found || c.Worked[1].Risk != "radiator_leak" || hindsight.Made(b) == nil {
		t.Errorf("ending %s, risks %v", b.Ending, c.Risks)
	}
	if faults := learn.Propose([]learn.Build{b}, "2026-11-20", learn.Factors{}, shipped(t).Starter()); len(faults) < 5 {
		t.Errorf("a whole diary gives only %d proposals", len(faults))
	}
}

// A past buy that came from a table counts for what the table says; a build under way for nothing but its finds.
func TestWhatADiaryDoesNotSayIsUnknown(t *testing.T) {
	p := diary(t)
	p.Build.Imported.As = "row 3"
	if c := p.Learned().Came; c.Storage != nil || *c.Freight != 20000 || c.Selling != nil {
		t.Errorf("a table that is silent says %+v", c)
	}
	p = diary(t)
	p.Build.Outcome, p.Build.Dates.Sold = build.Open, ""
	if b := p.Learned(); b.Ending != learn.Open || b.Closed != "" || b.Came.Days.All != nil || b.Came.Storage != nil {
		t.Errorf("an open build says %+v", b)
	}
	p.State = lot.Lost
	if b := p.Learned(); b.Ending != learn.LostTo || *b.Hammer != 300000 {
		t.Errorf("another's lot says %+v", b)
	}
}

// A forecast is judged at the price that was paid, as a fresh forecast at that price would be; the frozen one stays.
func TestForecastsAreJudgedAtTheHammerPrice(t *testing.T) {
	p := diary(t)
	walk := p.Foretold.At
	fresh, err := valuation.Foretell(demoLot(t), shipped(t), p.Build.Hammer)
	if err != nil {
		t.Fatal(err)
	}
	r := hindsight.Judge([]learn.Build{p.Learned()}, "USD")
	if len(r.Money.Buys) != 1 {
		t.Fatalf("left out: %v", r.LeftOut)
	}
	if d := r.Money.Foretold - fresh.Money.Profit(*p.Build.Hammer); d < -2 || d > 2 {
		t.Errorf("forecast %d, a fresh forecast %d", r.Money.Foretold, fresh.Money.Profit(*p.Build.Hammer))
	}
	if d := r.Losses.Bins[0].Said - fresh.LossChance; d < -0.01 || d > 0.01 {
		t.Errorf("chance of a loss %g, a fresh forecast %g", r.Losses.Bins[0].Said, fresh.LossChance)
	}
	if p.Foretold.At != walk {
		t.Error("judging changed the frozen forecast")
	}
}
