package wire_test

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// soldThen is a comparable that sold at 10,000 under a rebuilt title, a twin of the past buy.
func soldThen(day lot.Date) resale.Row {
	miles := 60000.0
	return resale.Row{Price: money.Amount(1_000_000), Kind: "sold", Date: day, ModelYear: 2018, Make: "Kettrick", Model: "Dunlin",
		Mileage: &miles,
		Unit:    "mi", Title: "rebuilt"}
}

// imported imports one past buy beside comparables of those days.
func imported(t *testing.T, buy string, days ...lot.Date) (*desk.Desk, desk.State) {
	t.Helper()
	ctx := context.Background()
	d, _ := open(t)
	s := d.Do(ctx, d.Load(ctx), desk.Go(desk.Builds))
	for i, day := range days {
		r := soldThen(day)
		r.ID = fmt.Sprint(i)
		s = d.Do(ctx, s, desk.AddComparable(r))
	}
	sheet, err := d.OpenPast(ctx, []byte("id,model_year,make,model,odometer,bought,sold,price_paid,sold_for,brand,damage\n"+buy+"\n"),
		desk.Opening{Currency: "USD"})
	if err != nil {
		t.Fatal(err)
	}
	e, err := d.TakePast(ctx, s, sheet)
	if s = d.PastArrived(ctx, s, e, err); len(s.Bought) != 1 {
		t.Fatalf("%q %q %+v", s.Notice, s.Trouble, e.Refused)
	}
	return d, s
}

// teachingPrice returns what is proposed for the resale price then, nil for nothing.
func teachingPrice(t *testing.T, buy string, days ...lot.Date) *learn.Proposal {
	t.Helper()
	d, s := imported(t, buy, days...)
	r, err := d.Learn(t.Context(), s.Bought)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range r.Proposals {
		if p.Key == "resale" {
			return &p
		}
	}
	return nil
}

// An imported buy is replayed where its damage is known and the shelf had prices before it was bought; those from after would know the end.
func TestAnImportedBuyIsReplayedByThePricesBeforeIt(t *testing.T) {
	const buy = "1,2018,Kettrick,Dunlin,60000 mi,2025-03-01,2025-06-10,4200,12000,rebuilt,front"
	for _, c := range []struct {
		buy, day string
		replayed bool
	}{{buy, "2025-02-01", true}, {buy, "2025-03-02", false}, {strings.TrimSuffix(buy, "front"), "2025-02-01", false}} {
		d, s := imported(t, c.buy, slices.Repeat([]lot.Date{lot.Date(c.day)}, 12)...)
		r, err := d.Again(t.Context(), s.Bought, learn.Factors{}, "USD", func(float64, string) {})
		if err != nil || len(r.Lots) != 1 || len(r.Doubts) > 0 {
			t.Fatalf("%+v %v", r, err)
		}
		if got := r.Lots[0].Verdict; (got != valuation.NotReplayed) != c.replayed {
			t.Errorf("prices of %s, %s: %s", c.day, c.buy, got)
		}
	}
}

// A past buy that sold at 12,000 while its twins sold at 10,000 says 1.2, at the weight of a guess; where the shelf held too few prices
// then, or too little is known of the vehicle, it says nothing of prices.
func TestAPastBuyTeachesItsPriceAgainstTheShelfOfItsTime(t *testing.T) {
	const buy = "1,2018,Kettrick,Dunlin,60000 mi,2025-03-01,2025-06-10,4200,12000,rebuilt,"
	of := func(n int, day string) []lot.Date { return slices.Repeat([]lot.Date{lot.Date(day)}, n) }
	p := teachingPrice(t, buy, of(12, "2025-03-01")...)
	if p == nil || len(p.Evidence) != 1 || math.Abs(p.Evidence[0].Says-1.2) > 0.05 || p.Evidence[0].Weight > 0.4 ||
		p.Proposed.At <= 1 || p.Proposed.At > 1.03 {
		t.Fatalf("%+v", p)
	}
	for why, q := range map[string]*learn.Proposal{
		"four prices":             teachingPrice(t, buy, of(4, "2025-03-01")...),
		"prices of after":         teachingPrice(t, buy, of(12, "2025-06-11")...),
		"prices of two years ago": teachingPrice(t, buy, of(12, "2023-06-01")...),
		"prices without a day":    teachingPrice(t, buy, of(12, "")...),
		"no odometer":             teachingPrice(t, strings.Replace(buy, "60000 mi", "", 1), of(12, "2025-03-01")...),
		"not the mileage":         teachingPrice(t, strings.Replace(buy, "60000 mi", "60000 mi (not actual)", 1), of(12, "2025-03-01")...),
		"no brand":                teachingPrice(t, strings.Replace(buy, ",rebuilt,", ",,", 1), of(12, "2025-03-01")...),
	} {
		if q != nil {
			t.Errorf("%s: %+v", why, q)
		}
	}
}

// Before the import each row says what it teaches and what it can't, and why.
func TestEachRowSaysWhatItTeaches(t *testing.T) {
	d, _ := open(t)
	head := "id,model_year,make,model,odometer,damage,sold,sold_for,brand,first_asked,hours_body,found,days_on_market,outcome\n"
	for row, want := range map[string]string{
		"1,2018,Kettrick,Dunlin,60000 mi,front,2025-06-10,12000,rebuilt,12500,20,mount_torn,30,": "asked to sold, damage found, hours and " +
			"costs, " +
			"against today's first guess, days to sell, resale price, if the shelf has 5 prices of the model from the year before the sale",
		"2,2018,Kettrick,Dunlin,,,2025-06-10,12000,,,20,,,": "nothing; not: asked to sold (needs first asked and sold for), damage found " +
			"(needs " +
			"found or not there), hours and costs (no damage given), resale price (needs year, make, model, odometer, sold, sold for and brand)",
		"3,2018,Kettrick,Dunlin,,front,,,,,,mount_torn,,parted out": "damage found; not: asked to sold (needs first asked and sold for), " +
			"hours, costs, days, resale price (not finished and sold)",
		"4,2018,Kettrick,Dunlin,,front,,,,,,,,": "nothing until it has ended",
	} {
		sheet, err := d.OpenPast(t.Context(), []byte(head+row+"\n"), desk.Opening{Currency: "USD"})
		if err != nil {
			t.Fatal(err)
		}
		p, err := d.Past.Preview(sheet)
		if err != nil || len(p.Teaches) != 1 {
			t.Fatalf("%+v %v", p, err)
		}
		if want = "Line 2 teaches " + want + "."; p.Teaches[0] != want {
			t.Errorf("%s\n says %q\nwanted %q", row, p.Teaches[0], want)
		}
	}
}
