package csvfile

import (
	"slices"
	"strings"
	"testing"

	"walkline/store/grid"
	"walkline/store/table"
	"walkline/valuation/build"
)

func parsedPast(t *testing.T, text string, s table.Stated) table.Result[Past] {
	t.Helper()
	g, err := grid.Read([]byte(text), grid.Options{})
	if err != nil {
		t.Fatal(err)
	}
	res, err := table.Read(PastBuys(), g, s)
	if err != nil {
		t.Fatal(err)
	}
	if res.Read != len(res.Rows)+len(res.Refused) {
		t.Errorf("%d read, %d taken, %d refused", res.Read, len(res.Rows), len(res.Refused))
	}
	return res
}

var plainPast = table.Stated{Currency: "USD"}

func TestTheTemplateIsReadBackAndItsExamplesAreNoBuys(t *testing.T) {
	lines := strings.SplitAfter(string(PastTemplate()), "\r\n")
	names := strings.Split(strings.TrimSpace(lines[1]), ",")
	res := parsedPast(t, string(PastTemplate())+"7"+strings.Repeat(",", len(names)-1), plainPast)
	for i, c := range res.Columns {
		if c.Field != names[i] {
			t.Errorf("the template's column %s is read as %s", names[i], c.Field)
		}
	}
	if len(res.Rows) != 1 || res.Rows[0].Lot.Number != "7" || len(res.Refused) != 2 {
		t.Errorf("%d rows, refused %+v", len(res.Rows), res.Refused)
	}
	filled := strings.ReplaceAll(string(PastTemplate()), "example", "buy")
	res = parsedPast(t, filled, plainPast)
	if len(res.Rows) != 2 || len(res.Rows[0].Damage) != 2 || res.Rows[0].Damage[0].Area != "12" || *res.Rows[0].Build.Sale.Price != 1190000 ||
		!slices.Equal(res.Rows[0].Lot.Loss, []string{"collision"}) {
		t.Errorf("%+v, refused %+v", res.Rows, res.Refused)
	}
}

func TestATotalIsNeverABuy(t *testing.T) {
	for _, total := range []string{"Total,,,7000,19900", ",,,7000,19900", "Sum,,2,7000,19900", "TOTAL 2025,,,7000,19900",
		"3,Total,,7000,19900"} {
		res := parsedPast(t, "id,make,model,price_paid,sold_for\n1,Kettrick,Dunlin,4000,11900\n2,Ostrane,Pell,3000,8000\n"+total+"\n", plainPast)
		if len(res.Rows) != 2 {
			t.Errorf("%q became a buy: %+v", total, res.Rows)
		}
	}
}

func TestAPastBuyIsReadAndWhatIsMissingStaysUnknown(t *testing.T) {
	res := parsedPast(t, "id,Year,make,model,bought,sold,Hammer price,fees,parts,hours_body,sold for,found,not_there\n"+
		"7,2018,Kettrick,Dunlin,2025-03-01,2025-06-10,\"$4,200.50\",610,1800,22.5,11900,mount_torn; rail_bent,floor\n"+
		"8,,,,2025-04-01,,,,,,,,\n", plainPast)
	if len(res.Rows) != 2 {
		t.Fatalf("%+v", res.Refused)
	}
	b, l := res.Rows[0].Build, res.Rows[0].Lot
	if *b.Hammer != 420050 || b.Charges[0].Amount != 61000 || b.BillsOf("part") != 180000 || b.Worked()["body"] != 22.5 ||
		*b.Sale.Price != 1190000 ||
		b.Outcome != build.Sold || b.Saw("rail_bent") != build.Found || b.Saw("floor") != build.NotThere || l.ModelYear != 2018 ||
		l.SaleDate != "2025-03-01" {
		t.Errorf("%+v %+v", b, l)
	}
	if b.Imported.As != "id 7" || len(b.Imported.Row) != 64 || res.Rows[0].Line != 2 {
		t.Errorf("%+v", b.Imported)
	}
	if b = res.Rows[1].Build; b.Hammer != nil || len(b.Receipts) > 0 || len(b.Hours) > 0 || b.Sale.Price != nil || b.Outcome != build.Open {
		t.Errorf("what is missing became %+v", b)
	}
}

func TestNotationIsStatedForTheWholeTable(t *testing.T) {
	res := parsedPast(t, "id;bought;paid\n1;3/4/2025;1.234,50\n2;31/12/2024;12,5\n", table.Stated{Currency: "USD"})
	if len(res.Rows) != 2 || res.Rows[0].Build.Dates.Bought != "2025-04-03" || *res.Rows[0].Build.Hammer != 123450 {
		t.Errorf("%+v", res)
	}
}

