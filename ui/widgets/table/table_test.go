package table

import (
	"fmt"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/ui/widgets/seen"
)

func lotColumns() []Column {
	return []Column{{Title: "Sale day", Width: 90, Sortable: true}, {Title: "Vehicle", Width: 190, Sortable: true, Grows: true},
		{Title: "Walk-away bid", Width: 120, Right: true, Sortable: true},
		{Title: "Chance of loss", Width: 110, Right: true}, {Title: "State", Width: 90}}
}

func lotRows() []Row {
	return []Row{
		{Cells: []string{"14 May", "2017 Corvid Sallow", "USD 4,250", "18 %", "to look at"}, Ticked: true},
		{Cells: []string{"14 May", "2019 Corvid Sallow Estate, long bed, diesel", "USD 11,900", "22 %", "looked at"}},
		{Cells: []string{"21 May", "2015 Tern Ridge", "none", "", "passed"}, Muted: true},
		{Cells: []string{"", "Total", "USD 16,150", "", ""}, Strong: true},
	}
}

func TestTableWalksAndOpensRows(t *testing.T) {
	tbl := New(lotColumns())
	tbl.SetRows(lotRows())
	var walked, opened []int
	tbl.OnSelected = func(row int) { walked = append(walked, row) }
	tbl.OnOpen = func(row int) { opened = append(opened, row) }
	w := seen.Open(t, fyne.NewSize(700, 240), tbl)
	w.Canvas().Focus(tbl)
	seen.Press(tbl, fyne.KeyDown, fyne.KeyDown, fyne.KeyReturn, fyne.KeyUp, fyne.KeyUp, fyne.KeyEnd, fyne.KeyDown, fyne.KeyHome)
	if !slices.Equal(walked, []int{0, 1, 0, 3, 0}) || !slices.Equal(opened, []int{1}) {
		t.Errorf("walked %v, opened %v", walked, opened)
	}
	tbl.SelectRow(2)
	if len(walked) != 5 || tbl.Selected() != 2 {
		t.Error("selecting from code told the handler or did nothing")
	}
	tbl.SetRows(lotRows()[:1])
	if tbl.Selected() != 0 {
		t.Errorf("selected %d of one row", tbl.Selected())
	}
}

func TestTableTapsSelectAndSecondTapOpens(t *testing.T) {
	tbl := New(lotColumns())
	tbl.SetRows(lotRows())
	var walked, opened []int
	tbl.OnSelected = func(row int) { walked = append(walked, row) }
	tbl.OnOpen = func(row int) { opened = append(opened, row) }
	w := seen.Open(t, fyne.NewSize(700, 240), tbl)
	second := fyne.NewPos(150, headHeight()+theme0+rowHeight()*1.5+theme0)
	test.TapCanvas(w.Canvas(), second)
	if !slices.Equal(walked, []int{1}) || len(opened) != 0 || w.Canvas().Focused() != tbl {
		t.Fatalf("selected %v, opened %v, focused %T", walked, opened, w.Canvas().Focused())
	}
	test.TapCanvas(w.Canvas(), second)
	if !slices.Equal(opened, []int{1}) {
		t.Errorf("opened %v", opened)
	}
}

const theme0 = 4

func TestTableTicks(t *testing.T) {
	tbl := New(lotColumns())
	var told []string
	rows := lotRows()
	tbl.OnTick = func(row int, ticked bool) { // the program decides what a tick makes of the rows
		told = append(told, fmt.Sprint(row, ticked))
		rows[row].Ticked = ticked
		tbl.SetRows(rows)
	}
	tbl.SetRows(rows)
	w := seen.Open(t, fyne.NewSize(760, 240), tbl)
	test.TapCanvas(w.Canvas(), fyne.NewPos(14, headHeight()+theme0+rowHeight()/2+theme0))
	seen.Press(tbl, fyne.KeyDown, fyne.KeySpace)
	if !slices.Equal(told, []string{"0 false", "1 true"}) {
		t.Errorf("told %v", told)
	}
	if want := "Sale day 14 May, Vehicle 2017 Corvid Sallow, Walk-away bid USD 4,250, Chance of loss 18 %, State to look at, not " +
		"ticked"; tbl.Facts()[0] != want {
		t.Errorf("facts %q", tbl.Facts()[0])
	}
}

// TestTableAsksForWhatIsInSight gives the table 10,000 rows: those out of sight are never asked for.
func TestTableAsksForWhatIsInSight(t *testing.T) {
	tbl := New(lotColumns())
	asked := map[int]bool{}
	tbl.SetSource(10_000, func(i int) Row {
		asked[i] = true
		return Row{Cells: []string{fmt.Sprint(i)}}
	})
	w := seen.Open(t, fyne.NewSize(700, 240), tbl)
	w.Canvas().Focus(tbl)
	seen.Press(tbl, fyne.KeyEnd)
	if !asked[0] || !asked[9_999] || len(asked) > 100 {
		t.Errorf("asked for %d rows", len(asked))
	}
}

