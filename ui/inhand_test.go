package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"walkline/cmd/wire/trial"
	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// onBuild returns a window where lot 211 was called and then the build of lot 205 was opened, and the ids of both.
func onBuild(t *testing.T) (w *Window, live, built int64) {
	t.Helper()
	kept := trial.Store(t)
	d := trial.Desk(kept)
	called, bought := d.Starter.Clone(), d.Starter.Clone()
	called.Lot.Number, bought.Lot.Number, bought.Lot.Make, bought.ValuedOn = "211", "205", "Kettrick", trial.Today
	bought.Lot.Title.Document, bought.Resale.Guess = "salvage", &prob.Three{Low: 7000, Likely: 8000, High: 9000}
	bought.SeeNothing(true)
	bought.Buying.BidSteps = []invoice.Step{{Step: 2500}}
	bought.Rules.MinProfit = new(money.Amount)
	ids := trial.Add(t, kept, book.New{Case: called}, book.New{Case: bought})
	w = NewWindow(test.NewApp(), Parts{Desk: d, First: d.Load(t.Context()), Runner: task.Inline{}})
	t.Cleanup(w.window.Close)
	w.Show()
	w.Do(desk.TellResult(ids[1], lot.Won, 264000))
	w.Do(desk.OpenLot(ids[0]))
	w.goTo(desk.Live)
	w.Do(desk.GoToBuild(ids[1]))
	return w, ids[0], ids[1]
}

// run does the command of a menu.
func (w *Window) run(t *testing.T, words string) {
	t.Helper()
	for _, g := range w.groups() {
		for _, c := range g.commands {
			if c.words == words {
				c.do()
				return
			}
		}
	}
	t.Fatalf("no command %q", words)
}

func TestTheBuildOnScreenIsThisLotEverywhere(t *testing.T) {
	w, live, built := onBuild(t)
	if b := w.baskets()[0]; b.Words != "this lot" || b.Lots[0] != built {
		t.Errorf("the shopping list is of %+v", b)
	}
	if !strings.HasPrefix(w.pin.press.Text, "Lot 205, won at ") || !strings.Contains(w.pin.press.Text, "2,640") {
		t.Errorf("the head of the page says %q", w.pin.press.Text)
	}
	w.PrintDecision()
	sheet := w.window.Canvas().Overlays().Top()
	if path := seen.All[*widgets.TextEntry](sheet)[0].Text; !strings.Contains(path, "lot 205") {
		t.Errorf("the decision sheet is %q", path)
	}
	w.window.Canvas().Overlays().Remove(sheet)
	if w.goTo(desk.Live); w.state.Open.ID != live {
		t.Errorf("Live goes on with lot %d", w.state.Open.ID)
	}
	w.goTo(desk.Builds)
	if w.goTo(desk.Why); w.state.Open.ID != built {
		t.Errorf("Why is of lot %d", w.state.Open.ID)
	}
	w.goTo(desk.Builds)
	w.Do(desk.CloseBuild())
	if _, any := w.at(); any {
		t.Error("with the list of builds on screen a command is meant for some lot")
	}
}

// What the menu does to the build on screen is taken back by undo, and by nothing else.
func TestTheMenuMeansTheBuildOnScreen(t *testing.T) {
	for words, gone := range map[string]bool{"Mark: lost": false, "Mark: passed": true, "Remove": true, "Archive": false} {
		w, live, built := onBuild(t)
		w.run(t, words)
		after, _ := w.desk.Book.Lot(t.Context(), built)
		if other, _ := w.desk.Book.Lot(t.Context(), live); other.State == lot.Lost || other.State == lot.Passed || other.Removed ||
			other.Archived {
			t.Errorf("%s: lot 211 was changed", words)
		}
		if after.State == lot.Won && !after.Archived && !after.Removed || (w.state.Build == nil) != gone {
			t.Errorf("%s: marked %s, build on screen %t", words, after.State, w.state.Build != nil)
		}
		w.undo()
		if again, err := w.desk.Book.Lot(t.Context(), built); err != nil || again.State != lot.Won || again.Archived || again.Removed {
			t.Errorf("%s, undone: %v %s", words, err, again.State)
		}
		w.redo()
		if again, _ := w.desk.Book.Lot(t.Context(), built); again.State != after.State || again.Archived != after.Archived ||
			again.Removed != after.Removed {
			t.Errorf("%s, done again: %s", words, again.State)
		}
	}
}
