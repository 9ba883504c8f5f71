package wire_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"walkline/cmd/wire"
	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation/lot"
)

// A match of three columns is never taken for a table of four whose headings join to the same text.
func TestTablesThatOnlyReadAlikeShareNoMemory(t *testing.T) {
	ctx := context.Background()
	d, _ := open(t)
	s := d.Do(ctx, d.Load(ctx), desk.NewLot())
	three, err := d.OpenSheet(ctx, []byte("Price,\"Make, Model\",Year\n9500,Ostrane Pell,2018\n"), desk.Opening{Currency: "USD"})
	if err != nil {
		t.Fatal(err)
	}
	if s, _ = takeIn(ctx, d, s, three); s.Trouble != "" {
		t.Fatal(s.Trouble)
	}
	four, err := d.OpenSheet(ctx, []byte("Price,Make,Model,Year\n9500,Ostrane,Pell,2018\n"), desk.Opening{Currency: "USD"})
	if err != nil || len(four.Stated.Match) != 4 {
		t.Fatalf("%v is matched for %v, %v", four.Stated.Match, four.Header, err)
	}
	if s, refused := takeIn(ctx, d, s, four); s.Trouble != "" || len(refused) > 0 {
		t.Errorf("%q %v", s.Trouble, refused)
	}
}

// What is remembered of a table says nothing of the next one's money.
func TestACurrencyIsNeverRemembered(t *testing.T) {
	ctx := context.Background()
	d, _ := open(t)
	s := d.Do(ctx, d.Load(ctx), desk.NewLot())
	table := []byte("asking price,year,km\n9500,2018,80000\n")
	sheet, err := d.OpenSheet(ctx, table, desk.Opening{Currency: "USD"})
	if err != nil {
		t.Fatal(err)
	}
	if s, _ = takeIn(ctx, d, s, sheet); s.Trouble != "" {
		t.Fatal(s.Trouble)
	}
	next, err := d.OpenSheet(ctx, table, desk.Opening{Currency: "JPY"})
	if err != nil || next.Stated.Currency != "JPY" {
		t.Fatalf("a lot in JPY gets %q, %v", next.Stated.Currency, err)
	}
	rows, _, err := d.Importer.Read(next)
	if err != nil || len(rows) != 1 || rows[0].Price != 9500 { // JPY has no minor unit
		t.Errorf("%+v, %v", rows, err)
	}
}

// Two rows that could both be one known lot: the other one is new.
func TestARenumberedLotSwallowsNoOther(t *testing.T) {
	known := []book.Listed{{ID: 1, Lot: lot.Lot{Number: "14", Sale: "Harrow Flats yard", SaleDate: "2026-11-28", VIN: "0WLK1AB20K0000014"}}}
	m := wire.Lister{}.MeetList(known, []lot.Lot{
		{Number: "14", Sale: "Harrow Flats yard", SaleDate: "2026-11-28", Make: "Kettrick"},
		{Number: "22", Sale: "Harrow Flats yard", SaleDate: "2026-11-28", VIN: "0WLK1AB20K0000014"},
	})
	if len(m.New) != 1 || m.New[0].Make != "Kettrick" || len(m.Changed) != 1 || m.Changed[0].Lot.Number != "22" || m.Same != 0 {
		t.Errorf("%+v", m)
	}
}

// What is imported is never more than the check of a case takes.
func TestWhatIsTooFarIsRefusedAtTheDoor(t *testing.T) {
	sheet, err := wire.Importer{}.Open([]byte("asking price,year,miles,miles "+
		"away\n9500,2018,2000001,5\n9500,2018,2000000,20001\n9500,2018,2000000,20000\n"), desk.Opening{Currency: "USD"})
	if err != nil {
		t.Fatal(err)
	}
	rows, refused, err := wire.Importer{}.Read(sheet)
	if err != nil || len(rows) != 1 || len(refused) != 2 || !strings.Contains(refused[0].Reason, fmt.Sprint(lot.MostMileage)) ||
		!strings.Contains(refused[1].Reason, fmt.Sprint(lot.MostDistance)) {
		t.Errorf("%d rows, %+v, %v", len(rows), refused, err)
	}
}

// Past buys are in the shop's currency, whatever the starter's.
func TestPastBuysAreInTheShopsCurrency(t *testing.T) {
	ctx := context.Background()
	d, _ := open(t)
	s := d.Do(ctx, d.Load(ctx), desk.SetCurrency("PLN"))
	sheet, err := d.OpenPast(ctx, []byte("id,make,paid\n1,Kettrick,4200\n"), desk.Opening{Currency: s.Shop.Currency})
	if err != nil {
		t.Fatal(err)
	}
	list, _, err := d.Past.ReadPast(sheet)
	if err != nil || len(list) != 1 || list[0].Case.Currency != "PLN" || *list[0].Build.Hammer != 420000 {
		t.Errorf("%+v, %v", list, err)
	}
}

// A table of past buys is taken apart when it is opened and not again for a preview or to be taken.
func TestATableIsReadOnceForEachWayOfStatingIt(t *testing.T) {
	sheet, err := wire.PastTables{}.OpenPast([]byte("id,make,paid,bought\n1,Kettrick,4200,2025-03-01\nTotal,,4200,\n"),
		desk.Opening{Currency: "USD"})
	if err != nil {
		t.Fatal(err)
	}
	sheet.Data = nil // nothing is left to take apart
	p, err := wire.PastTables{}.Preview(sheet)
	if err != nil || p.Rows != 1 || len(p.Skipped) != 1 || p.Skipped[0].Line != 3 || p.First[0][3] != "4,200" {
		t.Errorf("%+v, %v", p, err)
	}
	list, refused, err := wire.PastTables{}.ReadPast(sheet)
	if err != nil || len(list) != 1 || len(refused) != 0 {
		t.Errorf("%+v, %+v, %v", list, refused, err)
	}
}
