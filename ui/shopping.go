package ui

import (
	"context"
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"walkline/store/book"
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
	lots    []book.Entry // that may be ticked, as on the Board
	ticked  map[int64]bool
	of      *widgets.Select
	pick    *table.Table // the lots
	sum     *widget.RichText
	table   *table.Table // the parts
	list    []valuation.Wanted
	saves   []*widgets.Button // that want a list
}

// Shop shows the shopping list of the lot in hand, of the lots of a mark, or of lots ticked one by one.
func (w *Window) Shop() {
	s := &shopping{w: w, baskets: w.baskets(), ticked: map[int64]bool{}, sum: form.Small("Listing the parts…")}
	if len(s.baskets) == 0 {
		w.say(desk.State{Notice: "There is no lot yet whose parts could be listed."})
		return
	}
	hand := w.state.InHand()
	for _, e := range w.state.Entries {
		if !e.Archived || hand != nil && hand.ID == e.ID {
			s.lots = append(s.lots, e)
		}
	}
	s.choosing()
	s.table = table.New(columnsOf(view.ShoppingColumns, "For"))
	s.table.Empty = "No part is needed, as far as is known."
	head := container.NewVBox(container.NewHBox(widget.NewLabel("Parts of"), form.Roomy(s.of, append(s.of.Options, s.of.PlaceHolder))),
		form.Small("Or tick the lots one by one: click a box, or press space on a row."))
	parts := container.NewVSplit(s.pick, form.Under(s.sum, s.table, nil))
	parts.Offset = .3
	body := container.New(form.Room{Width: 480, Height: 240}, form.Under(head, parts, nil))
	s.dialog = dialog.NewCustomWithoutButtons("Shopping list", body, w.window)
	s.saves = []*widgets.Button{widgets.NewButton("Print…", w.handler(s.print)), widgets.NewButton("As a table (CSV)…", w.handler(s.save))}
	s.dialog.SetButtons([]fyne.CanvasObject{widgets.NewButton("Close", s.dialog.Hide), s.saves[0], s.saves[1]})
	room := w.window.Canvas().Size()
	s.dialog.Resize(fyne.NewSize(room.Width-40, room.Height-60))
	w.open(s.dialog)
	s.take(0)
	w.focusIn(s.of)
}

// baskets returns the lots whose parts may be listed; where several are ticked on the Board, those first.
func (w *Window) baskets() []desk.Basket {
	all := w.state.Baskets()
	if ids := w.those(); len(ids) > 1 {
		all = slices.Insert(all, 0, desk.Basket{Words: fmt.Sprintf("ticked on the Board (%d)", len(ids)), Lots: ids})
	}
	return all
}

// columnsOf returns columns of a table with their meanings; the one named grows.
func columnsOf(of []view.Column, grows string) []table.Column {
	var columns []table.Column
	for _, c := range of {
		columns = append(columns, table.Column{Title: c.Title, Width: c.Width, Right: c.Figures, Meaning: view.Help(c.Title),
			Grows: c.Title == grows})
	}
	return columns
}

// choosing makes the two ways of choosing lots: by a basket, and one by one.
func (s *shopping) choosing() {
	var words []string
	for _, b := range s.baskets {
		words = append(words, b.Words)
	}
	s.of = widgets.NewSelect(words, nil)
	s.of.PlaceHolder = "the lots ticked below"
	s.of.SetSelectedIndex(0)
	s.of.OnChanged = func(string) {
		if i := s.of.SelectedIndex(); i >= 0 {
			s.w.guard(func() { s.take(i) })
		}
	}
	s.pick = table.New(columnsOf(view.ShoppedLotColumns, "Vehicle"))
	s.pick.OnTick = func(row int, ticked bool) {
		s.w.guard(func() {
			s.ticked[s.lots[row].ID] = ticked
			s.of.ClearSelected()
			s.show()
		})
	}
	s.pick.OnOpen = func(row int) { s.pick.OnTick(row, !s.ticked[s.lots[row].ID]) }
}

// take ticks the lots of a basket, and no other.
func (s *shopping) take(basket int) {
	clear(s.ticked)
	for _, id := range s.baskets[basket].Lots {
		s.ticked[id] = true
	}
	s.show()
}

// show lists the parts of the ticked lots, away from the window.
func (s *shopping) show() {
	s.pick.SetSource(len(s.lots), func(i int) table.Row {
		return table.Row{Cells: view.ShoppedLot(s.lots[i]), Ticked: s.ticked[s.lots[i].ID]}
	})
	s.fill(nil, "Listing the parts…")
	var lots []int64
	for _, e := range s.lots {
		if s.ticked[e.ID] {
			lots = append(lots, e.ID)
		}
	}
	factors := s.w.state.Factors
	task.Start(s.w.runner, task.Order[[]valuation.Wanted]{Key: "shopping",
		Work: func(ctx context.Context) ([]valuation.Wanted, error) { return s.w.desk.Shopping(ctx, factors, lots) },
		Show: func(list []valuation.Wanted, err error) {
			switch {
			case err != nil:
				s.fill(nil, "! Could not list the parts: "+err.Error())
			case len(lots) == 0:
				s.fill(nil, "No lot is ticked.")
			default:
				s.fill(list, view.ShoppingSum(list))
			}
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
