package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"

	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
)

// chooseColumns lets the user choose the columns of the Board and their order; the Board follows at once.
func (w *Window) chooseColumns() {
	list := container.NewVBox()
	var lay func()
	show := func(chosen []view.BoardColumn) {
		w.board.ShowColumns(chosen)
		lay()
	}
	lay = func() {
		list.Objects = nil
		chosen := w.board.Columns()
		for i := range chosen {
			list.Add(w.shownColumn(chosen, i, show))
		}
		for _, c := range view.BoardColumns {
			hidden := view.BoardColumn{Title: c.Title}
			if !slices.ContainsFunc(chosen, func(s view.BoardColumn) bool { return s.Title == c.Title }) {
				list.Add(widgets.NewCheck(c.Title, func(bool) { w.guard(func() { show(append(chosen, hidden)) }) }))
			}
		}
		list.Refresh()
	}
	lay()
	help := form.Small("Ticked columns are shown, from left to right. Drag the edge of a heading to change a width: it is kept.")
	d := dialog.NewCustomWithoutButtons("Columns of the Board", form.Under(help, container.NewVScroll(list), nil), w.window)
	d.SetButtons([]fyne.CanvasObject{widgets.NewButton("As at first", w.handler(func() { show(nil) })),
		widgets.NewButton("Close", func() { d.Hide() })})
	d.Resize(fyne.NewSize(460, min(560, w.window.Canvas().Size().Height-60)))
	w.open(d)
}

// ShowColumns shows columns of the Board; none: those of the first start.
func (w *Window) ShowColumns(chosen []view.BoardColumn) { w.board.ShowColumns(chosen) }

// shownColumn is the row of a column that is shown: it can be hidden, and moved to the left.
func (w *Window) shownColumn(chosen []view.BoardColumn, i int, show func([]view.BoardColumn)) fyne.CanvasObject {
	tick := widgets.NewCheck(chosen[i].Title, nil)
	tick.SetChecked(true)
	tick.OnChanged = func(bool) { w.guard(func() { show(slices.Delete(slices.Clone(chosen), i, i+1)) }) }
	left := widgets.NewButton("Move left", w.handler(func() {
		moved := slices.Clone(chosen)
		moved[i-1], moved[i] = moved[i], moved[i-1]
		show(moved)
	}))
	if i == 0 {
		left.Disable()
	}
	return container.NewBorder(nil, nil, nil, left, tick)
}
