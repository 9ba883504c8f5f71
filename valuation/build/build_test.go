package build_test

import (
	"strings"
	"testing"

	"walkline/valuation/build"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
)

func sample() build.Build {
	hammer := money.Amount(420000)
	return build.Build{Hammer: &hammer,
		Receipts: []build.Receipt{
			{Kind: "part", Line: "r1", What: "Bumper cover", Amount: 18050}, {Kind: "materials", Line: "r1", Amount: 2500},
			{Kind: "part", Line: "r2", What: "core", Amount: -4000}, {Kind: "freight", Amount: 21000}},
		Hours: []build.Work{{Trade: "body", Line: "r1", Hours: 3}, {Trade: "body", Line: "r2", Hours: 1.5},
			{Trade: "paint", Line: "r1", Hours: 4}}}
}

// Source: added up by hand.
func TestSumsByLineKindAndTrade(t *testing.T) {
	b := sample()
	if b.Spent() != 37550 || b.BillsFor("r1") != 20550 || b.BillsOf("freight") != 21000 || b.BillsFor("r3") != 0 {
		t.Errorf("spent %d, on r1 %d, freight %d", b.Spent(), b.BillsFor("r1"), b.BillsOf("freight"))
	}
	if w := b.Worked(); w["body"] != 4.5 || w["paint"] != 4 || b.WorkedFor("r2")["body"] != 1.5 {
		t.Errorf("worked %v", w)
	}
	if got := build.Labour(b.Worked(), map[string]float64{"body": 40, "paint": 50}); got != 380 {
		t.Errorf("your labor %v", got)
	}
	if !b.HasPart("r1", "bumper cover ") || b.HasPart("r2", "bumper cover") {
		t.Error("a part was taken for another's")
	}
}

func TestTheInvoiceIsThatOfTheSaleOrOfItsTerms(t *testing.T) {
	usd, _ := money.Lookup("USD")
	terms := invoice.Terms{Fixed: []invoice.Fixed{{Name: "Gate", Amount: 7500}}, Tax: invoice.Tax{Base: "hammer"}}
	b := sample()
	if got, ok := b.Invoice(terms, usd); !ok || got != 427500 {
		t.Errorf("by the terms %d", got)
	}
	b.Charges = []build.Charge{{Name: "Gate", Amount: 8000}, {Name: "Late", Amount: 1}}
	if got, ok := b.Invoice(terms, usd); !ok || got != 428001 {
		t.Errorf("as entered %d", got)
	}
	b.Hammer = nil
	if _, ok := b.Invoice(terms, usd); ok {
		t.Error("an unknown hammer price makes an invoice")
	}
}

func TestWhatCannotBeIsNamed(t *testing.T) {
	b := sample()
	if faults := b.Check(); len(faults) > 0 {
		t.Errorf("a sound build has %q", faults)
	}
	b.Dates = build.Dates{Bought: "2026-03-01", Home: "2026-02-01", Started: "soon", Listed: "2026-05-01", Sold: "2026-04-30"}
	b.Hours[0].Trade = "magic"
	b.Receipts[0].Kind = "gift"
	all := strings.Join(b.Check(), "\n")
	for _, want := range []string{"Home on 2026-02-01 comes before Bought", `Started: "soon"`, "Sold on 2026-04-30 comes before Listed",
		`"magic" is no trade`, `"gift" is no kind`} {
		if !strings.Contains(all, want) {
			t.Errorf("%q is missing from\n%s", want, all)
		}
	}
}

func TestDaysOnTheMarketComeFromTheDatesFirst(t *testing.T) {
	days := 40
	b := build.Build{Dates: build.Dates{Listed: "2026-02-27", Sold: "2026-03-02"}, Sale: build.Sale{Days: &days}}
	if n, ok := b.DaysToSell(); !ok || n != 3 {
		t.Errorf("%d days", n)
	}
	b.Dates.Listed = ""
	if n, ok := b.DaysToSell(); !ok || n != 40 {
		t.Errorf("%d days", n)
	}
}

// By hand: 40 of 100 comes back on the same part, a part is returned whole, one that cost nothing stays, and 50 names nothing.
func TestReturnsTakeTheirBillsBack(t *testing.T) {
	b := build.Build{Receipts: []build.Receipt{{Kind: "part", Line: "a", What: "fender", Amount: 10000},
		{Kind: "part", Line: "a", What: "lamp",
			Amount: 7000}, {Kind: "part", Line: "b", What: "clips"}, {Kind: "part", What: "Fender ", Amount: -4000},
		{Kind: "part", Line: "a", What: "lamp", Amount: -7000}, {Kind: "part", Line: "b", What: "core", Amount: -5000}}}
	got := b.Bought()
	if len(got) != 2 || got[0].Amount != 6000 || got[1].What != "clips" || b.MoneyBack() != 16000 || b.Spent() != 1000 {
		t.Errorf("%+v, %d back, %d spent", got, b.MoneyBack(), b.Spent())
	}
}
