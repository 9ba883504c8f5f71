package bench

import (
	"slices"
	"testing"

	"walkline/ui/desk"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// A starter that changed is shown entry by entry with what differs; taking one and keeping the other settle it, and undo on the page takes
// the last decision back.
func TestAChangedStarterIsTakenOrKept(t *testing.T) {
	s := at(t, StarterSection)
	s.wants("those that you work with")
	s.Desk.Know, s.Desk.Edition = catalogues(), "1"
	s.State = s.Desk.Load(t.Context())
	later := catalogues()
	later.Jobs.Jobs[0].Hours = map[string]prob.Three{"body": {Low: 2, Likely: 3, High: 5}}
	later.Jobs.Jobs[1].Materials = prob.Certain(12)
	s.Desk.Know, s.Desk.Edition = later, "2"
	s.State = s.Desk.Load(t.Context())
	if s.State.Notice == "" {
		t.Error("nothing is said at the start")
	}
	s.Do(desk.Go(desk.Bench))
	s.page.Go(slices.Index(s.page.Sections(), StarterSection))
	s.Do(desk.ShowSection(StarterSection))
	s.wants("differ from those that you work with in 2 entries", "Repair job, changed: Replace the hood", "hours body: 3 (2 to 5), was 2",
		"Repair job, changed: Aim the headlamps", "materials: 12, was 0")
	s.tap("Take")
	if got := s.State.Know.Jobs.Jobs[0].Hours["body"].High; got != 5 || len(s.State.StarterChanges) != 1 {
		t.Errorf("taken, %g hours at most, %d changes", got, len(s.State.StarterChanges))
	}
	s.tap("Keep mine")
	if got := s.State.Know.Jobs.Jobs[1].Materials; !got.Zero() || len(s.State.StarterChanges) != 0 {
		t.Errorf("kept, the materials are %v, %d changes", got, len(s.State.StarterChanges))
	}
	s.Do(desk.Undo())
	if want := (valuation.EntryKey{Kind: valuation.KindJob, ID: "aim"}); len(s.State.StarterChanges) != 1 ||
		s.State.StarterChanges[0].Key != want {
		t.Errorf("undone, the changes are %+v", s.State.StarterChanges)
	}
	s.wants("in 1 entry")
}

// What the vehicle does to all costs is changed on the page, is the shop's from then on, and is put back; a scale that asks for nothing is
// named and not used.
func TestCostsByVehicleAreTheShops(t *testing.T) {
	s := at(t, ScalesSection)
	s.tap("Add a scale")
	s.wants("Not used as long as this stands")
	s.retype(s.number(0), "1.4")
	more := slices.DeleteFunc(seen.All[*widgets.Select](s.page.Object()),
		func(x *widgets.Select) bool { return !slices.Contains(x.Options, "Its parts are") })
	more[0].SetSelected("Its parts are")
	s.codes(7, "high")
	want := lot.Scale{When: lot.Sign{Levels: []string{"high"}}, Parts: 1.4}
	if got := s.State.Know.Jobs.Scales; len(got) != 1 || got[0].Parts != want.Parts || !slices.Equal(got[0].When.Levels, want.When.Levels) {
		t.Errorf("the scales of all work are %+v", got)
	}
	s.wants("Yours.")
	s.tap("Put the starter values back")
	if got := s.State.Know.Jobs.Scales; len(got) != 0 {
		t.Errorf("put back, the scales are %+v", got)
	}
}

// What holds for all that is parted out is changed on the page, and put back.
func TestTheTermsOfPartingOutAreTheShops(t *testing.T) {
	s := at(t, "Parting out")
	before := s.State.Know.Parts.Terms
	s.retype(s.number(0), "25")
	if got := s.State.Know.Parts.Selling; got != .25 {
		t.Errorf("selling takes %v, want a quarter; faults %+v", got, s.State.OwnFaults)
	}
	s.wants("Yours.")
	s.tap("Put the starter values back")
	if got := s.State.Know.Parts.Terms; got != before {
		t.Errorf("put back, the terms are %+v", got)
	}
}
