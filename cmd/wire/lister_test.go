package wire_test

import (
	"fmt"
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation/lot"
)

// usual is what a shop of the region states before a table is looked at.
var usual = desk.Opening{Currency: "USD", Usual: "mi", Order: "month first"}

const shortList = "Lot #,Year,Make,Model,Odometer,Runs?,Title,Value before loss,Primary\n" +
	"103,2020,Brenno,Tasca,\"31,002\",no,Salvage,\"$19,500\",WATER\n" +
	"104,2017,Brenno,Tasca,102311,yes,Salvage,\"$11,200\",HAIL\n" +
	"110,2022,Brenno,Tasca,\"8,400 km\",yes,Salvage,\"$24,300\",SIDE\n"

// A sign that stands for several currencies is the shop's where that is one of them; what one cell says of its unit holds for that cell.
func TestARunListGoesByTheShopsCurrencyAndUnit(t *testing.T) {
	d, _ := open(t)
	sheet, err := d.OpenList(t.Context(), []byte(shortList), usual)
	if err != nil || sheet.Stated.Currency != "USD" || sheet.Stated.Unit != "mi" {
		t.Fatalf("%+v, %v", sheet.Stated, err)
	}
	p, err := d.Lister.Preview(sheet)
	if err != nil || len(p.Open) > 0 {
		t.Fatalf("%+v, %v", p.Open, err)
	}
	said := strings.Join(p.Uses, " ")
	for _, want := range []string{"not used: Primary", "say km: 1", "say no unit: 2. They are read in mi"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q does not say %q", said, want)
		}
	}
	rows, _, err := d.Lister.ReadList(sheet)
	if err != nil || len(rows) != 3 || rows[0].Lot.OdometerUnit != "mi" || rows[2].Lot.OdometerUnit != "km" ||
		*rows[0].Lot.Listed.ValueBefore != 19500 || rows[0].Lot.Listed.Currency != "USD" {
		t.Errorf("%+v, %v", rows, err)
	}
}

// The Board values lots that nobody has looked at by the list's value before the damage.
func TestAListsValueServesOnTheBoard(t *testing.T) {
	d, s := enlist(t, shortList)
	rating, err := d.NewRating(t.Context(), s.Factors)
	if err != nil || len(s.Entries) != 3 {
		t.Fatal(len(s.Entries), err)
	}
	for _, e := range s.Entries {
		r, _, err := rating.Rate(t.Context(), e.ID)
		if err != nil || r.Trouble != "" || r.Case.Resale.Guess == nil || r.Answer.Decision == "" {
			t.Errorf("lot %s: %q, %v, %v", e.Number, r.Trouble, r.Case.Resale.Guess, err)
		}
	}
}

// enlist takes a run list in as it opens.
func enlist(t *testing.T, list string) (*desk.Desk, desk.State) {
	d, _ := open(t)
	s := d.Load(t.Context())
	sheet, err := d.OpenList(t.Context(), []byte(list), usual)
	if err != nil {
		t.Fatal(err)
	}
	e, err := d.Enlist(t.Context(), s, sheet)
	s = d.ListArrived(t.Context(), s, e, err)
	if err != nil || s.Trouble != "" {
		t.Fatal(err, s.Trouble)
	}
	return d, s
}

// A result list with "$" brings its prices.
func TestResultsWithASignBringTheirPrices(t *testing.T) {
	d, s := enlist(t, "Sale date,Lot #,Year,Make,Model,Sold for\n12/01/2026,101,2019,Ostrane,Pell,\"$3,900\"\n"+
		"12/01/2026,102,2018,Ostrane,Pell,\"2,450\"\n")
	known, err := d.Book.Lots(t.Context())
	if err != nil || len(known) != 2 {
		t.Fatal(known, err)
	}
	var got []string
	for _, k := range known {
		b, err := d.Book.Lot(t.Context(), k.ID)
		if err != nil || b.Build.Hammer == nil || b.State != lot.Lost {
			t.Fatalf("%+v, %v: %s", b, err, s.Notice)
		}
		got = append(got, fmt.Sprint(b.Case.Lot.Number, " ", b.Case.Lot.SaleDate, " ", *b.Build.Hammer))
	}
	if strings.Join(got, ", ") != "101 2026-12-01 390000, 102 2026-12-01 245000" {
		t.Error(got)
	}
}

// In a shop of another region the sign asks, the answers are there to choose from, and a price is not dropped in silence.
func TestASignOfAnotherRegionIsAsked(t *testing.T) {
	d, _ := open(t)
	sheet, err := d.OpenList(t.Context(), []byte(shortList), desk.Opening{Currency: "EUR", Usual: "km", Order: "day first"})
	if err != nil || sheet.Stated.Currency != "" || sheet.Currencies[0] != "USD" {
		t.Fatalf("%q of %v, %v", sheet.Stated.Currency, sheet.Currencies, err)
	}
	p, err := d.Lister.Preview(sheet)
	if err != nil || len(p.Open) != 1 || !strings.Contains(strings.Join(p.Uses, " "), "Prices without a currency: 3 rows") {
		t.Errorf("%+v %v, %v", p.Open, p.Uses, err)
	}
	sheet.Stated.Currency = "CAD"
	rows, _, err := d.Lister.ReadList(sheet)
	if err != nil || rows[0].Lot.Listed.Currency != "CAD" {
		t.Errorf("%+v, %v", rows, err)
	}
}

// Days that can be read in two ways go by the system's order, and the doubt says the order that was taken.
func TestDaysGoByTheSystemsOrder(t *testing.T) {
	d, _ := open(t)
	for order, want := range map[string]lot.Date{"month first": "2026-12-01", "day first": "2026-01-12"} {
		sheet, err := d.OpenList(t.Context(), []byte("Lot,Sale date\n1,12/01/2026\n"), desk.Opening{Currency: "USD", Order: order})
		if err != nil || len(sheet.Doubts) != 1 || sheet.Doubts[0].Took != order || !strings.Contains(sheet.Doubts[0].Text, order) {
			t.Fatalf("%+v, %v", sheet.Doubts, err)
		}
		rows, _, err := d.Lister.ReadList(sheet)
		if err != nil || rows[0].Lot.SaleDate != want {
			t.Errorf("%s: %+v, %v", order, rows, err)
		}
	}
}
