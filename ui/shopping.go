package ui

import (
	"context"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/task"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/table"
	"walkline/valuation"
)

// shopping is the dialog of the parts that one lot or several need.
type shopping struct {
	w       *Window
	dialog  *dialog.CustomDialog
	baskets []desk.Basket
	sum     *widget.RichText
	table   *table.Table
	list    []valuation.Wanted
	saves   []*widget.Button // that want a list
}

// Shop shows the shopping list of the open lot, or of the lots of a mark.
func (w *Window) Shop() {
	s := &shopping{w: w, baskets: w.state.Baskets(), sum: form.Small("Listing the parts…")}
	if len(s.baskets) == 0 {
		w.say(desk.State{Notice: "There is no lot yet whose parts could be listed."})
		return
	}
	var words []string
	for _, b := range s.baskets {
		words = append(words, b.Words)
	}
	of := widgets.NewSelect(words, nil)
	of.SetSelectedIndex(0)
	of.OnChanged = func(string) { w.guard(func() { s.show(of.SelectedIndex()) }) }
	var columns []table.Column
	for _, c := range view.ShoppingColumns {
		columns = append(columns, table.Column{Title: c.Title, Width: c.Width, Right: c.Figures, Meaning: view.Help(c.Title),
			Grows: c.Title == "For"})
	}
	s.table = table.New(columns)
	s.table.Empty = "No part is needed as far as is known."
	head := container.NewVBox(container.NewHBox(widget.NewLabel("Parts of"), form.Roomy(of, words)), s.sum)
	s.dialog = dialog.NewCustomWithoutButtons("Shopping list", form.Under(head, s.table, nil), w.window)
	s.saves = []*widget.Button{widget.NewButton("Print…", w.handler(s.print)), widget.NewButton("As a table (CSV)…", w.handler(s.save))}
	s.dialog.SetButtons([]fyne.CanvasObject{widget.NewButton("Close", s.dialog.Hide), s.saves[0], s.saves[1]})
	room := w.window.Canvas().Size()
	s.dialog.Resize(fyne.NewSize(room.Width-40, room.Height-60))
	w.open(s.dialog)
	s.show(0)
	w.focusIn(of)
}

// show lists the parts of a basket, away from the window.
func (s *shopping) show(basket int) {
	s.fill(nil, "Listing the parts…")
	lots, factors := s.baskets[basket].Lots, s.w.state.Factors
	task.Start(s.w.runner, task.Order[[]valuation.Wanted]{Key: "shopping",
		Work: func(ctx context.Context) ([]valuation.Wanted, error) { return s.w.desk.Shopping(ctx, factors, lots) },
		Show: func(list []valuation.Wanted, err error) {
			if err != nil {
				s.fill(nil, "! Could not list the parts: "+err.Error())
				return
			}
			s.fill(list, view.ShoppingSum(list))
		}})
}

func (s *shopping) fill(list []valuation.Wanted, words string) {
	s.list = list
	var rows []table.Row
	for _, x := range list {
		rows = append(rows, table.Row{Cells: view.ShoppingRow(x, string(s.w.desk.Today()))})
	}
	s.table.SetRows(rows)
	s.sum.Segments[0].(*widget.TextSegment).Text = words
	s.sum.Refresh()
	for _, b := range s.saves {
		if b.Enable(); len(list) == 0 {
			b.Disable()
		}
	}
}

func (s *shopping) print() {
	list := s.list
	s.dialog.Hide()
	s.w.print(printing{title: "Shopping list", name: "shopping list.pdf", kind: printable,
		make: func() ([]byte, error) { return s.w.desk.ShoppingSheet(list) }})
}

func (s *shopping) save() {
	list := s.list
	s.dialog.Hide()
	s.w.print(printing{title: "Shopping list", name: "shopping list.csv", kind: "A CSV table: any spreadsheet reads it.",
		make: func() ([]byte, error) { return s.w.desk.ShoppingTable(list) }})
}
