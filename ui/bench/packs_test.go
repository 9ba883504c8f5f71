package bench

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/shopspring/decimal"

	"walkline/ui/desk"
	"walkline/ui/widgets/seen"
	"walkline/valuation/checks"
)

// pack is a jurisdiction; every figure is made up.
func pack(id, name string) checks.Pack {
	share := decimal.RequireFromString("0.75")
	read := checks.Source{Citation: "Code 1 section 2", Status: "read", Read: "2026-11-01"}
	return checks.Pack{ID: id, Name: name, Currency: "USD", Thresholds: []checks.Threshold{{Name: "salvage", From: &share, Reached: true, Source: read}},
		Questions: []checks.Row{{Text: "Is a bond asked for?", Source: checks.Source{Status: "from memory"}}}}
}

func TestAJurisdictionSaysItsSourcesAndIsTakenOut(t *testing.T) {
	s := at(t, "Jurisdictions")
	know := *s.state.Starter
	know.Packs = []checks.Pack{pack("US-XX", "Xanthia"), pack("US-YY", "Ypsil")}
	s.state.Starter, s.state.Packs = &know, []checks.Pack{pack("US-YY", "Ypsil of mine")}
	s.page.Render(s.state)
	if got := s.listed(); len(got) != 2 || !strings.Contains(got[0], "ships with it") || !strings.Contains(got[1], "Ypsil of mine") {
		t.Fatalf("listed %q", got)
	}
	s.window.Canvas().Focus(s.page.First())
	test.Type(s.page.First(), "xan")
	seen.Press(s.page.First(), fyne.KeyReturn)
	s.wants("salvage: repair at 75 % of the value or more", "Code 1 section 2, read 2026-11-01: check with the agency.", "From memory: ask the agency.")
	if slices.Contains(seen.Texts(s.page.Object()), "Remove this one") {
		t.Error("one that ships can be taken out")
	}
	s.retype(s.page.First(), "mine")
	seen.Press(s.page.First(), fyne.KeyReturn)
	s.tap("Remove this one")
	s.tap("Add one from a file…")
	if !slices.Equal(s.labels, []string{"remove US-YY", "add a jurisdiction"}) {
		t.Errorf("asked for %q", s.labels)
	}
}

func TestABackupThatWaitsIsSaid(t *testing.T) {
	s := at(t, "Backup")
	s.wants("kept in memory only")
	s.state.Keeping = desk.Keeping{Path: "lots.db", Staged: true}
	s.page.Render(s.state)
	s.wants("All is kept in lots.db", "A backup is ready: close the window and start again")
	s.tap("Back up now…")
	s.tap("Restore from a backup…")
	s.tap("Do not restore it")
	if !slices.Equal(s.labels, []string{"backup", "restore", "unstage"}) {
		t.Errorf("asked for %q", s.labels)
	}
	s.state.Keeping.Staged = false
	s.page.Render(s.state)
	if seen.Says(s.page.Object(), "A backup is ready") {
		t.Error("nothing waits, yet it says so")
	}
}
