package ui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/test"

	"walkline/cmd/wire"
	"walkline/cmd/wire/trial"
	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/valuation"
)

// faulty is a reader of run lists with a fault in it.
type faulty struct{ wire.Lister }

func (faulty) OpenList([]byte, desk.Opening) (desk.Sheet, error) { panic("index out of range") }

// guarded returns a window whose reader of run lists has a fault, and the faults that were caught.
func guarded(t *testing.T) (*Window, *[]task.Crash) {
	t.Helper()
	d := trial.Desk(trial.Store(t))
	d.Lister = faulty{}
	var caught []task.Crash
	w := NewWindow(test.NewApp(), Parts{Desk: d, First: d.Load(t.Context()), Runner: task.Inline{},
		Crash: func(c task.Crash) { caught = append(caught, c) }})
	t.Cleanup(w.window.Close)
	w.Show()
	return w, &caught
}

// A fault in what a dialog, a drop or an action does is a sentence and a crash file; the window lives on.
func TestAFaultInAHandlerIsSaidAndTheWindowLivesOn(t *testing.T) {
	table := filepath.Join(t.TempDir(), "list.csv")
	if err := os.WriteFile(table, []byte("Lot\n14\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for name, do := range map[string]func(w *Window){
		"drop": func(w *Window) { w.dropped(fyne.Position{}, []fyne.URI{storage.NewFileURI(table)}) },
		"dialog": func(w *Window) {
			w.ImportList()
			top := w.window.Canvas().Overlays().Top()
			seen.All[*widgets.TextEntry](top)[0].SetText(table)
			for _, b := range seen.All[*widgets.Button](top) {
				if b.Text == "Read" {
					test.Tap(b)
				}
			}
		},
		"action": func(w *Window) { w.Do(desk.EditShop("fault", func(*desk.Shop) { panic("index out of range") })) },
	} {
		w, caught := guarded(t)
		do(w)
		if len(*caught) != 1 || !strings.Contains(w.notice.Text, "A fault in the program") {
			t.Errorf("%s: %d faults were caught, the window says %q", name, len(*caught), w.notice.Text)
		}
		if w.Do(desk.NewLot()); w.state.Open == nil || strings.Contains(w.notice.Text, "fault") {
			t.Errorf("%s: the window says %q and has no lot open", name, w.notice.Text)
		}
	}
}

// The photo of a bill is kept by its hash; a file that is neither picture nor PDF is refused with its reason.
func TestTheFileOfABillIsKept(t *testing.T) {
	w, _ := guarded(t)
	folder := t.TempDir()
	for name, data := range map[string]string{"hood.pdf": "%PDF-1.7 and so on", "list.csv": "price\n1\n"} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(data), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	var name, hash string
	take := func(n, h string) bool { name, hash = n, h; return true }
	w.keepFile(filepath.Join(folder, "hood.pdf"), take)
	if _, err := w.desk.Files.KeptFile(hash, "pdf"); err != nil || name != "hood.pdf" {
		t.Errorf("%q, %q, %v", name, hash, err)
	}
	hash = ""
	if w.keepFile(filepath.Join(folder, "list.csv"), take); hash != "" || !strings.HasPrefix(w.notice.Text,
		"! Could not keep list.csv: it is no PDF, and as a photo") {
		t.Errorf("a table is kept as a bill: %q, %q", hash, w.notice.Text)
	}
}

// What is kept by something else while a lot is open is asked about where it clashes, and kept where the user says so.
func TestAClashIsAskedAndSettled(t *testing.T) {
	year := func(y int) desk.Action {
		return desk.EditLot("model year", func(c *valuation.Case) { c.Lot.ModelYear = y })
	}
	for answer, want := range map[string]int{"Keep my change": 2016, "Keep what is there": 2018} {
		w, _ := guarded(t)
		w.Do(desk.NewLot())
		id := w.state.Open.ID
		elsewhere := w.desk.Do(t.Context(), w.state, year(2018))
		if w.Do(year(2016)); elsewhere.Trouble != "" || w.window.Canvas().Overlays().Top() == nil {
			t.Fatalf("%q: nothing is asked: %q", answer, w.notice.Text)
		}
		for _, b := range seen.All[*widgets.Button](w.window.Canvas().Overlays().Top()) {
			if b.Text == answer {
				test.Tap(b)
			}
		}
		if l, err := w.desk.Book.Lot(t.Context(), id); err != nil || l.Case.Lot.ModelYear != want ||
			w.state.Open.Case.Lot.ModelYear != want || w.modal() {
			t.Errorf("%q: kept %d, shown %d, %v", answer, l.Case.Lot.ModelYear, w.state.Open.Case.Lot.ModelYear, err)
		}
	}
}
