package resale_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"walkline/valuation/resale"
)

func mentions(warnings []string, what string) bool {
	return strings.Contains(strings.Join(warnings, "\n"), what)
}

// tidy returns n rows that give no cause for a warning about tidySubject.
func tidy(n int) []resale.Row {
	rng := rand.New(rand.NewPCG(2, 2))
	var rows []resale.Row
	for i := range n {
		miles := 30_000 + 40_000*rng.Float64()
		rows = append(rows, resale.Row{ID: fmt.Sprint("r", i), Price: usd.FromMajor(14_000 * (1 + 0.05*rng.NormFloat64())), Kind: "sold",
			Date: "2024-04-02", ModelYear: 2018 + i%3, Make: "Talvo", Model: "Brisa", Trim: "S", Mileage: &miles, Title: "rebuilt"})
	}
	return rows
}

func tidySubject() resale.Subject {
	return resale.Subject{Make: "talvo", Model: "brisa", Trim: "s", ModelYear: 2019, Mileage: ptr(50_000), Brand: "rebuilt"}
}

func TestWarnings(t *testing.T) {
	_, beliefs := rebuilt()
	p := starter(t)
	if w := resale.Fit(tidy(20), tidySubject(), beliefs, p).Warnings(); len(w) != 0 {
		t.Errorf("a tidy table is warned of: %q", w)
	}
	for want, change := range map[string]func(*[]resale.Row, *resale.Subject){
		"only 4 comparables":              func(r *[]resale.Row, _ *resale.Subject) { *r = (*r)[:4] },
		"older than every comparable":     func(_ *[]resale.Row, s *resale.Subject) { s.ModelYear = 2012 },
		"newer than every comparable":     func(_ *[]resale.Row, s *resale.Subject) { s.ModelYear = 2023 },
		"more miles than every":           func(_ *[]resale.Row, s *resale.Subject) { s.Mileage = ptr(120_000) },
		"fewer miles than every":          func(_ *[]resale.Row, s *resale.Subject) { s.Mileage = ptr(2_000) },
		"mileage is not known":            func(_ *[]resale.Row, s *resale.Subject) { s.Mileage = nil },
		"no comparable states its":        func(r *[]resale.Row, _ *resale.Subject) { each(*r, func(x *resale.Row) { x.Mileage = nil }) },
		"20 comparables more than a year": func(r *[]resale.Row, _ *resale.Subject) { each(*r, func(x *resale.Row) { x.Date = "2022-01-01" }) },
		"1 comparable without a date":     func(r *[]resale.Row, _ *resale.Subject) { (*r)[3].Date = "" },
		"own make and model":              func(_ *[]resale.Row, s *resale.Subject) { s.Model = "cordel" },
		"own trim":                        func(_ *[]resale.Row, s *resale.Subject) { s.Trim = "gt" },
		"title brand \"rebuilt\"":         func(r *[]resale.Row, _ *resale.Subject) { each(*r, func(x *resale.Row) { x.Title = "" }) },
		"row r7 lies far above":           func(r *[]resale.Row, _ *resale.Subject) { (*r)[7].Price *= 4 },
		"row r7 carries more of":          func(r *[]resale.Row, s *resale.Subject) { lonely(*r, 7, s) },
		"left out by hand): row r1, r":    func(r *[]resale.Row, _ *resale.Subject) { each((*r)[:9], func(x *resale.Row) { x.Excluded = true }) },
	} {
		rows, s := tidy(20), tidySubject()
		change(&rows, &s)
		w := resale.Fit(rows, s, beliefs, p).Warnings()
		if strings.HasPrefix(want, "left out") {
			if !mentions(w, "9 rows not used (left out by hand)") || !mentions(w, "and 4 more") {
				t.Errorf("excluded rows: %q", w)
			}
			continue
		}
		if !mentions(w, want) {
			t.Errorf("%q isn't in %q", want, w)
		}
	}
}

func each(rows []resale.Row, f func(*resale.Row)) {
	for i := range rows {
		f(&rows[i])
	}
}

// lonely makes row k the only one of the subject's trim, model and title.
func lonely(rows []resale.Row, k int, s *resale.Subject) {
	each(rows, func(x *resale.Row) { x.Model, x.Trim = "other", "gt" })
	rows[k].Model, rows[k].Trim = s.Model, s.Trim
}
