package board

import (
	"fmt"

	"fyne.io/fyne/v2"

	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/valuation/lot"
)

// Ticked returns the lots that are ticked and on show, in their order; where none is, the selected one.
func (p *Page) Ticked() []int64 {
	var ids []int64
	for _, r := range p.rows {
		if p.ticked[r.ID] {
			ids = append(ids, r.ID)
		}
	}
	if id, ok := p.Selected(); ok && len(ids) == 0 {
		ids = append(ids, id)
	}
	return ids
}

// tick ticks the lots of some rows, or takes their ticks away.
func (p *Page) tick(from, to int, on bool) {
	for _, r := range p.rows[from : to+1] {
		if p.ticked[r.ID] = on; !on {
			delete(p.ticked, r.ID)
		}
	}
	p.sayCount()
	p.table.Refresh()
}

// sayCount says how many lots there are, and how many of them are ticked.
func (p *Page) sayCount() {
	ticked := 0
	for _, r := range p.rows {
		if p.ticked[r.ID] {
			ticked++
		}
	}
	words := view.Count(len(p.rows), "lot")
	if ticked > 0 {
		words = fmt.Sprintf("%d of %s ticked", ticked, words)
	}
	p.count.SetText(words)
}

// of returns the lots that a command on a row is meant for: all that are ticked where the row is one of them, else its own alone.
func (p *Page) of(row int) []int64 {
	id := p.rows[row].ID
	if p.ticked[id] {
		return p.Ticked()
	}
	return []int64{id}
}

// menu is what may be done with the lot of a row; what may be done with many is done with all that are ticked where it is one of them.
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
