package view_test

import (
	"slices"
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/valuation/money"
)

func TestOddsAtTheBidAndPastIt(t *testing.T) {
	o := weighed(t)
	walk := *o.Valued.Answer.WalkAway
	at, ok := view.NewOdds(o, view.OddsAsked(o))
	if !ok || at.Bid != walk || !at.Holds || at.Verdict != "Every house rule holds at this bid." || at.Doubt != "" || len(at.Rules) != 3 ||
		at.Limits[0] != (view.BidLimit{Bid: walk, Name: "walk-away bid", Strong: true}) || len(at.Limits) != 3 {
		t.Errorf("%+v", at)
	}
	if cells := at.Rules[0].Cells; cells[0] != "Least expected profit" || cells[1] != "at least 1,000" || cells[3] != "holds" ||
		cells[2] != at.Figures[0][1] {
		t.Errorf("%q", cells)
	}
	o.Asked = walk + 2500
	past, _ := view.NewOdds(o, view.OddsAsked(o))
	if past.Holds || !strings.HasPrefix(past.Verdict, "This bid breaks 1 house rule") || past.Bid <= past.Limits[0].Bid {
		t.Errorf("%+v", past)
	}
	if n := slices.IndexFunc(past.Rules, func(r view.RuleRow) bool { return !r.Holds }); n != 0 || past.Rules[n].Cells[3] != "fails" {
		t.Errorf("%+v", past.Rules)
	}
}

// Every rule shows the figure that it judges.
func TestEveryRuleShowsItsFigure(t *testing.T) {
	o := weighed(t)
	c := o.Case.Clone()
	c.Rules.MinMargin, c.Rules.MaxWorstTenthLoss, c.Rules.MinPerHour, c.Rules.MaxCash = fraction(.01), usd(9000), usd(5), usd(90000)
	v, err := (&desk.Desk{}).Value(t.Context(), c)
	if err != nil {
		t.Fatal(err)
	}
	o.Valued = &v
	at, _ := view.NewOdds(o, 100000)
	if len(at.Rules) != 7 {
		t.Fatalf("%+v", at.Rules)
	}
	for i, unit := range []string{"", " %", " %", "", "", "", " days"} {
		if cell := at.Rules[i].Cells[2]; cell == "" || !strings.HasSuffix(cell, unit) {
			t.Errorf("%q", at.Rules[i].Cells)
		}
	}
	if out := at.Rules[5].Cells[2]; out == at.Rules[0].Cells[2] || len(out) < 5 {
		t.Errorf("cash tied up reads %q", out)
	}
}

func TestABidThatTheSaleDoesNotTake(t *testing.T) {
	o := weighed(t)
	for bid, want := range map[money.Amount]string{131000: "Not a bid of this sale: it takes 1,300 or 1,325.",
		1000: "Below the lowest bid of this sale, 25.", 2500: ""} {
		if at, _ := view.NewOdds(o, bid); at.Doubt != want {
			t.Errorf("%d: %q, want %q", bid, at.Doubt, want)
		}
	}
	steps := o.Case.Buying.BidSteps
	for _, c := range []struct {
		from money.Amount
		by   int
		want money.Amount
	}{{5000, 2, 10000}, {5000, -1, 2500}, {5000, -9, 2500}, {5100, 1, 7500}, {5100, -1, 5000}} {
		if got := view.Stepped(steps, c.from, c.by); got != c.want {
			t.Errorf("%d steps from %d: %d", c.by, c.from, got)
		}
	}
}

// The bids that a key leads to are those of the sale, none below its lowest.
func TestTheBidsAround(t *testing.T) {
	steps := weighed(t).Case.Buying.BidSteps
	if got := view.Around(view.NewPurse("USD"), steps, 7500); !slices.Equal(got[:4], []float64{25, 50, 75, 100}) || len(got) != 13 {
		t.Errorf("%v", got)
	}
}

// Half of the prices lie on either side of the middle one, and the chance of more falls all the way.
func TestThePriceInChances(t *testing.T) {
	v := weighed(t).Valued
	points := view.PriceChances(v)
	for i, p := range points[1:] {
		if before := points[i]; p.Price <= before.Price || p.Chance > before.Chance {
			t.Errorf("%+v follows %+v", p, before)
		}
		middle := v.Answer.Resale.P50
		if p.Price < middle && p.Chance < .497 || points[i].Price > middle && p.Chance > .503 {
			t.Errorf("%+v with the middle at %g", p, v.Answer.Resale.P50)
		}
	}
}

func TestNoOddsWithoutAValuation(t *testing.T) {
	if _, known := view.NewOdds(desk.Open{}, 100); known || view.OddsAsked(desk.Open{}) != 0 || view.Along(nil) != nil ||
		view.PriceChances(nil) != nil {
		t.Error("odds of nothing are known")
	}
	if got := view.Along(weighed(t).Valued); len(got) < 20 {
		t.Errorf("%d bids", len(got))
	}
}
