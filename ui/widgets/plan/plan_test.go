package plan

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"walkline/ui/damage"
	"walkline/ui/widgets/seen"
	"walkline/valuation/lot"
)

// told collects what a plan tells.
func told(t *testing.T) (*Plan, fyne.Window, *[]string) {
	t.Helper()
	var told []string
	p := New(func(area, extent, depth string) {
		told = append(told, strings.Join([]string{area, extent, depth}, " "))
	})
	w := seen.Open(t, fyne.NewSize(860, 560), p)
	return p, w, &told
}

func tapCell(p *Plan, area string) {
	g := geometryFor(p.Size())
	test.TapAt(p, center(g.cells[slices.Index(lot.Areas, area)]))
}

// A tap selects and never changes, neither the first one on a cell nor one on the cell that is selected.
func TestPlanTapsOnlySelect(t *testing.T) {
	p, w, told := told(t)
	p.SetDamage(hurt)
	var went []string
	p.OnSelected = func(area string) { went = append(went, area) }
	before := p.Damage()
	for _, area := range []string{"03", "03", "battery_pack", "12", "12"} {
		tapCell(p, area)
		if p.Selected() != area || w.Canvas().Focused() != p {
			t.Errorf("after a tap on %s, %s is selected and %T has the keyboard", area, p.Selected(), w.Canvas().Focused())
		}
	}
	test.TapAt(p, fyne.NewPos(2, 2)) // beside the ring
	if len(*told) != 0 || !slices.Equal(p.Damage(), before) {
		t.Errorf("taps told %q and left %v", *told, p.Damage())
	}
	if want := []string{"03", "battery_pack", "12"}; !slices.Equal(went, want) {
		t.Errorf("went to %q, want %q", went, want)
	}
}

func TestPlanFindsEveryCellUnderItsCentre(t *testing.T) {
	for _, size := range []fyne.Size{leastSize(), fyne.NewSize(1200, 700), fyne.NewSize(700, 900)} {
		g := geometryFor(size)
		for i, s := range g.cells {
			if got := g.at(center(s)); got != i {
				t.Errorf("%v: the center of %s lies in cell %d", size, lot.Areas[i], got)
			}
		}
	}
}

func TestPlanWorksByKeyboard(t *testing.T) {
	p, w, told := told(t)
	w.Canvas().Focus(p)
	test.Type(p, "2bD")
	seen.Press(p, fyne.KeyRight, fyne.KeySpace)
	test.Type(p, "0t")
	seen.Press(p, fyne.KeyRight, fyne.KeyRight, fyne.KeyRight, fyne.KeyDown)
	test.Type(p, "3t")
	seen.Press(p, fyne.KeyDelete)
	want := []string{"12 functional skin", "12 functional bolted", "12 functional structure", "01 minor skin", "01  ",
		"undercarriage disabling skin", "undercarriage disabling structure", "undercarriage  "}
	if !slices.Equal(*told, want) {
		t.Errorf("told %q", *told)
	}
}

func TestPlanArrowsReachEveryCell(t *testing.T) {
	s := newSurvey()
	reached := map[int]bool{}
	var walk func(i int)
	walk = func(i int) {
		if reached[i] {
			return
		}
		reached[i] = true
		for _, d := range [][2]int{{-1, 0}, {1, 0}, {0, -1}, {0, 1}} {
			s.choose(i)
			s.move(d[0], d[1])
			walk(s.selected)
		}
	}
	walk(frontCell)
	if len(reached) != len(lot.Areas) {
		t.Errorf("the arrows reach %d of %d cells", len(reached), len(lot.Areas))
	}
}

func TestPlanArrowsGoWhereTheyPoint(t *testing.T) {
	for _, c := range []struct {
		from   string
		dx, dy int
		to     string
	}{
		{"12", 1, 0, "01"}, {"12", -1, 0, "11"}, {"12", 0, 1, "06"}, {"12", 0, -1, "12"}, {"03", 0, 1, "04"}, {"03", 0, -1, "02"},
		{"03", 1, 0, "top"}, {"03", -1, 0, "09"}, {"06", -1, 0, "07"}, {"09", 1, 0, "03"}, {"09", -1, 0, "09"}, {"10", 0, -1, "11"},
		{"top", 0, 1, "undercarriage"}, {"top", -1, 0, "03"}, {"top", 0, -1, "top"}, {"water", 0, 1, "water"},
	} {
		s := newSurvey()
		s.choose(slices.Index(lot.Areas, c.from))
		s.move(c.dx, c.dy)
		want := c.to
		if c.from == "top" && c.dx < 0 {
			want = "03"
		}
		if got := lot.Areas[s.selected]; got != want {
			t.Errorf("from %s by (%d, %d) to %s, want %s", c.from, c.dx, c.dy, got, want)
		}
	}
}

