package csvfile

import "testing"

func TestNumbersAreReadOnlyInTheirStatedMarks(t *testing.T) {
	for _, c := range []struct {
		marks      Marks
		cell, want string // empty: refused
	}{
		{Marks{".", ","}, "12500", "12500"}, {Marks{".", ","}, "12,500", "12500"}, {Marks{".", ","}, "1,234,567.80", "1234567.80"},
		{Marks{".", ","}, "-12,500.5", "-12500.5"}, {Marks{".", ","}, "−5", "-5"}, {Marks{".", ","}, "0.5", "0.5"},
		{Marks{".", ","}, "12,50", ""}, {Marks{".", ","}, "1,2345", ""}, {Marks{".", ","}, "1234,567", ""}, {Marks{".", ","}, ",500", ""},
		{Marks{".", ","}, "1,23,456", ""}, {Marks{".", ","}, "12.", ""}, {Marks{".", ","}, ".5", ""}, {Marks{".", ","}, "1.2.3", ""},
		{Marks{".", ","}, "12,5O", ""}, {Marks{".", ","}, "12k", ""}, {Marks{".", ","}, "1e5", ""}, {Marks{".", ","}, "NaN", ""},
		{Marks{".", ","}, "Inf", ""}, {Marks{".", ","}, "0x10", ""}, {Marks{".", ","}, "--5", ""}, {Marks{".", ","}, "(500)", ""},
		{Marks{".", ","}, "1.234,50", ""}, {Marks{".", ","}, "٣٤", ""}, {Marks{".", ","}, "", ""}, {Marks{".", ","}, "-", ""},
		{Marks{",", "."}, "12.500", "12500"}, {Marks{",", "."}, "12.500,75", "12500.75"}, {Marks{",", "."}, "12.50", ""},
		{Marks{",", " "}, "12 500,75", "12500.75"}, {Marks{",", " "}, "12\u00a0500", "12500"}, {Marks{",", " "}, "12\u202f500", "12500"},
		{Marks{".", "'"}, "12'500.75", "12500.75"}, {Marks{".", "'"}, "12’500", "12500"},
		{Marks{".", ","}, "'9500", "9500"}, {Marks{".", "'"}, "'9'500", "9500"}, {Marks{".", ","}, "''9500", ""},
		{Marks{".", ""}, "12500.75", "12500.75"}, {Marks{".", ""}, "12,500", ""},
	} {
		got, err := c.marks.plain(c.cell)
		if (err != nil) != (c.want == "") || got != c.want {
			t.Errorf("%q as %s: %q, %v", c.cell, c.marks, got, err)
		}
	}
}

func TestPricesShedOnlyTheirOwnCurrency(t *testing.T) {
	for _, c := range []struct{ cell, code, want string }{
		{"$12,500", "USD", "12,500"}, {"US$ 12,500", "USD", "12,500"}, {"USD 12,500", "USD", "12,500"}, {"12,500 usd", "USD", "12,500"},
		{"12.500 €", "EUR", "12.500"}, {"12 500 kr.", "SEK", "12 500"}, {"-$5", "USD", "-$5"}, {"12500", "USD", "12500"},
		{"€12,500", "USD", ""}, {"12,500 CAD", "USD", ""}, {"from 12,500", "USD", ""}, {"12,500 or best offer", "USD", ""},
	} {
		got, err := withoutCurrency(c.cell, c.code)
		if (err != nil) != (c.want == "") || got != c.want {
			t.Errorf("%q in %s: %q, %v", c.cell, c.code, got, err)
		}
	}
}

func TestDaysAreReadOnlyInTheirStatedOrder(t *testing.T) {
	for _, c := range []struct {
		order      Order
		cell, want string
	}{
		{YearFirst, "2026-03-04", "2026-03-04"}, {YearFirst, "2026/3/4", "2026-03-04"}, {YearFirst, "2026-03-04T10:22:00Z", "2026-03-04"},
		{YearFirst, "2026-03-04 10:22", "2026-03-04"}, {YearFirst, "3/4/2026", ""}, {YearFirst, "2026-02-29", ""}, {YearFirst, "2026-13-01", ""},
		{YearFirst, "0026-03-04", ""}, {YearFirst, "20260304", ""}, {YearFirst, "46085", ""},
		{DayFirst, "3/4/2026", "2026-04-03"}, {DayFirst, "03.04.2026", "2026-04-03"}, {DayFirst, "3 Apr 2026", "2026-04-03"},
		{DayFirst, "3/4/2026 10:22 AM", "2026-04-03"}, {DayFirst, "13/13/2026", ""}, {DayFirst, "3/4/26", ""}, {DayFirst, "Apr 3, 2026", ""},
		{MonthFirst, "3/4/2026", "2026-03-04"}, {MonthFirst, "March 4, 2026", "2026-03-04"}, {MonthFirst, "13/4/2026", ""}, {MonthFirst, "4 Mar 2026", ""},
		{MonthFirst, "yesterday: noon", ""},
	} {
		got, err := c.order.day(c.cell)
		if (err != nil) != (c.want == "") || string(got) != c.want {
			t.Errorf("%q %s: %q, %v", c.cell, c.order, got, err)
		}
	}
}
