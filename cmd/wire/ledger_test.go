package wire

import (
	"encoding/csv"
	"strconv"
	"strings"
	"testing"

	"walkline/store/book"
	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

func TestTheLedgerHoldsEveryEntryByDayAndDefused(t *testing.T) {
	hammer, price := money.Amount(300050), money.Amount(500000)
	b := book.Bought{State: lot.Won, Number: "14", Sale: "Harrow Flats yard", Make: "Ostrane", Currency: "USD", Loss: []string{"hail"},
		Build: build.Build{Outcome: build.Sold, Hammer: &hammer, Charges: []build.Charge{{Name: "Gate", Amount: 7500}},
			Dates: build.Dates{Bought: "2026-01-10", Sold: "2026-05-01"}, Sale: build.Sale{Price: &price},
			Receipts: []build.Receipt{{Date: "2026-02-01", Kind: "part", What: "=1+1", Seller: "Quay", Number: "A 17", Amount: -1250, File: "a.pdf",
				Hash: "x"}}, Hours: []build.Work{{Date: "2026-01-20", Trade: "body", Hours: 2.5}}}}
	lines := strings.Split(strings.TrimSpace(string(Press{}.Ledger([]book.Bought{b, {State: lot.Lost, Currency: "USD"}}))), "\r\n")
	if len(lines) == 1 {
		lines = strings.Split(lines[0], "\n")
	}
	for i, want := range []string{"money_out", "2026-01-10,14,Ostrane,,hail,purchase", "charge,,Gate,Harrow Flats yard,,75", "hours,body",
		"A 17,",
		"2026-05-01,14,Ostrane,,hail,sale,,sold,,,,5000"} {
		if len(lines) != 6 || !strings.Contains(lines[i], want) {
			t.Fatalf("line %d lacks %q: %q", i, want, lines)
		}
	}
	if strings.Contains(lines[4], ",=1+1") {
		t.Errorf("a formula is left: %q", lines[4])
	}
}

// The entries, read as any other program reads CSV, come to what the totals of their years say; years and sums by hand: bought for
// 3,000.50 and 75 in 2026, once more for 1,000 in 2027, one sold for 5,000 in 2027.
func TestTheEntriesComeToTheTotalsOfTheirYears(t *testing.T) {
	hammer, second, price := money.Amount(300050), money.Amount(100000), money.Amount(500000)
	list := []book.Bought{{State: lot.Won, Number: "14", Currency: "USD", Build: build.Build{Outcome: build.Sold, Hammer: &hammer,
		Charges: []build.Charge{{Name: "Gate", Amount: 7500}}, Dates: build.Dates{Bought: "2026-11-10", Sold: "2027-02-01"},
		Sale: build.Sale{Price: &price}, Hours: []build.Work{{Date: "2026-12-01", Trade: "body", Hours: 2.5}}}},
		{State: lot.Won, Number: "15, with a \"quote\"", Currency: "USD", Build: build.Build{Outcome: build.Open, Hammer: &second,
			Dates: build.Dates{Bought: "2027-01-05"}}}}
	rows, err := csv.NewReader(strings.NewReader(string(Press{}.Ledger(list)))).ReadAll()
	if err != nil || len(rows) != 6 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	usd, _ := money.Lookup("USD")
	column := map[string]int{}
	for i, name := range rows[0] {
		column[name] = i
	}
	sums := map[string]money.Amount{}
	for _, r := range rows[1:] {
		for _, way := range []string{"money_out", "money_in"} {
			if a, err := usd.Parse(r[column[way]]); err == nil {
				sums[r[column["date"]][:4]+" "+way] += a
			}
		}
	}
	var accounts []build.Account
	for _, b := range list {
		accounts = append(accounts, build.Account{Build: b.Build, Currency: b.Currency})
	}
	want := map[int][2]float64{2026: {3075.50, 0}, 2027: {1000, 5000}}
	for _, y := range build.Years(accounts) {
		year := strconv.Itoa(y.Year)
		got := [2]float64{usd.Major(sums[year+" money_out"]), usd.Major(sums[year+" money_in"])}
		if said := [2]float64{y.Paid, y.Brought}; y.All && (got != want[y.Year] || said != got) {
			t.Errorf("%d: the entries come to %v, the totals say %v", y.Year, got, said)
		}
	}
}
