package ui

import (
	"strings"

	"fyne.io/fyne/v2"

	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/ui/widgets"
)

// grant asks the user for what a wish needs, and goes on from there.
func (w *Window) grant(wish desk.Wish) {
	map[desk.Wanted]func(){
		desk.AddLot:            w.NewLot,
		desk.AddDemo:           w.LoadDemo,
		desk.ReadListing:       func() { w.readListing(wish.Name) },
		desk.ImportRunList:     w.ImportList,
		desk.MoveToSale:        func() { w.moveLots(wish.Lots) },
		desk.ResultOfLot:       func() { w.tellResult(wish.Lots) },
		desk.BoardColumns:      w.chooseColumns,
		desk.ImportComparables: w.Import,
		desk.ImportPastBuys:    w.importPast,
		desk.ImportToShelf:     func() { w.choose(w.comparables()) },
		desk.RememberedTables:  w.showRemembered,
		desk.PastTemplate:      w.pastTemplate,
		desk.NewPhotos:         func() { w.addPhotos(wish.Key) },
		desk.LargePhoto:        func() { w.showPhoto(wish.Key) },
		desk.FileOfBill:        func() { w.chooseFile(wish.Chosen) },
		desk.OpenFile:          func() { w.openFile(wish.Name, wish.Key) },
		desk.PrintRebuilt:      w.PrintRebuilt,
		desk.WriteLedger:       w.writeLedger,
		desk.ShoppingList:      w.Shop,
		desk.PrintPlan:         w.PrintPlan,
		desk.NewPack:           w.addPack,
		desk.BackUp:            w.backUp,
		desk.RestoreBackup:     w.restoreBackup,
		desk.DailyBackup:       w.chooseDaily,
		desk.EffectOfFactor:    func() { w.lookAt(wish.Key) },
		desk.ReplayPast:        w.replay,
	}[wish.For]()
}

// readListing reads a text as the listing of the open lot, or as a table of comparables where it is one.
func (w *Window) readListing(text string) {
	switch {
	case strings.TrimSpace(text) == "":
		w.say(desk.State{Notice: "Paste or type the listing first."})
	case w.desk.Look != nil && w.desk.Look([]byte(text))[desk.OfComparables] > 1:
		if p, ok := w.window.Canvas().Focused().(*widgets.Passage); ok {
			p.SetText("") // it is no listing
		}
		w.Paste(text)
	default:
		w.Do(desk.FillIn(text))
		o := w.state.Open
		if o == nil || o.Listed == nil || w.state.Trouble != "" {
			return
		}
		if missing := view.StillMissing(*o); len(missing) > 0 {
			w.Do(desk.Seek(missing[0].Key).Quietly())
		} else if o.Case.Unlooked() {
			w.Do(desk.Seek("damage").Quietly())
		}
	}
}

// handler returns a handler for the toolkit that lives through a fault.
func (w *Window) handler(do func()) func() { return func() { w.guard(do) } }

// handling is handler for one that is told something.
func handling[T any](w *Window, do func(T)) func(T) {
	return func(x T) { w.guard(func() { do(x) }) }
}

// dropped takes files dropped on the window.
func (w *Window) dropped(_ fyne.Position, files []fyne.URI) { w.guard(func() { w.Drop(files) }) }
