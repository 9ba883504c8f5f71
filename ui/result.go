package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// tellResult asks what a lot went for, and who got it.
func (w *Window) tellResult(ids []int64) {
	at := slices.IndexFunc(w.state.Entries, func(e book.Entry) bool { return len(ids) == 1 && e.ID == ids[0] })
	if at < 0 {
		w.say(desk.State{Notice: "What a lot went for is told of one lot: tick or select just one."})
		return
	}
	e := w.state.Entries[at]
	p := view.NewPurse(e.Currency)
	price := widgets.NewNumberEntry(widgets.Spec{Kind: widgets.Money, Unit: p.Code, Digits: p.Digits, Least: widgets.Bound(0)}, nil)
	says := widgets.NewCaption("")
	says.SetText("The hammer price alone, without fees.")
	var d *dialog.CustomDialog
	tell := func(state lot.State) func() {
		return w.handler(func() {
			if price.Fault() != "" || !price.Value().Known {
				says.SetWarning(true)
				says.SetText("! Type the hammer price first.")
				return
			}
			d.Hide()
			w.Do(desk.TellResult(e.ID, state, money.Amount(price.Value().Minor(p.Digits))))
		})
	}
	body := container.NewVBox(widget.NewForm(widget.NewFormItem("Went for", price)), says)
	d = dialog.NewCustomWithoutButtons("What lot "+e.Number+" went for", body, w.window)
	d.SetButtons([]fyne.CanvasObject{widgets.NewButton("Cancel", func() { d.Hide() }), widgets.NewButton("I won it", tell(lot.Won)),
		widgets.NewButton("Another got it", tell(lot.Lost))})
	d.Resize(fyne.NewSize(520, 220))
	w.open(d)
	w.focusIn(price.Focus())
}
