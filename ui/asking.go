package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/widgets"
	"walkline/ui/widgets/pick"
)

// asking is a question for a file that is there.
type asking struct {
	title string
	what  string   // the file, in a sentence
	hint  string   // in the empty field
	verb  string   // of the button
	of    pick.For // in the list
}

// ask asks for a file, by its path or from a list.
func (w *Window) ask(a asking, take func(path string)) {
	path := widgets.NewTextEntry()
	path.SetPlaceHolder(a.hint)
	var d *dialog.CustomDialog
	done := w.handler(func() {
		d.Hide()
		take(strings.TrimSpace(path.Text))
	})
	path.OnSubmitted = func(string) { done() }
	path.OnEscape = func() { d.Hide() }
	browse := widgets.NewButton("Look for it…",
		w.handler(func() { d.Hide(); w.pickOne(a.title, a.verb, a.of, take) }))
	words := widget.NewLabel(a.what)
	words.Wrapping = fyne.TextWrapWord
	body := container.NewVBox(words, container.NewBorder(nil, nil, nil, browse, path))
	d = dialog.NewCustomWithoutButtons(a.title, body, w.window)
	d.SetButtons([]fyne.CanvasObject{widgets.NewButton("Cancel", func() { d.Hide() }), widgets.NewButton(a.verb, done)})
	d.Resize(fyne.NewSize(680, 210))
	w.open(d)
	w.focusIn(path)
}