func TestPlanSetDamageIsSilentAndLeavesUnknownWordsOut(t *testing.T) {
	p, _, told := told(t)
	p.SetDamage(append(hurt, lot.Damage{Area: "roof rack", Extent: "minor"}, lot.Damage{Area: "02", Extent: "awful"},
		lot.Damage{Area: "top", Extent: "minor", Depth: "deep"}))
	if len(*told) != 0 {
		t.Errorf("told %q", *told)
	}
	want := []string{"01 front right: functional, bolted", "03 right side: minor, bolted", "11 front left: minor, skin",
		"12 front: disabling, structure", "top: minor", "undercarriage: disabling, structure", "engine bay: functional, bolted"}
	if !slices.Equal(p.Facts(), want) {
		t.Errorf("facts %q", p.Facts())
	}
	p.SetDamage(nil)
	if !slices.Equal(p.Facts(), []string{"No damage marked."}) {
		t.Errorf("facts %q", p.Facts())
	}
}

func TestPlanKeepsNotes(t *testing.T) {
	p, _, _ := told(t)
	p.SetDamage([]lot.Damage{{Area: "12", Extent: "minor", Depth: "skin", Note: "bumper only"}})
	test.Type(p, "2")
	if d := p.Damage()[0]; d.Note != "bumper only" || d.Extent != "functional" {
		t.Errorf("damage %+v", d)
	}
}

func TestPlanSaysTheCellInWords(t *testing.T) {
	p, w, _ := told(t)
	p.SetDamage(hurt)
	if !seen.Says(p, "12 front: disabling, structure") || seen.Says(p, hintWords) {
		t.Errorf("the plan says %q", seen.Texts(p))
	}
	at := center(geometryFor(p.Size()).cells[2])
	p.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}})
	if !seen.Says(p, "03 right side: minor, bolted") {
		t.Errorf("the plan says %q", seen.Texts(p))
	}
	p.MouseOut()
	w.Canvas().Focus(p)
	if !seen.Says(p, "12 front: disabling, structure") || !seen.Says(p, hintWords) {
		t.Errorf("the plan says %q", seen.Texts(p))
	}
}

// Extents and depths must stay apart in grey: the share of ink in a cell grows with each, and no two cells look alike.
func TestPlanExtentsGrowDarker(t *testing.T) {
	told(t)
	size := leastSize()
	ink := func(d lot.Damage) int {
		cells := [19]lot.Damage{}
		d.Area = "06"
		cells[5] = d
		pic := picture{width: int(size.Width), height: int(size.Height), size: size, cells: cells, chosen: -1, colors: colorsNow()}
		g := geometryFor(size)
		img := pic.painted(g)
		sum := 0
		at := center(g.cells[5])
		for y := int(at.Y) - 30; y < int(at.Y)+30; y++ {
			for x := int(at.X) - 30; x < int(at.X)+30; x++ {
				r, gr, b, _ := img.At(x, y).RGBA()
				sum += 3*0xffff - int(r) - int(gr) - int(b)
			}
		}
		return sum
	}
	last := ink(lot.Damage{})
	for _, extent := range lot.Extents {
		now := ink(lot.Damage{Extent: extent, Depth: "skin"})
		if now < last*11/10 {
			t.Errorf("%s is hardly darker than the step before: %d after %d", extent, now, last)
		}
		last = now
	}
	skin, bolted, structure := ink(lot.Damage{Extent: "minor", Depth: "skin"}), ink(lot.Damage{Extent: "minor", Depth: "bolted"}),
		ink(lot.Damage{Extent: "minor", Depth: "structure"})
	if skin == bolted || bolted == structure || skin == structure {
		t.Errorf("two depths look alike: %d, %d, %d", skin, bolted, structure)
	}
}

func BenchmarkPlanPicture(b *testing.B) {
	test.NewTempApp(b)
	size := fyne.NewSize(860, 560)
	p := New(nil)
	p.SetDamage(hurt)
	pic := picture{width: 860, height: 560, size: size, cells: [19]lot.Damage(p.survey.cells), chosen: 11, colors: colorsNow()}
	for b.Loop() {
		pic.painted(geometryFor(size))
	}
}

// The words under the plan follow what moved last, the pointer or the keys.
func TestTheWordsFollowTheKeysUntilThePointerMoves(t *testing.T) {
	p, _, _ := told(t)
	far := center(geometryFor(p.Size()).cells[3])
	p.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: far}})
	hovered := p.Caption()
	p.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	if now := p.Caption(); now == hovered || now != damage.Words(lot.Damage{Area: p.Selected()}) {
		t.Errorf("%q by the pointer, %q after a key, %s selected", hovered, now, p.Selected())
	}
	p.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: far}})
	if now := p.Caption(); now != hovered {
		t.Errorf("the pointer moved: %q, want %q", now, hovered)
	}
}
