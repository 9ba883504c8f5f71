package wire

import (
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
