package lot

import "testing"

// The days stand as people write them; what each means was written down by hand with a calendar beside it, Friday 2026-11-27 being today.
func TestDaysAreReadAsPeopleWriteThem(t *testing.T) {
	const today = "2026-11-27"
	for _, c := range []struct {
		typed        string
		american     Date
		elsewhere    Date
		mayBeGuessed bool
	}{
		{"2026-12-03", "2026-12-03", "2026-12-03", false}, {"11/27", "2026-11-27", "2026-11-27", false},
		{"27/11", "2026-11-27", "2026-11-27", false}, {"12/3", "2026-12-03", "2027-03-12", true},
		{"12/3/26", "2026-12-03", "2026-03-12", true}, {"3.12.2026", "2026-12-03", "2026-12-03", false},
		{"3.12.", "2026-12-03", "2026-12-03", false}, {"Nov 27", "2026-11-27", "2026-11-27", false},
		{"27 november", "2026-11-27", "2026-11-27", false}, {"Sept 5, 2025", "2025-09-05", "2025-09-05", false},
		{"Jan 8", "2027-01-08", "2027-01-08", false}, {"6/6", "2026-06-06", "2026-06-06", false},
		{"Feb 29, 2028", "2028-02-29", "2028-02-29", false}, {"tomorrow", "2026-11-28", "2026-11-28", false},
		{"Today", "2026-11-27", "2026-11-27", false}, {"", "", "", false}, {"12/31", "2026-12-31", "2026-12-31", false},
	} {
		for order, want := range map[DayOrder]Date{MonthFirst: c.american, DayFirst: c.elsewhere} {
			got, guessed, err := order.ReadDay(c.typed, today)
			if got != want || guessed != c.mayBeGuessed || err != nil {
				t.Errorf("%q, %v: %v, guessed %v, %v; want %v", c.typed, order, got, guessed, err, want)
			}
			if again, guessed, err := order.ReadDay(order.Show(want), today); again != want || guessed || err != nil {
				t.Errorf("%q is shown as %q and read as %v, %v", c.typed, order.Show(want), again, err)
			}
		}
	}
	for _, typed := range []string{"soon", "Feb 30, 2026", "13/13", "11", "1/2/3/4", "Nov", "27 of Nov 2026", "0/5", "2026-13-01"} {
		if d, _, err := MonthFirst.ReadDay(typed, today); err == nil {
			t.Errorf("%q was read as %v", typed, d)
		}
	}
}

// A price was paid on a day that has been: 12/5 is last December's. With a year it is what was written.
func TestADayThatHasBeenIsOfTheLastYear(t *testing.T) {
	const today = "2026-11-27"
	for typed, want := range map[string]Date{"12/5": "2025-12-05", "Dec 5": "2025-12-05", "11/27": "2026-11-27", "11/26": "2026-11-26",
		"Jan 8": "2026-01-08", "12/5/26": "2026-12-05", "12/5/2025": "2025-12-05", "today": today, "tomorrow": "2026-11-28", "": "",
		"11/28": "2025-11-28"} {
		if got, _, err := MonthFirst.ReadPast(typed, today); got != want || err != nil {
			t.Errorf("%q: %v, %v; want %v", typed, got, err, want)
		}
	}
	if _, _, err := MonthFirst.ReadPast("soon", today); err == nil {
		t.Error("soon is no day")
	}
}
