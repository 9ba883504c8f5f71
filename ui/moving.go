package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
)

// moveLots asks for another sale and its day, and moves lots there.
func (w *Window) moveLots(ids []int64) {
	if len(ids) == 0 {
		w.say(desk.State{Notice: "Select a lot first."})
		return
	}
	sale, day, says := widgets.NewTextEntry(), widgets.NewTextEntry(), widgets.NewCaption("")
	sale.Complete("Sale")
	day.SetPlaceHolder("11/27, Nov 27 or tomorrow; empty: not known")
	known := w.state.Sales()
	var names []string
	for _, s := range known {
		names = append(names, s.Words())
	}
	pick := widgets.NewSelect(names, nil)
	pick.OnChanged = func(words string) {
		if i := slices.Index(names, words); i >= 0 {
			sale.SetText(known[i].Name)
			day.SetText(form.DayShown(known[i].Day))
		}
	}
	var d *dialog.CustomDialog
	move := w.handler(func() {
		on, _, err := form.ReadDay(day.Text)
		if err != nil {
			says.SetWarning(true)
			says.SetText("! " + err.Error())
			return
		}
		d.Hide()
		w.Do(desk.MoveLots(sale.Text, on, ids...))
	})
	body := container.NewVBox(widget.NewForm(widget.NewFormItem("A sale on the Board", pick), widget.NewFormItem("Sale", sale),
		widget.NewFormItem("Sale day", day)), says)
	d = dialog.NewCustomWithoutButtons("Move "+view.Count(len(ids), "lot")+" to another sale", widgets.NewLayer(body, w.runner), w.window)
	d.SetButtons([]fyne.CanvasObject{widgets.NewButton("Cancel", func() { d.Hide() }), widgets.NewButton("Move", move)})
	sale.OnSubmitted, day.OnSubmitted = func(string) { move() }, func(string) { move() }
	sale.OnEscape, day.OnEscape = func() { d.Hide() }, func() { d.Hide() }
	d.Resize(fyne.NewSize(560, 260))
	w.open(d)
	w.focusIn(sale)
}