func TestPastRowsThatCannotBeAreRefusedWithReasons(t *testing.T) {
	for row, want := range map[string]string{
		"1,2025-01-01,12;5,,,,":         "more than one number",
		"1,2025-01-01,€12,,,,":          "does not stand for USD",
		"1,someday,12,,,,":              "no day of the calendar",
		"1,2025-01-01,12,2024-01-01,,,": "Sold on 2024-01-01 comes before Bought",
		"1,2025-01-01,12,,given away,,": "one of open, sold",
		"1,2025-01-01,12,,,rail,rail":   "said to be found and not to be there",
		",2025-01-01,12,,,,":            "nothing tells this buy from others",
		"1,2025-01-01,-12,,,,":          "below zero",
	} {
		res := parsedPast(t, "id,bought,paid,sold,outcome,found,not_there\n"+row+"\n", plainPast)
		if len(res.Refused) != 1 || !strings.Contains(res.Refused[0].Faults[0].String(), want) || res.Refused[0].Line != 2 {
			t.Errorf("%s: %+v", row, res)
		}
	}
	res := parsedPast(t, "id,bought\n1,2025-01-01\n1,2025-02-01\n", plainPast)
	if len(res.Refused) != 1 || !strings.Contains(res.Refused[0].Faults[0].Reason, "another row above") {
		t.Errorf("%+v", res)
	}
}

func TestABidThatWasNotWonIsNoBuy(t *testing.T) {
	res := parsedPast(t, "Won?,Bought,Car,Winning bid\nyes,2025-03-14,2016 Ostrane Pell,4200\nno,2025-03-14,2015 Ostrane Pell,3600\n"+
		"lost,2025-06-02,2014 Halvic Moro,2900\nW,2025-06-02,2013 Halvic Moro,3100\n", plainPast)
	if len(res.Rows) != 2 || len(res.Refused) != 2 || *res.Rows[1].Build.Hammer != 310000 {
		t.Errorf("%+v, refused %+v", res.Rows, res.Refused)
	}
}

func TestPastBuysInSevenLanguages(t *testing.T) {
	for headings, row := range map[string]string{
		"Gekauft am;Fahrzeug;Zuschlag;Verkauft am;Verkaufspreis":                "14.03.2025;Ostrane Pell 2.0;4.200 €;02.05.2025;9.800 €",
		"Acheté le;Véhicule;Adjudication;Vendu le;Prix de vente":                "14/03/2025;Ostrane Pell;4 200 €;02/05/2025;9 800 €",
		"Data zakupu;Pojazd;Cena wylicytowana;Data sprzedaży;Cena sprzedaży":    "14.03.2025;Ostrane Pell;4 200 €;02.05.2025;9 800 €",
		"Aankoopdatum;Voertuig;Aankoop;Verkocht op;Verkoop":                     "14-03-2025;Ostrane Pell;€ 4.200,-;02-05-2025;€ 9.800,-",
		"Data acquisto;Veicolo;Acquisto;Data vendita;Vendita":                   "14/03/2025;Ostrane Pell;€ 4.200;02/05/2025;€ 9.800",
		"Fecha de compra;Coche;Precio de compra;Fecha de venta;Precio de venta": "14/03/2025;Ostrane Pell;4.200 €;02/05/2025;9.800 €",
		"Purchase date;Car;Hammer;Date sold;Sold for":                           "14/03/2025;Ostrane Pell;€4,200;02/05/2025;€9,800",
	} {
		res := parsedPast(t, headings+"\n"+row+"\n", table.Stated{})
		if len(res.Rows) != 1 || len(res.Open) > 0 {
			t.Errorf("%s: refused %+v, open %+v", headings, res.Refused, res.Open)
			continue
		}
		b := res.Rows[0].Build
		if b.Hammer == nil || *b.Hammer != 420000 || b.Sale.Price == nil || *b.Sale.Price != 980000 || b.Dates.Bought != "2025-03-14" ||
			b.Dates.Sold != "2025-05-02" {
			t.Errorf("%s: %+v", headings, b)
		}
	}
}

func TestTheSameBuyTwiceInOneTableCountsTwice(t *testing.T) {
	res := parsedPast(t, "bought,make,model,paid\n2025-01-01,A,B,100\n2025-01-01,A,B,100\n", plainPast)
	if len(res.Rows) != 2 || res.Rows[0].Build.Imported.As == res.Rows[1].Build.Imported.As ||
		res.Rows[0].Build.Imported.Row != res.Rows[1].Build.Imported.Row {
		t.Errorf("%+v", res)
	}
}

func FuzzPastNeverPanicsAndReconciles(f *testing.F) {
	f.Add("id,bought,paid,found\n1,2025-01-01,100,a;b\n")
	f.Add("make;paid;hours_body\nA;1,5;x\n")
	f.Fuzz(func(t *testing.T, text string) {
		g, err := grid.Read([]byte(text), grid.Options{})
		if err != nil {
			return
		}
		res, err := table.Read(PastBuys(), g, plainPast)
		if err != nil || res.Read != len(res.Rows)+len(res.Refused) {
			t.Fatalf("%+v, %v", res, err)
		}
		for _, p := range res.Rows {
			if len(p.Build.Check()) > 0 || p.Build.Imported.As == "" {
				t.Fatalf("%+v", p)
			}
		}
	})
}
