package cell

import (
	"testing"

	"walkline/valuation/lot"
)

// The notations are those that people write; what each means is common practice, no source.
func TestPricesInTheNotationsOfPeople(t *testing.T) {
	for text, want := range map[string]string{
		"$12,500": "12500 $", "12.500 €": "12500 €", "USD 9 800": "9800 USD", "£7,995.00": "7995 £", "8'450": "8450 ", "9.8k": "9800 ",
		"12,500 OBO": "12500 ", "12 500,- VB": "12500 ",
		"12.500,50 EUR": "12500.5 EUR", "CHF 7’900.-": "7900 CHF", "45 900 zł": "45900 zł", "1 234 567": "1234567 ", "12,50": "12.5 ",
		"€9.5k": "9500 €", "US$ 9,000*": "9000 US$", "'12500": "12500 ",
	} {
		p, err := ReadMoney(text, 0)
		if got := p.Text() + " " + p.Sign; err != nil || got != want {
			t.Errorf("%q is %q, %v; want %q", text, got, err, want)
		}
	}
	for _, text := range []string{"call", "-", "", "-5", "(500)", "12,000-13,000", "12,500 (was 13,900)", "1,23,456", "1.234.56",
		"12O", "12 500 1", "€ 5 $", "12,500 plus tax", "99999999999999999999"} {
		if p, err := ReadMoney(text, 0); err == nil {
			t.Errorf("%q is taken for %s", text, p.Text())
		}
	}
	for text, decimal := range map[string]byte{"1.234,50": '.', "1,234.50": ',', "12,5": '.'} {
		if _, err := ReadMoney(text, decimal); err == nil {
			t.Errorf("%q is read with decimals after %c", text, decimal)
		}
	}
}

func TestLengthsSayTheirUnitAndStatement(t *testing.T) {
	for text, want := range map[string]Length{
		"66k": {Known: true}, "66k mi": {Known: true, Unit: "mi"}, "66,120 miles": {Known: true, Unit: "mi"},
		"105 500 km": {Known: true, Unit: "km"}, "105 tkm": {Known: true, Unit: "km"},
		"179,015 mi (ACTUAL)": {Known: true, Unit: "mi", Status: "actual"}, "98,000 (not actual)": {Known: true, Status: "not_actual"},
		"TMU": {Status: "not_actual"}, "exempt": {Status: "exempt"},
		"48,211 A": {Known: true, Status: "actual"}, "48,211 mi (A)": {Known: true, Unit: "mi", Status: "actual"},
		"55,000 N": {Known: true, Status: "not_actual"}, "55,000N": {Known: true, Status: "not_actual"},
		"98000 exceeds mechanical limits": {Known: true, Status: "exceeds_limits"},
	} {
		l, err := ReadLength(text, 0)
		l.Number = Number{}
		if err != nil || l != want {
			t.Errorf("%q is %+v, %v", text, l, err)
		}
	}
	for _, text := range []string{"far", "66k mi km", "66 120 000 0", "-5", "66,120 apples", "5 or 6", "120,000 E",
		"a 120 000", "120,000 not actual A"} {
		if l, err := ReadLength(text, 0); err == nil {
			t.Errorf("%q is taken for %+v", text, l)
		}
	}
}

func TestDaysOfAllKinds(t *testing.T) {
	for text, want := range map[string]lot.Date{
		"2026-11-03": "2026-11-03", "2026/11/3": "2026-11-03", "3.11.2026": "2026-11-03", "03/11/2026": "2026-11-03",
		"2026-11-03T10:00:00Z": "2026-11-03", "3 Nov 2026 14:05": "2026-11-03",
		"Nov 3, 2026": "2026-11-03", "Tue, 3 November 2026": "2026-11-03", "3. März 2026": "2026-03-03", "3 août 2026": "2026-08-03",
		"3 de enero de 2026": "2026-01-03", "3 stycznia 2026": "2026-01-03",
		"3 mei 2026": "2026-05-03", "3 gennaio 2026": "2026-01-03", "3-Nov-26": "2026-11-03", "20261103": "2026-11-03",
		"46329": "2026-11-03", "03/2019": "2019-03-01", "2019-03": "2019-03-01", "Nov 3": "2026-11-03",
		"Dec 3": "2025-12-03", "today": "2026-11-20", "yesterday": "2026-11-19", "3 days ago": "2026-11-17", "last week": "2026-11-13",
		"a week ago": "2026-11-13", "vor 3 Tagen": "2026-11-17", "gestern": "2026-11-19",
		"il y a 2 jours": "2026-11-18", "hace 1 semana": "2026-11-13", "5 dni temu": "2026-11-15", "2 weken geleden": "2026-11-06",
		"3 giorni fa": "2026-11-17", "2 months ago": "2026-09-20", "5 hours ago": "2026-11-20",
	} {
		if day, err := ReadDay(text, DayFirst, "2026-11-20"); err != nil || day != want {
			t.Errorf("%q is %q, %v; want %q", text, day, err, want)
		}
	}
	for _, text := range []string{"2026-02-30", "31/02/2026", "someday", "2026", "12", "13/13/2026", "1/2/3/4", "99999999", "3 Foo 2026"} {
		if day, err := ReadDay(text, DayFirst, "2026-11-20"); err == nil {
			t.Errorf("%q is taken for %s", text, day)
		}
	}
	if day, err := ReadDay("11/03/2026", MonthFirst, ""); err != nil || day != "2026-11-03" {
		t.Errorf("month first: %s, %v", day, err)
	}
}

