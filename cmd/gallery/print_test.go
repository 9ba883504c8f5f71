package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/theme"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
	"walkline/valuation/lot"
)

func TestTheDecisionSheetIsSavedWhereThePathSays(t *testing.T) {
	home := t.TempDir()
	t.Setenv("HOME", home)
	s, _ := worksheet(t, "27", '1')
	s.press(fyne.KeyP)
	path := seen.All[*widgets.TextEntry](s.top())[0]
	if want := filepath.Join(home, "lot 27 Kettrick Dunlin decision.pdf"); path.Text != want {
		t.Errorf("proposed %q, want %q", path.Text, want)
	}
	folder := t.TempDir()
	for text, says := range map[string]string{"": "Enter where", "sheet.pdf": "whole path", folder: "is a folder",
		filepath.Join(folder, "none", "a.pdf"): "There is no folder"} {
		path.SetText(text)
		s.tap(t, "Save")
		if all := strings.Join(seen.Texts(s.top()), " "); !strings.Contains(all, says) {
			t.Errorf("for %q the dialog does not say %q: %q", text, says, all)
		}
	}
	to := filepath.Join(folder, "sheet.pdf")
	path.SetText(to)
	s.tap(t, "Save")
	data, err := os.ReadFile(to)
	if err != nil || !bytes.HasPrefix(data, []byte("%PDF-")) {
		t.Fatalf("%v, %.20q", err, data)
	}
	s.wants(t, "The decision sheet is in "+to)
	s.press(fyne.KeyP)
	if again := seen.All[*widgets.TextEntry](s.top())[0].Text; filepath.Dir(again) != folder {
		t.Errorf("the next sheet is proposed at %q", again)
	}
}

func TestAFileIsReplacedOnlyWhenAsked(t *testing.T) {
	s, _ := worksheet(t, "27", '1')
	to := filepath.Join(t.TempDir(), "mine.pdf")
	for _, answer := range []string{"Keep it", "Replace it"} {
		if err := os.WriteFile(to, []byte("mine"), 0o600); err != nil {
			t.Fatal(err)
		}
		s.press(fyne.KeyP)
		seen.All[*widgets.TextEntry](s.top())[0].SetText(to)
		s.tap(t, "Save")
		s.tap(t, answer)
		data, err := os.ReadFile(to)
		if err != nil || (string(data) == "mine") != (answer == "Keep it") {
			t.Errorf("%s: %v, %.10q", answer, err, data)
		}
	}
}

func TestWithoutAVerdictThereIsNothingToPrint(t *testing.T) {
	s := opened(t, task.Inline{})
	s.press(fyne.KeyP)
	s.wants(t, "First open the lot that the decision sheet is for.")
	s.window.NewLot()
	s.press(fyne.KeyP)
	s.wants(t, "There is no verdict to print yet.")
	if s.screen.Canvas().Overlays().Top() != nil {
		t.Error("a dialog is open")
	}
}

// The file for the rebuilt inspection is of the open build, with the photographs of its lot.
func TestTheRebuiltFileIsSaved(t *testing.T) {
	s, id := withPhotos(t)
	s.press(fyne.KeyP, fyne.KeyModifierShift)
	s.wants(t, "First open the build that the file is for.")
	s.window.Do(desk.MarkLots(lot.Won, id))
	s.press(fyne.KeyU)
	s.window.Do(desk.ShowBuild(id))
	s.press(fyne.KeyP, fyne.KeyModifierShift)
	path := seen.All[*widgets.TextEntry](s.top())[0]
	if want := "lot 27 Kettrick Dunlin rebuilt inspection.pdf"; filepath.Base(path.Text) != want {
		t.Errorf("proposed %q", path.Text)
	}
	to := filepath.Join(t.TempDir(), "rebuilt.pdf")
	path.SetText(to)
	s.tap(t, "Save")
	data, err := os.ReadFile(to)
	if err != nil || bytes.Count(data, []byte("/Subtype /Image")) != 2 {
		t.Errorf("%v, %d pictures in the file, want 2", err, bytes.Count(data, []byte("/Subtype /Image")))
	}
	s.wants(t, "The file for the rebuilt inspection is in "+to)
}

// The plan of the sale day is printed from its page and from the menu, once it is worked out.
func TestTheSalePlanIsPrinted(t *testing.T) {
	s := opened(t, task.Inline{})
	s.window.LoadDemo()
	s.window.PrintPlan()
	s.wants(t, "First open the sale plan.")
	s.window.Do(desk.Go(desk.SalePlan))
	s.window.Do(desk.EditDay("what there is", func(d *desk.SaleDay) { d.Cash, d.Hours, d.Bays = 900000, 120, 2 }))
	s.tap(t, "Print the plan…")
	to := filepath.Join(t.TempDir(), "plan.pdf")
	seen.All[*widgets.TextEntry](s.top())[0].SetText(to)
	s.tap(t, "Save")
	if data, err := os.ReadFile(to); err != nil || !bytes.HasPrefix(data, []byte("%PDF-")) {
		t.Errorf("%v, %.30q", err, data)
	}
}

// Money that comes in on many days leaves the plan its room, with large text too: the amounts scroll, and the page does.
func TestManyAmountsLeaveTheSalePlanItsRoom(t *testing.T) {
	s := openedIn(t, look{"light-1280-text1.5", fyne.Size{Width: 1280, Height: 720}, theme.Light, 1.5}, task.Inline{})
	s.window.LoadDemo()
	room := func(amounts int) (plan, page float32) {
		s.window.Do(desk.Go(desk.SalePlan))
		s.window.Do(desk.EditDay("what there is", func(d *desk.SaleDay) {
			d.Cash, d.Hours, d.Bays, d.In = 900000, 120, 2, make([]desk.Coming, amounts)
		}))
		return seen.All[*table.Table](s.top())[0].Size().Height, seen.All[*container.Scroll](s.top())[0].Content.MinSize().Height
	}
	_, few := room(4)
	plan, many := room(40)
	if plan < 300 || many > few+10 { // 10: the spaces between the rows
		t.Errorf("the plan is %.0f high, the page %.0f with few amounts and %.0f with many", plan, few, many)
	}
}
