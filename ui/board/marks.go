package board

import (
	"fmt"

	"fyne.io/fyne/v2"

	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/valuation/lot"
)

// Marked returns the lots that are marked and on show, in their order; where none is, the selected one.
func (p *Page) Marked() []int64 {
	var ids []int64
	for _, r := range p.rows {
		if p.marked[r.ID] {
			ids = append(ids, r.ID)
		}
	}
	if id, ok := p.Selected(); ok && len(ids) == 0 {
		ids = append(ids, id)
	}
	return ids
}

// mark marks the lots of some rows, or takes their marks away.
func (p *Page) mark(from, to int, on bool) {
	for _, r := range p.rows[from : to+1] {
		if p.marked[r.ID] = on; !on {
			delete(p.marked, r.ID)
		}
	}
	p.sayCount()
	p.table.Refresh()
}

// sayCount says how many lots there are, and how many of them are marked.
func (p *Page) sayCount() {
	marked := 0
	for _, r := range p.rows {
		if p.marked[r.ID] {
			marked++
		}
	}
	words := view.Count(len(p.rows), "lot")
	if marked > 0 {
		words = fmt.Sprintf("%d of %s ticked", marked, words)
	}
	p.count.SetText(words)
}

// of returns the lots that a command on a row is meant for: all that are marked where the row is one of them, else its own alone.
func (p *Page) of(row int) []int64 {
	id := p.rows[row].ID
	if p.marked[id] {
		return p.Marked()
	}
	return []int64{id}
}

// menu is what may be done with the lot of a row; what may be done with many is done with all that are marked where it is one of them.
func (p *Page) menu(row int) []*fyne.MenuItem {
	id := p.rows[row].ID
	item := func(words string, action desk.Action) *fyne.MenuItem {
		return fyne.NewMenuItem(words, func() { p.do(action) })
	}
	all, of := p.of(row), ""
	if len(all) > 1 {
		of = fmt.Sprintf(" %d lots", len(all))
	}
	items := []*fyne.MenuItem{item("Open", desk.OpenLot(id)), item("Duplicate"+of, desk.DuplicateLots(all...)), fyne.NewMenuItemSeparator()}
	for _, s := range lot.States {
		items = append(items, item("Mark"+of+": "+string(s), desk.MarkLots(s, all...)))
	}
	return append(items, item("Went for…", desk.WantFor(desk.ResultOfLot, all...)), fyne.NewMenuItemSeparator(),
		item("Move"+of+" to another sale…", desk.WantFor(desk.MoveToSale, all...)),
		item("Archive"+of, desk.ArchiveLots(true, all...)), item("Take"+of+" out of the archive", desk.ArchiveLots(false, all...)),
		item("Remove"+of, desk.RemoveLots(all...)))
}
