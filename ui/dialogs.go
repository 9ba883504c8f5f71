package ui

import (
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/widgets"
)

// shown is a dialog as the window keeps it.
type shown interface {
	Show()
	Hide()
	SetOnClosed(func())
}

// opened is a dialog on show, and what it does with a key while none of its fields has the keyboard.
type opened struct {
	dialog shown
	keys   func(*fyne.KeyEvent)
}

// open shows a dialog that Escape closes and, where no field has the keyboard, Enter confirms.
func (w *Window) open(d shown) {
	w.openWith(d, func(e *fyne.KeyEvent) {
		switch e.Name {
		case fyne.KeyEscape:
			d.Hide()
		case fyne.KeyReturn, fyne.KeyEnter:
			if c, ok := d.(interface{ Confirm() }); ok {
				c.Confirm()
			}
		}
	})
}

// openWith shows a dialog with keys of its own. A dialog may open the next one before it has closed itself: the keys are
// always those of the last one that is still open.
func (w *Window) openWith(d shown, keys func(*fyne.KeyEvent)) {
	w.dialogs = append(w.dialogs, opened{d, keys})
	d.SetOnClosed(func() { w.forget(d) })
	d.Show()
}

// forget takes a dialog that has closed off those on show.
func (w *Window) forget(d shown) {
	w.dialogs = slices.DeleteFunc(w.dialogs, func(o opened) bool { return o.dialog == d })
}

// telling is a dialog with one button, which closes it.
func (w *Window) telling(title, end string, body fyne.CanvasObject) *dialog.CustomDialog {
	d := dialog.NewCustomWithoutButtons(title, body, w.window)
	d.SetButtons([]fyne.CanvasObject{widgets.NewButton(end, d.Hide)})
	return d
}

// question is a dialog with two answers; to close it is no.
type question struct {
	*dialog.CustomDialog
	agree    *widgets.Button
	answered func(yes bool)
	said     bool
}

// question returns a question, whose answer is told once it has closed.
func (w *Window) question(title, yes, no string, body fyne.CanvasObject, answered func(yes bool)) *question {
	q := &question{CustomDialog: dialog.NewCustomWithoutButtons(title, body, w.window), answered: answered}
	q.agree = widgets.NewButton(yes, q.Confirm)
	q.agree.Importance = widget.HighImportance
	q.SetButtons([]fyne.CanvasObject{widgets.NewButton(no, q.Hide), q.agree})
	return q
}

// Confirm answers yes, where yes can be said now.
func (q *question) Confirm() {
	if q.agree.Disabled() {
		return
	}
	q.said = true
	q.Hide()
}

// SetOnClosed sets what follows the closing; the answer comes last.
func (q *question) SetOnClosed(closed func()) {
	q.CustomDialog.SetOnClosed(func() {
		closed()
		q.answered(q.said)
	})
}

// modal reports whether a dialog is open: dropped files, and the window's own keys, wait.
func (w *Window) modal() bool { return len(w.dialogs) > 0 }

// typed hears the keys that no field takes.
func (w *Window) typed(e *fyne.KeyEvent) {
	if w.modal() {
		w.dialogs[len(w.dialogs)-1].keys(e)
		return
	}
	if e.Name == fyne.KeyEscape {
		w.back()
	}
}

// breath is how long a field of a dialog waits for the keyboard: the space bar that presses a button comes as a key and then
// as a character, which must not land in the field.
const breath = 20 * time.Millisecond

// focusIn gives the keyboard to a field of the dialog that has just been opened.
func (w *Window) focusIn(field fyne.Focusable) {
	w.runner.After(breath, func() {
		if w.modal() {
			w.window.Canvas().Focus(field)
		}
	})
}