// The first row in sight is told by what is drawn, and each time it changes.
func TestTableKnowsWhatIsInSight(t *testing.T) {
	tbl := New(lotColumns())
	tbl.SetSource(1_000, func(i int) Row { return Row{Cells: []string{fmt.Sprint(i)}} })
	w := seen.Open(t, fyne.NewSize(700, 240), tbl)
	w.Canvas().Focus(tbl)
	told := 0
	tbl.OnSight = func() { told++ }
	at := func(want, slack int) {
		t.Helper()
		if got := tbl.FirstInSight(); got > want || got < want-slack {
			t.Errorf("the first row in sight is %d, not %d", got, want)
		}
	}
	at(0, 0)
	row := max(tbl.rowHeight(), headHeight()) + theme0
	for _, first := range []int{300, 320, 40, 7} {
		tbl.ScrollToOffset(fyne.NewPos(0, float32(first)*row))
		at(first, 3)
	}
	if tbl.ScrollToTop(); told < 5 {
		t.Errorf("told %d times", told)
	}
	at(0, 0)
}

func TestTableSorts(t *testing.T) {
	tbl := New(lotColumns())
	tbl.SetRows(lotRows())
	var asked []string
	tbl.OnSort = func(column int, falling bool) { asked = append(asked, fmt.Sprint(column, falling)) }
	w := seen.Open(t, fyne.NewSize(700, 240), tbl)
	head := fyne.NewPos(460, theme0+headHeight()/2)
	test.TapCanvas(w.Canvas(), head)
	test.TapCanvas(w.Canvas(), head)
	seen.Press(tbl, fyne.KeyLeft)
	test.Type(tbl, "s")
	seen.Press(tbl, fyne.KeyRight, fyne.KeyRight) // "Chance of loss" does not sort
	test.Type(tbl, "s")
	if !slices.Equal(asked, []string{"2 false", "2 true", "1 false"}) {
		t.Errorf("asked for %v", asked)
	}
}

func TestTableShortensWhatDoesNotFit(t *testing.T) {
	tbl := New(lotColumns())
	tbl.SetRows(lotRows())
	seen.Open(t, fyne.NewSize(700, 240), tbl)
	words := seen.Texts(tbl)
	if !slices.ContainsFunc(words, func(s string) bool { return len(s) > 12 && s[:10] == "2019 Corvi" && s[len(s)-3:] == "…" }) {
		t.Errorf("the table says %q", words)
	}
	if !slices.Contains(words, "USD 11,900") {
		t.Errorf("the table says %q", words)
	}
}

func TestEmptyTableTellsTheFirstStep(t *testing.T) {
	tbl := New(lotColumns())
	tbl.Empty = "No lots yet: import a run list or add one."
	tbl.OnSelected = func(int) { t.Error("an empty table has no row to select") }
	w := seen.Open(t, fyne.NewSize(700, 240), tbl)
	if !slices.Contains(seen.Texts(tbl), tbl.Empty) || !slices.Equal(tbl.Facts(), []string{tbl.Empty}) {
		t.Errorf("the table says %q", seen.Texts(tbl))
	}
	test.TapCanvas(w.Canvas(), fyne.NewPos(150, headHeight()+theme0+rowHeight()/2))
	seen.Press(tbl, fyne.KeyDown, fyne.KeyReturn, fyne.KeySpace, fyne.KeyEnd)
}

func TestTableLooks(t *testing.T) {
	seen.Picture(t, "table", fyne.NewSize(800, 220), func() fyne.CanvasObject {
		tbl := New(lotColumns())
		tbl.OnTick = func(int, bool) {}
		tbl.SetRows(lotRows())
		tbl.SetSort(2, true)
		tbl.SelectRow(1)
		tbl.FocusGained()
		return tbl
	})
}

func BenchmarkTableScroll(b *testing.B) {
	test.NewTempApp(b)
	tbl := New(lotColumns())
	rows := make([]Row, 10000)
	for i := range rows {
		rows[i] = lotRows()[i%3]
	}
	tbl.SetRows(rows)
	w := test.NewTempWindow(b, tbl)
	w.Resize(fyne.NewSize(1000, 700))
	b.ResetTimer()
	for i := range b.N {
		tbl.ScrollToOffset(fyne.NewPos(0, float32(i%5000)*40))
	}
}
