package build_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// By hand: bought at 3,000 with 200 of charges in 2025, 500 of bills and 10 h at 40, sold for 5,000 after 100 days in 2026: 900 are left,
// less 100 days of 36.5 % a year on 3,200 where that is known: 320.
func TestAYearAddsUp(t *testing.T) {
	hammer, price := money.Amount(300000), money.Amount(500000)
	sold := build.Build{Outcome: build.Sold, Hammer: &hammer, Charges: []build.Charge{{Amount: 20000}}, Sale: build.Sale{Price: &price},
		Dates: build.Dates{Bought: "2025-12-01", Sold: "2026-03-11"}, Receipts: []build.Receipt{{Kind: "part", Amount: 50000}},
		Hours: []build.Work{{Trade: "body", Hours: 10}}}
	rates := map[string]float64{"body": 40}
	said := &build.Said{Capital: 0.365}
	nothing := build.Build{Outcome: build.Sold, Dates: build.Dates{Bought: "2026-02-01", Sold: "2026-04-01"}}
	open := build.Build{Outcome: build.Open, Hammer: &hammer, Dates: build.Dates{Bought: "2026-05-01"}}
	got := build.Years([]build.Account{{sold, "USD", "collision", rates, "", nil},
		{nothing, "USD", "hail", rates, "", said}, {open, "USD", "collision", nil, "", nil},
		{sold, "CAD", "collision", rates, "", said}})
	var words []string
	for _, y := range got {
		hour, _ := y.PerHour()
		day, _ := y.PerDay()
		words = append(words, fmt.Sprintf("%d %s%v bought %d for %.0f, sold %d (%d unknown) for %.0f: %.0f, %.0f an hour, %.1f a day, %.0f "+
			"tied up (%d unknown)", y.Year,
			y.Kind, y.All, y.Bought, y.Paid, y.Sold, y.Unknown, y.Brought, y.Profit, hour, day,
			y.Tied, y.Untied))
	}
	want := []string{"2026 true bought 0 for 0, sold 1 (0 unknown) for 5000: 580, 98 an hour, 5.8 a day, 320 tied up (0 unknown)",
		"2026 collisionfalse bought 0 for 0, sold 1 (0 unknown) for 5000: 580, 98 an hour, 5.8 a day, 320 tied up (0 unknown)",
		"2026 true bought 2 for 3000, sold 2 (1 unknown) for 5000: 900, 130 an hour, 9.0 a day, 0 tied up (1 unknown)",
		"2026 collisionfalse bought 1 for 3000, sold 1 (0 unknown) for 5000: 900, 130 an hour, 9.0 a day, 0 tied up (1 unknown)",
		"2026 hailfalse bought 1 for 0, sold 1 (1 unknown) for 0: 0, NaN an hour, NaN a day, 0 tied up (0 unknown)",
		"2025 true bought 1 for 3200, sold 0 (0 unknown) for 0: 0, NaN an hour, NaN a day, 0 tied up (0 unknown)",
		"2025 collisionfalse bought 1 for 3200, sold 0 (0 unknown) for 0: 0, NaN an hour, NaN a day, 0 tied up (0 unknown)",
		"2025 true bought 1 for 3200, sold 0 (0 unknown) for 0: 0, NaN an hour, NaN a day, 0 tied up (0 unknown)",
		"2025 collisionfalse bought 1 for 3200, sold 0 (0 unknown) for 0: 0, NaN an hour, NaN a day, 0 tied up (0 unknown)"}
	if fmt.Sprint(words) != fmt.Sprint(want) {
		t.Errorf("got\n%q\nwant\n%q", words, want)
	}
}

// BenchmarkYears adds 2,000 builds of 12 bills each up; the ratio is to a tenth of a second.
func BenchmarkYears(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 2))
	var list []build.Account
	for i := range 2000 {
		hammer, price := money.Amount(r.IntN(900000)), money.Amount(r.IntN(1500000))
		one := build.Build{Outcome: build.Sold, Hammer: &hammer, Sale: build.Sale{Price: &price},
			Dates: build.Dates{Bought: lot.Date(fmt.Sprintf("%d-01-02", 2006+i%20)), Sold: lot.Date(fmt.Sprintf("%d-06-02", 2006+i%20))}}
		for range 12 {
			one.Receipts = append(one.Receipts, build.Receipt{Kind: "part", Amount: money.Amount(r.IntN(50000))})
		}
		list = append(list, build.Account{Build: one, Currency: "USD", Kind: []string{"collision", "hail", "flood"}[i%3]})
	}
	for b.Loop() {
		if got := build.Years(list); len(got) != 80 {
			b.Fatal(len(got))
		}
	}
	b.ReportMetric(b.Elapsed().Seconds()/float64(b.N)/0.1, "x_100ms")
}
