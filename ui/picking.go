package ui

import (
	"context"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/form"
	"walkline/ui/task"
	"walkline/ui/widgets"
	"walkline/ui/widgets/pick"
	"walkline/valuation/lot"
)

// picking is a dialog that lists the folders of the machine, for a file, files or a folder that are there.
type picking struct {
	*dialog.CustomDialog
	picker *pick.Picker
}

// newPicking returns the dialog, not yet open; it closes before what was picked is taken.
func newPicking(title, verb string, of pick.For, in fyne.Window, r task.Runner, take func(paths []string)) *picking {
	of.Away = func(name string, work func() (show func())) {
		task.Start(r, task.Order[func()]{Key: "picker, " + name,
			Work: func(ctx context.Context) (func(), error) { return task.Until(ctx, work) }, // the window closes all the same
			Show: func(show func(), err error) {
				if err == nil {
					show()
				}
			}})
	}
	of.Day = func(t time.Time) string { return form.DayShown(lot.Date(t.Format(time.DateOnly))) }
	p := &picking{picker: pick.New(of)}
	p.CustomDialog = dialog.NewCustomWithoutButtons(title, p.picker.Object(), in)
	p.picker.OnEscape = p.Hide
	p.picker.OnPicked = func(paths []string) {
		p.Hide()
		take(paths)
	}
	ok := widgets.NewButton(verb, p.picker.Take)
	ok.Importance = widget.HighImportance
	p.SetButtons([]fyne.CanvasObject{widgets.NewButton("Cancel", p.Hide), ok})
	room := in.Canvas().Size()
	p.Resize(fyne.NewSize(min(920, room.Width-40), min(600, room.Height-40)))
	return p
}

// Hide closes the dialog; a path that is still looked for is not taken any more.
func (p *picking) Hide() {
	p.picker.End()
	p.CustomDialog.Hide()
}

// Confirm takes what is chosen.
func (p *picking) Confirm() { p.picker.Take() }

// pickedIn is the setting of the toolkit that keeps the folder that something was picked in last: it is of the machine.
const pickedIn = "picked in"

// pick lets the user pick, beginning where something was picked last unless told where.
func (w *Window) pick(title, verb string, of pick.For, take func(paths []string)) {
	if of.Folder == "" {
		of.Folder = w.app.Preferences().String(pickedIn)
	}
	var p *picking
	p = newPicking(title, verb, of, w.window, w.runner, handling(w, func(paths []string) {
		w.app.Preferences().SetString(pickedIn, p.picker.Folder())
		take(paths)
	}))
	w.open(p)
	w.focusIn(p.picker.First())
}

// pickOne lets the user pick one file.
func (w *Window) pickOne(title, verb string, of pick.For, take func(path string)) {
	w.pick(title, verb, of, func(paths []string) { take(paths[0]) })
}
