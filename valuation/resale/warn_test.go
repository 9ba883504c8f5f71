package resale_test

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

func mentions(warnings []resale.Warning, what string) bool {
	return slices.ContainsFunc(warnings, func(w resale.Warning) bool { return strings.Contains(w.Text, what) })
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
	beliefs.Guess = &prob.Three{Low: 9_000, Likely: 11_000, High: 12_500}
	p := starter(t)
	if w := resale.Fit(tidy(20), tidySubject(), beliefs, p).Warnings(); len(w) != 0 {
		t.Errorf("a tidy table is warned of: %v", w)
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
		"your own guess":                  func(r *[]resale.Row, _ *resale.Subject) { *r = nil },
		"left out by hand): row r1, r":    func(r *[]resale.Row, _ *resale.Subject) { each((*r)[:9], func(x *resale.Row) { x.Excluded = true }) },
	} {
		rows, s := tidy(20), tidySubject()
		change(&rows, &s)
		w := resale.Fit(rows, s, beliefs, p).Warnings()
		explained(t, w, len(rows))
		if strings.HasPrefix(want, "left out") {
			if !mentions(w, "9 rows not used (left out by hand)") || !mentions(w, "and 4 more") {
				t.Errorf("excluded rows: %v", w)
			}
			continue
		}
		if !mentions(w, want) {
			t.Errorf("%q isn't in %v", want, w)
		}
	}
}

// explained asserts that every warning says what it means and speaks of rows that there are, in rising order.
func explained(t *testing.T, warnings []resale.Warning, rows int) {
	t.Helper()
	for _, w := range warnings {
		if w.Code.Meaning() == "" {
			t.Errorf("%+v: no meaning", w)
		}
		if !slices.IsSorted(w.Rows) || len(w.Rows) > 0 && w.Rows[len(w.Rows)-1] >= rows {
			t.Errorf("%+v: rows of a table of %d", w, rows)
		}
	}
}

func TestWarningsNameTheirRows(t *testing.T) {
	_, beliefs := rebuilt()
	rows := tidy(20)
	rows[7].Price *= 4
	rows[2].Date, rows[12].Date = "", ""
	rows[5].Excluded = true
	got := map[resale.Code][]int{}
	for _, w := range resale.Fit(rows, tidySubject(), beliefs, starter(t)).Price().Warnings {
		got[w.Code] = w.Rows
	}
	want := map[resale.Code][]int{resale.WarnOutlier: {7}, resale.WarnUndated: {2, 12}, resale.WarnUnused: {5}}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%v, want %v", got, want)
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
