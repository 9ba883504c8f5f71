package board

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"walkline/ui/desk"
	"walkline/ui/widgets/seen"
)

// five returns a page over five lots that are kept, and who uses it.
func five(t *testing.T) (*Page, func() desk.State, []int64) {
	p, u := shown(t, desk.State{})
	for range 5 {
		u.Do(desk.NewLot())
	}
	u.Do(desk.Go(desk.Board))
	p.Render(u.State)
	var ids []int64
	for _, r := range p.rows {
		ids = append(ids, r.ID)
	}
	return p, func() desk.State { p.Render(u.State); return u.State }, ids
}

// tapRow taps a row with keys held.
func tapRow(p *Page, row int, held fyne.KeyModifier) {
	p.table.MouseDown(&desktop.MouseEvent{Modifier: held})
	at := fyne.NewPos(200, 40+float32(row)*27)
	p.table.Tapped(&fyne.PointEvent{Position: at})
}

func TestLotsAreMarkedByMouseAndKeyboardAndChangedAtOnce(t *testing.T) {
	p, now, ids := five(t)
	tapRow(p, 0, 0)
	tapRow(p, 2, fyne.KeyModifierShift)
	tapRow(p, 4, fyne.KeyModifierShortcutDefault)
	if got := p.Marked(); !slices.Equal(got, []int64{ids[0], ids[1], ids[2], ids[4]}) || !seen.Says(p.Object(), "4 of 5 lots marked") {
		t.Fatalf("marked %v of %v", got, ids)
	}
	seen.Press(p.table, fyne.KeySpace) // the fifth is unmarked again
	for _, i := range p.menu(0) {
		if i.Label == "Archive 3 lots" {
			i.Action()
		}
	}
	archived := 0
	for _, e := range now().Entries {
		if e.Archived {
			archived++
		}
	}
	if archived != 3 || p.table.Rows() != 2 {
		t.Errorf("%d are archived, %d are listed", archived, p.table.Rows())
	}
}

func TestDeleteRemovesTheLotAndAMenuIsShown(t *testing.T) {
	p, now, _ := five(t)
	tapRow(p, 1, 0)
	seen.Press(p.table, desktop.KeyMenu)
	menus := fyne.CurrentApp().Driver().CanvasForObject(p.table).Overlays()
	if menus.Top() == nil || !seen.Says(menus.Top(), "Move to another sale") {
		t.Error("no menu is shown")
	}
	menus.Remove(menus.Top())
	seen.Press(p.table, fyne.KeyDelete)
	if n := len(now().Entries); n != 4 {
		t.Errorf("%d lots are left", n)
	}
}
