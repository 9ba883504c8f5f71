package ui

import (
	"context"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/view"
	"walkline/ui/widgets"
)

// showRemembered lists the shapes of tables whose reading is remembered, each with what its columns became, and forgets one when asked.
func (w *Window) showRemembered() {
	all, err := w.desk.Remembered(context.Background())
	if err != nil {
		w.failed("read what is remembered of tables", err)
		return
	}
	at := -1
	says := widget.NewLabel("Choose a table on the left to see how it is read. Forget it, and the next one is looked at as the first was.")
	says.Wrapping = fyne.TextWrapWord
	list := widgets.NewList(func() int { return len(all) }, func() fyne.CanvasObject {
		l := widget.NewLabel("")
		l.Truncation = fyne.TextTruncateEllipsis
		return l
	}, func(i widget.ListItemID, o fyne.CanvasObject) {
		o.(*widget.Label).SetText(brief(all[i].What+": "+strings.Join(all[i].Columns, ", "), mostShown/10))
	})
	var forget *widgets.Button
	forget = widgets.NewButton("Forget it", w.handler(func() {
		if err := w.desk.Forget(context.Background(), all[at]); err != nil {
			w.failed("forget how that table is read", err)
			return
		}
		all = slices.Delete(slices.Clone(all), at, at+1)
		at = -1
		list.UnselectAll()
		list.Refresh()
		forget.Disable()
		says.SetText("Forgotten.")
	}))
	forget.Disable()
	list.OnSelected = func(i widget.ListItemID) {
		at = i
		forget.Enable()
		says.SetText(strings.Join(view.RememberedWords(all[i]), "\n"))
	}
	if len(all) == 0 {
		says.SetText("Nothing is remembered yet. How a table is read is remembered when it is taken in, by the names of its columns.")
	}
	side := container.NewBorder(nil, container.NewHBox(forget), nil, nil, container.NewVScroll(says))
	split := container.NewHSplit(list, side)
	d := w.telling("What is remembered of tables", "Close", split)
	d.Resize(fyne.NewSize(860, 480))
	w.open(d)
}
