package board

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/ui/widgets/seen"
	"walkline/valuation/lot"
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
	if got := p.Ticked(); !slices.Equal(got, []int64{ids[0], ids[1], ids[2], ids[4]}) || !seen.Says(p.Object(), "4 of 5 lots ticked") {
		t.Fatalf("ticked %v of %v", got, ids)
	}
	seen.Press(p.table, fyne.KeySpace) // the fifth is unticked again
	for _, i := range p.menu(0) {
		if i.Label == "Mark 3 lots: lost" {
			i.Action()
		}
	}
	for _, e := range now().Entries {
		if lost := e.State == lot.Lost; lost != slices.Contains(ids[:3], e.ID) {
			t.Errorf("lot %d is %s", e.ID, e.State)
		}
	}
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

// The menu of a row that is not ticked is of that row alone, though others are ticked, perhaps out of sight.
func TestTheMenuIsOfTheRowUnderThePointer(t *testing.T) {
	p, now, ids := five(t)
	var wished []desk.Wish
	done := p.do
	p.do = func(a desk.Action) {
		if a.Wish.For != "" {
			wished = append(wished, a.Wish)
		}
		done(a)
	}
	p.tick(3, 4, true)
	tapRow(p, 1, 0)
	act := func(row int, words string) {
		at := slices.IndexFunc(p.menu(row), func(i *fyne.MenuItem) bool { return i.Label == words })
		if at < 0 {
			t.Fatalf("no item %q", words)
		}
		p.menu(row)[at].Action()
	}
	act(1, "Went for…")
	act(1, "Move to another sale…")
	act(4, "Move 2 lots to another sale…")
	if len(wished) != 3 || !slices.Equal(wished[0].Lots, ids[1:2]) || !slices.Equal(wished[1].Lots, ids[1:2]) ||
		!slices.Equal(wished[2].Lots, ids[3:]) {
		t.Errorf("asked for %+v, the row is %d", wished, ids[1])
	}
	act(1, "Mark: won")
	for _, e := range now().Entries {
		if won := e.State == lot.Won; won != (e.ID == ids[1]) {
			t.Errorf("lot %d is %s, the menu was of %d", e.ID, e.State, ids[1])
		}
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

// The columns that were chosen, their order and their widths are there again the next time, and a lot number is never cut.
func TestColumnsAreChosenAndKept(t *testing.T) {
	s := two()
	miles := 61234
	s.Entries[0].Look = book.Look{Odometer: &miles, Unit: "mi", Brands: []string{"salvage"}, Damage: []lot.Damage{{Area: "12"}, {Area: "01"}}}
	s.Entries[1].Number = "4-1187-2206-B"
	p, _ := shown(t, s)
	if !slices.Contains(seen.Texts(p.table), "4-1187-2206-B") {
		t.Errorf("the lot number is cut: %q", seen.Texts(p.table))
	}
	p.ShowColumns([]view.BoardColumn{{Title: "Lot"}, {Title: "Damage"}, {Title: "Odometer"}, {Title: "Title"}, {Title: "Walk-away bid"}})
	p.widen(1, 222)
	if want := "Lot 14, Damage 12, 01, Odometer 61,234 mi, Title salvage, Walk-away bid USD 3,600, not ticked"; p.table.Facts()[0] != want {
		t.Errorf("the row says %q", p.table.Facts()[0])
	}
	p.table.OnSort(4, true)
	if p.table.Facts()[0][:6] != "Lot 14" {
		t.Error("the bid does not sort where it stands")
	}
	again := New(func(desk.Action) {})
	again.Render(s)
	if got := again.Columns(); len(got) != 5 || got[1] != (view.BoardColumn{Title: "Damage", Width: 222}) {
		t.Errorf("kept are %+v", got)
	}
	again.ShowColumns(nil)
	if len(again.Columns()) != len(view.FirstColumns()) {
		t.Errorf("at first there are %+v", again.Columns())
	}
}