// The words of failed formulas are those of ECMA-376 part 1, 18.17.3.
func TestAFailedFormulaSaysNothing(t *testing.T) {
	for _, text := range []string{"#DIV/0!", "#N/A", "#NAME?", "#NULL!", "#NUM!", "#REF!", "#VALUE!", "######"} {
		if !Nothing(text) {
			t.Errorf("%s says something", text)
		}
	}
	if Nothing("#12") {
		t.Error("a lot number says nothing")
	}
}

func TestTitlesAreOfTheList(t *testing.T) {
	for text, want := range map[string]string{"Clean title": "clear", "clean": "clear", "CLEAR": "clear", "R-title": "rebuilt",
		"rebuilt": "rebuilt", "salvage - rebuildable": "salvage", "Flood": "flood damage", "parts only": "parts only",
		"Salvage certificate": "salvage", "total loss": "totaled", "Recovered theft": "recovered theft"} {
		if got, known := Title(text); !known || got != want {
			t.Errorf("%q is %q, %v", text, got, known)
		}
	}
	for _, text := range []string{"as is", "", "branded", "bill of sale", "no", "clean?", "not clean", "2016 Ostrane Pell"} {
		if got, known := Title(text); known {
			t.Errorf("%q is taken for %q", text, got)
		}
	}
}

func TestAVehicleInOneCell(t *testing.T) {
	for text, want := range map[string]Parts{
		"2016 Ostrane Pell LX 4dr":        {Year: 2016, Make: "Ostrane", Model: "Pell", Trim: "LX 4dr"},
		"Pell LX 2.0":                     {Make: "Ostrane", Model: "Pell", Trim: "LX 2.0"},
		"OSTRANE PELL, 2014":              {Year: 2014, Make: "Ostrane", Model: "Pell"},
		"2015 Kettrick Dunlin SE":         {Year: 2015, Make: "Kettrick", Model: "Dunlin", Trim: "SE"},
		"OSTRANE PELL - 2016 - LX":        {Year: 2016, Make: "Ostrane", Model: "Pell", Trim: "LX"},
		"1.6 Kettrick Dunlin 2016r.":      {Year: 2016, Make: "Kettrick", Model: "Dunlin", Trim: "1.6"},
		"16' Ostrane Pell":                {Year: 2016, Make: "Ostrane", Model: "Pell"},
		"16 Pell":                         {Year: 2016, Make: "Ostrane", Model: "Pell"},
		"Kettrick/Dunlin Bj. 2015":        {Year: 2015, Make: "Kettrick", Model: "Dunlin"},
		"2015 Ostrane Garnet (low miles)": {Year: 2015, Make: "Ostrane", Model: "Garnet", Trim: "(low miles)"},
	} {
		if got := Vehicle(text, "Ostrane", "Pell"); got != want {
			t.Errorf("%q is %+v", text, got)
		}
	}
	for _, text := range []string{"2016 Pell LX 66k mi", "Pell 2016 km 66.000 LX", "Pell LX, 66,000 miles, 2016"} {
		if v := Vehicle(text, "Ostrane", "Pell"); v.Length.Float() != 66000 || v.Trim != "LX" || v.Year != 2016 {
			t.Errorf("%q is %+v", text, v)
		}
	}
	if v := Vehicle("Pell LX | 66k", "Ostrane", "Pell"); v.Length.Float() != 66000 || v.Trim != "LX" {
		t.Errorf("%+v", v)
	}
}

// FuzzCells: whatever stands in a cell, nothing panics, and what is read is in bounds.
func FuzzCells(f *testing.F) {
	for _, text := range []string{"$12,500 OBO", "12 500,- VB", "9.8k", "179,015 mi (ACTUAL)", "3 days ago", "03/04/2026", "46000",
		"Clean title", "2016 Ostrane Pell | 66k", "'", "’", "1’", "Ø 5", "\u00a05", "a ago"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, decimal := range []byte{0, '.', ','} {
			if p, err := ReadMoney(text, decimal); err == nil && (p.Mantissa < 0 || p.Scale < 0 && p.Mantissa < 1<<53) {
				t.Fatalf("%q is %+v", text, p)
			}
			if l, err := ReadLength(text, decimal); err == nil && l.Known && l.Mantissa < 0 {
				t.Fatalf("%q is %+v", text, l)
			}
		}
		for _, order := range []Order{"", DayFirst, MonthFirst} {
			if day, err := ReadDay(text, order, "2026-11-20"); err == nil && !day.Known() {
				t.Fatalf("%q is the day %q", text, day)
			}
		}
		Proves(text)
		Evidence(text)
		Title(text)
		Nothing(text)
		YesNo(text)
		Vehicle(text, "Ostrane", "Pell")
	})
}
