package main

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
	"walkline/valuation/lot"
)

// A note of forty letters is one step, and each tick in a table is one.
func TestLettersAreOneStepAndTicksAreEach(t *testing.T) {
	s, id := worksheet(t, side, '2')
	before := s.kept(t, id).Damage
	for _, e := range seen.All[*widgets.TextEntry](s.screen.Content()) {
		if e.PlaceHolder == "what you saw; not counted" {
			s.screen.Canvas().Focus(e)
		}
	}
	s.retyped(strings.Repeat("bent", 10))
	notes := func() (all string) {
		for _, d := range s.kept(t, id).Damage {
			all += d.Note
		}
		return all
	}
	if !strings.Contains(notes(), strings.Repeat("bent", 10)) {
		t.Fatalf("the notes are %q", notes())
	}
	if s.undo(); !slices.Equal(s.kept(t, id).Damage, before) {
		t.Errorf("undone once, the notes are %q", notes())
	}
	s.press(fyne.Key4)
	list := seen.All[*table.Table](s.screen.Content())[0]
	s.screen.Canvas().Focus(list)
	seen.Press(list, fyne.KeyDown, fyne.KeySpace, fyne.KeyDown, fyne.KeySpace)
	s.undo()
	if rows := s.kept(t, id).Resale.Rows; !rows[0].Excluded || rows[1].Excluded {
		t.Errorf("of two ticks undone once are left %v, %v", rows[0].Excluded, rows[1].Excluded)
	}
}

// Undo shows the section in which it changed something.
func TestUndoShowsWhatItChanged(t *testing.T) {
	s, _ := worksheet(t, side, '1')
	year := seen.All[*widgets.NumberEntry](s.screen.Content())[0].Focus()
	s.screen.Canvas().Focus(year)
	s.retyped("2016")
	s.press(fyne.Key4)
	s.lacks(t, "As the list and the door plate say.")
	s.undo()
	s.wants(t, "Undone: Model year.", "2018 Kettrick Dunlin Plus", "As the list and the door plate say.")
}

// What was recorded on Live is one step of the sale, which undo on the worksheet leaves alone.
func TestUndoOnTheWorksheetLeavesTheHammerPrice(t *testing.T) {
	s, id := worksheet(t, side, '1')
	s.press(fyne.KeyL)
	s.types("1250\nw")
	s.press(fyne.Key1)
	s.undo()
	if l := s.lotOf(t, id); l.State != lot.Won || l.Build.Hammer == nil {
		t.Errorf("the book has %s, %+v", l.State, l.Build)
	}
	s.wants(t, "There is nothing to undo or redo on this page.")
	s.press(fyne.KeyL)
	if s.undo(); s.lotOf(t, id).State == lot.Won || s.lotOf(t, id).Build.Hammer != nil {
		t.Errorf("undone on Live, the book has %+v", s.lotOf(t, id).Build)
	}
	s.undo()
	s.wants(t, "There is nothing to undo or redo on this page.")
}

// The menu puts a lot away and takes it out again.
func TestALotIsArchivedFromTheMenu(t *testing.T) {
	s, id := worksheet(t, side, '1')
	choose := func(words string) {
		t.Helper()
		for _, m := range s.screen.MainMenu().Items {
			for _, i := range m.Items {
				if i.Label == words {
					i.Action()
					return
				}
			}
		}
		t.Fatalf("no %q in the menu", words)
	}
	if choose("Archive"); !s.lotOf(t, id).Archived {
		t.Error("put away, it is not in the archive")
	}
	s.wants(t, "Archived lots are kept")
	if choose("Take out of the archive"); s.lotOf(t, id).Archived {
		t.Error("taken out of the archive, it is in it")
	}
	s.press(fyne.KeyB)
	choose("Archive")
	s.wants(t, "Select a lot first.")
}

// The currency of the Bench is changed by its code, and taken back there and nowhere else.
func TestTheCurrencyIsChangedAndTakenBack(t *testing.T) {
	s := opened(t, task.Inline{})
	s.window.GoBench("Currency and units")
	field := s.screen.Canvas().Focused()
	test.Type(field, "eur")
	seen.Press(field, fyne.KeyReturn)
	s.wants(t, "The figures of the Bench are now in EUR", "nothing was converted")
	s.window.GoBench("House rules")
	s.undo()
	s.wants(t, "There is nothing to undo or redo on this page.")
	s.window.GoBench("Currency and units")
	s.undo()
	s.wants(t, "Undone: currency.")
	if got := s.desk.Load(t.Context()).Shop.Currency; got != "USD" {
		t.Errorf("undone, the Bench is in %s", got)
	}
}

// The hammer price of a build is typed under Invoice, and the lines of the sale's terms follow it.
func TestTheHammerPriceMakesTheInvoice(t *testing.T) {
	s, id := worksheet(t, side, '1')
	s.window.Do(desk.MarkLots(lot.Won, id))
	s.press(fyne.KeyU)
	s.window.Do(desk.ShowBuild(id))
	s.press(fyne.Key6)
	test.Type(s.screen.Canvas().Focused(), "1,250")
	b := s.lotOf(t, id).Build
	if b.Hammer == nil || *b.Hammer != 125000 || len(b.Charges) == 0 {
		t.Errorf("the book has %+v", b)
	}
	s.undo()
	if b := s.lotOf(t, id).Build; b.Hammer != nil || len(b.Charges) != 0 {
		t.Errorf("undone once, the book has %+v", b)
	}
}
