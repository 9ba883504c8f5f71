package board

import (
	"encoding/json"
	"slices"

	"fyne.io/fyne/v2"

	"walkline/ui/view"
	"walkline/ui/widgets/table"
)

// columnsKept is the setting of the toolkit that keeps which columns are shown, in which order and width: it is of the machine's
// screen, not of the lots.
const columnsKept = "board.columns"

// keptColumns returns the columns that were shown last.
func keptColumns() []view.BoardColumn {
	var kept []view.BoardColumn
	if err := json.Unmarshal([]byte(fyne.CurrentApp().Preferences().String(columnsKept)), &kept); err != nil {
		return view.FirstColumns()
	}
	kept = slices.DeleteFunc(kept, func(c view.BoardColumn) bool { return c.At() < 0 }) // of another version
	if len(kept) == 0 {
		return view.FirstColumns()
	}
	return kept
}

// Columns returns the columns that are shown, in their order.
func (p *Page) Columns() []view.BoardColumn { return slices.Clone(p.chosen) }

// ShowColumns shows columns in an order and keeps them; none: those of the first start.
func (p *Page) ShowColumns(chosen []view.BoardColumn) {
	if len(chosen) == 0 {
		chosen = view.FirstColumns()
	}
	p.chosen = slices.Clone(chosen)
	p.keepColumns()
	p.table.SetColumns(p.columns())
	p.table.SetSort(slices.IndexFunc(p.chosen, func(c view.BoardColumn) bool { return c.At() == p.filter.Sort }), p.filter.Down)
	p.renderRows()
}

// widen keeps the width that the user gave a column.
func (p *Page) widen(column int, width float32) {
	p.chosen[column].Width = width
	p.keepColumns()
	p.table.SetColumns(p.columns())
}

func (p *Page) keepColumns() {
	if kept, err := json.Marshal(p.chosen); err == nil {
		fyne.CurrentApp().Preferences().SetString(columnsKept, string(kept))
	}
}

// columns returns the columns that are shown as a table has them. One with a width of the user's own keeps it; the number of a lot
// is never cut.
func (p *Page) columns() []table.Column {
	var all []table.Column
	for _, chosen := range p.chosen {
		c := view.BoardColumns[chosen.At()]
		shown := table.Column{Title: c.Title, Width: c.Width, Right: c.Figures,
			Meaning: view.Help(c.Title), Sortable: true, Pictured: chosen.Pictured(),
			Grows: c.Width >= inWords && chosen.Width == 0}
		if chosen.Width > 0 {
			shown.Width = chosen.Width
		}
		if c.Title == "Lot" {
			shown.Fits = p.number
		}
		all = append(all, shown)
	}
	return all
}

// cells returns what the shown columns say of a lot.
func (p *Page) cells(r *view.BoardRow) []string {
	all := r.Cells()
	cells := make([]string, len(p.chosen))
	for i, c := range p.chosen {
		cells[i] = all[c.At()]
	}
	return cells
}
