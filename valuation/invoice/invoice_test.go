package invoice_test

import (
	"testing"

	"github.com/shopspring/decimal"

	"walkline/valuation/invoice"
	"walkline/valuation/money"
)

func dec(s string) decimal.Decimal { return decimal.RequireFromString(s) }

func usd(t *testing.T, s string) money.Amount {
	t.Helper()
	c, _ := money.Lookup("USD")
	a, err := c.Parse(s)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func amount(a money.Amount) *money.Amount { return &a }

// schedule has a flat row, a flat-and-rate row and a rate with a minimum: it jumps at 1000 and falls at 5000.
func schedule(mode string) invoice.Schedule {
	return invoice.Schedule{Name: "Buyer's fee", Mode: mode, Rows: []invoice.Row{
		{From: 0, Flat: 10000},
		{From: 100000, Flat: 15000, Percent: dec("0.02")},
		{From: 500000, Percent: dec("0.04"), Minimum: amount(20000)},
	}}
}

// Worked by hand from the two readings of a schedule (model.md section 1).
func TestTwoReadingsOfASchedule(t *testing.T) {
	c, _ := money.Lookup("USD")
	for _, w := range []struct{ mode, hammer, fee string }{
		{"whole", "999.99", "100.00"},
		{"whole", "1000.00", "170.00"}, // 150 + 2 % of 1000
		{"whole", "4999.00", "249.98"}, // 150 + 99.98
		{"whole", "5000.00", "200.00"}, // 4 % of 5000: falls by 49.98
		{"whole", "5001.25", "200.05"},
		{"slice", "999.99", "100.00"},
		{"slice", "1500.00", "260.00"},  // 100 + 150 + 2 % of 500
		{"slice", "5000.00", "530.00"},  // 100 + 150 + 80, then the minimum 200 of a slice of nothing
		{"slice", "15000.00", "730.00"}, // ... + 4 % of 10000
	} {
		terms := invoice.Terms{Fees: []invoice.Schedule{schedule(w.mode)}, Tax: invoice.Tax{Base: "hammer"}}
		inv := terms.Total(usd(t, w.hammer), c)
		if got := c.Text(inv.Lines[1].Amount); got != w.fee {
			t.Errorf("%s at %s: fee %s, want %s", w.mode, w.hammer, got, w.fee)
		}
	}
}

// Worked by hand: every line is rounded half up once, and the lines add up.
func TestTaxAndSurchargeRoundOnce(t *testing.T) {
	c, _ := money.Lookup("USD")
	terms := invoice.Terms{
		Fees:      []invoice.Schedule{{Name: "Buyer's fee", Mode: "whole", Rows: []invoice.Row{{Percent: dec("0.0333")}}}},
		Fixed:     []invoice.Fixed{{Name: "Gate", Amount: 7550}},
		Tax:       invoice.Tax{Rate: dec("0.0625"), Base: "hammer_and_fees"},
		Surcharge: dec("0.015"),
	}
	inv := terms.Total(usd(t, "1234.50"), c)
	want := map[string]string{"Hammer price": "1234.50", "Buyer's fee": "41.11", "Gate": "75.50",
		"Sales tax": "84.44", "Payment surcharge": "21.53"} // .0625 x 1351.11 = 84.444; .015 x 1435.55 = 21.533
	var sum money.Amount
	for _, l := range inv.Lines {
		sum += l.Amount
		if c.Text(l.Amount) != want[l.Name] {
			t.Errorf("%s = %s, want %s", l.Name, c.Text(l.Amount), want[l.Name])
		}
	}
	if sum != inv.Total {
		t.Errorf("lines add up to %d, total %d", sum, inv.Total)
	}
}

// Source: ISO 4217 table A.1: JPY has no minor unit, KWD has three digits. 2.5 rounds half up to 3, 0.125 to 0.13.
func TestRoundingFollowsTheMinorUnit(t *testing.T) {
	for _, w := range []struct {
		code, hammer, rate, tax string
	}{{"JPY", "250", "0.01", "3"}, {"KWD", "2.500", "0.0001", "0.000"}, {"KWD", "5.000", "0.0001", "0.001"},
		{"USD", "12.50", "0.01", "0.13"}} {
		c, ok := money.Lookup(w.code)
		if !ok {
			t.Fatal(w.code)
		}
		h, err := c.Parse(w.hammer)
		if err != nil {
			t.Fatal(err)
		}
		inv := invoice.Terms{Tax: invoice.Tax{Rate: dec(w.rate), Base: "hammer"}}.Total(h, c)
		if got := c.Text(inv.Lines[1].Amount); got != w.tax {
			t.Errorf("%s: %s of %s = %s, want %s", w.code, w.rate, w.hammer, got, w.tax)
		}
	}
}

func TestLadderTakesTheStepOfTheTierInWhichTheBidStands(t *testing.T) {
	steps := []invoice.Step{{From: 0, Step: 300}, {From: 1000, Step: 500}}
	bids := walked(steps, 2300)
	want := []money.Amount{300, 600, 900, 1200, 1700, 2200} // 900 stands below 1000, so its step is 300
	if len(bids) != len(want) {
		t.Fatalf("got %v", bids)
	}
	for i := range want {
		if bids[i] != want[i] {
			t.Fatalf("got %v, want %v", bids, want)
		}
		if i > 0 && invoice.Next(steps, bids[i-1]) != bids[i] {
			t.Errorf("Next(%d) = %d", bids[i-1], invoice.Next(steps, bids[i-1]))
		}
	}
}

func TestFaultsAreAllNamed(t *testing.T) {
	c, _ := money.Lookup("USD")
	bad := invoice.Terms{
		Fees: []invoice.Schedule{{Mode: "half", Rows: []invoice.Row{{From: 5, Flat: -1},
			{From: 5, Percent: dec("15"), Minimum: amount(9), Maximum: amount(3)}}}},
		Fixed:     []invoice.Fixed{{Amount: -1}},
		Surcharge: dec("-0.1"), Tax: invoice.Tax{Rate: dec("2"), Base: "all"},
	}
	if fs := bad.Check(c); len(fs) != 9 {
		t.Errorf("%d faults: %v", len(fs), fs)
	}
	if fs := invoice.CheckSteps([]invoice.Step{{From: 1, Step: 0}, {From: 1, Step: 5}}, c); len(fs) != 3 {
		t.Errorf("%d faults: %v", len(fs), fs)
	}
}

// FuzzTotal: the lines add up, each fee stays within its bounds, and a fee is never negative.
func FuzzTotal(f *testing.F) {
	f.Add(int64(123456), int64(10000), int64(333), int64(500), int64(625), "slice")
	f.Fuzz(func(t *testing.T, hammer, from, percent, minimum, tax int64, mode string) {
		c, _ := money.Lookup("USD")
		terms := invoice.Terms{
			Fees: []invoice.Schedule{{Name: "f", Mode: mode, Rows: []invoice.Row{{},
				{From: money.Amount(from), Percent: decimal.New(percent, -4), Minimum: amount(money.Amount(minimum))}}}},
			Tax: invoice.Tax{Rate: decimal.New(tax, -4), Base: "hammer_and_fees"},
		}
		if hammer < 0 || hammer > 1<<45 || len(terms.Check(c)) > 0 {
			return // refused before it gets here
		}
		inv := terms.Total(money.Amount(hammer), c)
		var sum money.Amount
		for _, l := range inv.Lines {
			if l.Amount < 0 {
				t.Errorf("%s = %d", l.Name, l.Amount)
			}
			sum += l.Amount
		}
		if sum != inv.Total || inv.Total < money.Amount(hammer) {
			t.Errorf("lines %d, total %d, hammer %d", sum, inv.Total, hammer)
		}
	})
}
