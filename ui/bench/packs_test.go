package bench

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/shopspring/decimal"

	"walkline/ui/desk"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
	"walkline/valuation/checks"
)

// pack is a jurisdiction; every figure is made up.
func pack(id, name string) checks.Pack {
	share := decimal.RequireFromString("0.75")
	read := checks.Source{Citation: "Code 1 section 2", Status: "read", Read: "2026-11-01"}
	return checks.Pack{Format: "walkline-jurisdiction/1", ID: id, Name: name, Currency: "USD",
		Thresholds: []checks.Threshold{{Name: "salvage", From: &share, Reached: true, Source: read}},
		Questions:  []checks.Row{{Text: "Is a bond asked for?", Source: checks.Source{Status: "from memory"}}}}
}

func TestAJurisdictionSaysItsSourcesAndIsTakenOut(t *testing.T) {
	s := at(t, "Jurisdictions", pack("US-XX", "Xanthia"), pack("US-YY", "Ypsil"))
	s.Do(desk.AddPack(s.Desk.Documents.Encode(pack("US-YY", "Ypsil of mine"), "USD")))
	if got := s.listed(); len(got) != 2 || !strings.Contains(got[0], "ships with it") || !strings.Contains(got[1], "Ypsil of mine") {
		t.Fatalf("%q: listed %q", s.State.Trouble, got)
	}
	s.window.Canvas().Focus(s.page.First())
	test.Type(s.page.First(), "xan")
	seen.Press(s.page.First(), fyne.KeyReturn)
	s.wants("salvage: repair at 75 % of the value or more", "Code 1 section 2, read 2026-11-01: check with the agency.",
		"From memory: ask the agency.")
	if slices.Contains(seen.Texts(s.page.Object()), "Remove this one") {
		t.Error("one that ships can be taken out")
	}
	s.retype(s.page.First(), "mine")
	seen.Press(s.page.First(), fyne.KeyReturn)
	list := seen.All[*table.Table](s.page.Object())[0]
	s.tap("Remove this one")
	s.Do(desk.Undo())
	seen.Press(s.page.First(), fyne.KeyBackspace, fyne.KeyBackspace, fyne.KeyBackspace, fyne.KeyBackspace)
	list.SelectRow(0)
	seen.Press(list, fyne.KeyDelete)
	if len(s.State.Packs) != 1 || len(list.Menu(0)) != 1 {
		t.Error("one that ships was taken out by Delete")
	}
	list.SelectRow(1)
	if items := list.Menu(1); len(items) != 2 || items[1].Label != "Remove this one" {
		t.Errorf("menu %v", items)
	}
	seen.Press(list, fyne.KeyDelete)
	s.tap("Add one from a file…")
	if len(s.State.Packs) != 0 || !slices.Equal(s.Steps, []string{"add a jurisdiction", "remove US-YY", "remove US-YY"}) ||
		!slices.Equal(s.Wished, []string{"jurisdiction"}) {
		t.Errorf("did %q, asked for %q", s.Steps, s.Wished)
	}
}

func TestABackupThatWaitsIsSaid(t *testing.T) {
	s := at(t, "Backup")
	s.wants("All is kept in " + s.Store.Path())
	backup := filepath.Join(t.TempDir(), "backup.db")
	if err := s.Desk.Backup(t.Context(), backup); err != nil {
		t.Fatal(err)
	}
	s.State = s.Desk.Staged(s.State, backup, s.Desk.StageRestore(t.Context(), backup))
	s.page.Render(s.State)
	s.wants("A backup is ready: close the window and start again")
	s.tap("Back up now…")
	s.tap("Restore from a backup…")
	s.tap("Do not restore it")
	if !slices.Equal(s.Wished, []string{"backup", "backup to restore"}) || s.Store.Staged() ||
		seen.Says(s.page.Object(), "A backup is ready") {
		t.Errorf("asked for %q; nothing waits, yet it says so", s.Wished)
	}
	s.State.Keeping = desk.Keeping{}
	s.page.Render(s.State)
	s.wants("kept in memory only")
}
