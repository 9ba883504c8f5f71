package ui

import (
	"fyne.io/fyne/v2"

	"walkline/ui/desk"
)

// grant asks the user for what a wish needs, and goes on from there.
func (w *Window) grant(wish desk.Wish) {
	map[desk.Wanted]func(){
		desk.AddLot:            w.NewLot,
		desk.AddDemo:           w.LoadDemo,
		desk.ImportRunList:     w.ImportList,
		desk.ImportComparables: w.Import,
		desk.ImportPastBuys:    w.importPast,
		desk.PastTemplate:      w.pastTemplate,
		desk.NewPhotos:         func() { w.addPhotos(wish.Key) },
		desk.LargePhoto:        func() { w.showPhoto(wish.Key) },
		desk.FileOfBill:        func() { w.chooseFile(wish.Chosen) },
		desk.PrintRebuilt:      w.PrintRebuilt,
		desk.NewPack:           w.addPack,
		desk.BackUp:            w.backUp,
		desk.RestoreBackup:     w.restoreBackup,
		desk.EffectOfFactor:    func() { w.lookAt(wish.Key) },
		desk.ReplayPast:        w.replay,
	}[wish.For]()
}

// guarded returns a handler of the toolkit's that lives through a fault.
func guarded[T any](w *Window, handler func(T)) func(T) {
	return func(x T) { w.guard(func() { handler(x) }) }
}

// dropped takes files dropped on the window.
func (w *Window) dropped(_ fyne.Position, files []fyne.URI) { w.guard(func() { w.Drop(files) }) }
