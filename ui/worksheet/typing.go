package worksheet

import (
	"fmt"
	"slices"
	"walkline/ui/widgets/draw"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/valuation"
	"walkline/valuation/resale"

	"fyne.io/fyne/v2"
)

// newRow is the place of a row that is still to be typed.
const newRow = -1

// typing is the line below the comparables in which a row is typed or changed. It is there once it is asked for: by the button, or by
// Enter on a row.
type typing struct {
	price *price
	line  *form.Comparable
	at    int // position in the case of the row that is changed
}

func newTyping(r *price) *typing {
	t := &typing{price: r, at: newRow}
	t.line = form.NewComparable(t.keep, t.remove)
	t.line.OnLeave = t.close
	t.line.Row.Hide()
	return t
}

// open shows the cells of a row as the table shows it, or empty ones, and gives them the keyboard.
func (t *typing) open(row int) {
	t.at = newRow
	if row >= 0 {
		t.at = t.price.rows.Position(row)
	}
	t.line.Row.Show()
	t.render()
	if c := draw.CanvasOf(t.price.table); c != nil {
		c.Focus(t.line.First())
	}
}

// goTo follows the table to another row, where the line is there.
func (t *typing) goTo(row int) {
	if !t.line.Row.Hidden {
		t.at = t.price.rows.Position(row)
		t.render()
	}
}

func (t *typing) close() {
	t.line.Row.Hide()
	if c := draw.CanvasOf(t.price.table); c != nil {
		c.Focus(t.price.table)
	}
}

// row returns the row that is changed; none where it is gone, or still to be typed.
func (t *typing) row() (resale.Row, bool) {
	rows := t.price.page.open.Case.Resale.Rows
	if t.at < 0 || t.at >= len(rows) {
		return resale.Row{}, false
	}
	return rows[t.at], true
}

func (t *typing) render() {
	if t.line.Row.Hidden {
		return
	}
	r, there := t.row()
	if !there {
		t.at = newRow
		t.line.Show("", nil)
		return
	}
	t.line.Show(fmt.Sprintf("%d/%d", r.Shelf, t.at), view.ComparableCells(r, t.price.page.open.Case.Currency))
}

// keep hands what was typed on. Once a row was added, the cells are empty for the next.
func (t *typing) keep(cells map[string]string) {
	p := t.price.page
	switch r, there := t.row(); {
	case !there:
		before := len(p.open.Case.Resale.Rows)
		p.do(desk.TypeComparable(0, cells))
		if len(p.open.Case.Resale.Rows) > before {
			t.line.Clear()
		}
	case r.Shelf != 0:
		p.do(desk.TypeComparable(r.Shelf, cells))
	default:
		p.do(desk.TypeOwn(t.at, cells))
	}
}

// remove takes the row that is typed off the shelf, or out of the lot where it lies on none.
func (t *typing) remove() {
	if _, there := t.row(); there {
		t.drop(t.at)
	}
}

// drop is remove for the row at a position in the case.
func (t *typing) drop(at int) {
	p := t.price.page
	rows := p.open.Case.Resale.Rows
	switch {
	case at < 0 || at >= len(rows):
	case rows[at].Shelf != 0:
		p.do(desk.RemoveComparables("remove a comparable", rows[at].Shelf))
	default:
		p.edit("remove a comparable", func(c *valuation.Case) { c.Resale.Rows = slices.Delete(c.Resale.Rows, at, at+1) })
	}
}

// menu is what may be done with a row of the table.
func (t *typing) menu(row int) []*fyne.MenuItem {
	return []*fyne.MenuItem{fyne.NewMenuItem("Change this row", func() { t.open(row) }),
		fyne.NewMenuItem("Remove this row", func() { t.drop(t.price.rows.Position(row)) }),
		fyne.NewMenuItem("Type a row", func() { t.open(newRow) })}
}
