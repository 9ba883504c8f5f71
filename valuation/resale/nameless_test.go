package resale_test

import (
	"testing"

	"walkline/valuation/resale"
)

// A row that names no model, and no other make, stands in the vehicle's own table for its model: the answer is that of the same rows with
// the model named. One of another make stays another's, and the shelf gives no nameless row to any vehicle.
func TestARowWithoutAModelIsTakenForTheSubjects(t *testing.T) {
	all, cur := prices(t, "uk2020_slice.csv")
	s, p := asSubject(all[0]), starter(t)
	var rows []resale.Row
	for _, r := range all[1:] {
		if r.Make == s.Make && r.Model == s.Model && len(rows) < 12 {
			rows = append(rows, r)
		}
	}
	named := resale.Fit(rows, s, asking(cur), p).Price()
	for _, maker := range []string{"", s.Make} {
		bare := append([]resale.Row(nil), rows...)
		for i := range bare {
			bare[i].Make, bare[i].Model = maker, ""
		}
		if got := resale.Fit(bare, s, asking(cur), p).Price(); got.P10 != named.P10 || got.P50 != named.P50 || got.P90 != named.P90 {
			t.Errorf("make %q and no model: %.0f %.0f %.0f, named %.0f %.0f %.0f", maker, got.P10, got.P50, got.P90, named.P10, named.P50,
				named.P90)
		}
		if drawn := resale.Draw(bare, s); len(drawn) != 0 {
			t.Errorf("make %q and no model: %d rows drawn from the shelf", maker, len(drawn))
		}
	}
	if other := (resale.Row{Make: "Tallow"}); len(rows) == 0 || other.Beside(s.Make, s.Model) != resale.Other {
		t.Errorf("%d rows; another make counts as %v", len(rows), other.Beside(s.Make, s.Model))
	}
}
