package plot

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"walkline/ui/widgets/seen"
)

// ranges are made up: two on the axis, one that has no place on it.
func ranges() RangesData {
	return RangesData{Axis: Axis{Title: "times the starter value"}, Start: 1, Begun: "starter", Now: "today", Value: "proposed",
		Spread: "8 times in 10", Rows: []Range{
			{Name: "Hours, body", Figure: "0.75", Low: 0.5, Middle: 0.75, High: 1, Today: 1, Fact: "body: 0.75"},
			{Name: "Materials", Figure: "1.50", Low: 1, Middle: 1.5, High: 2, Today: 1.25, Fact: "materials: 1.50"},
			{Name: "Loading", Figure: "0.20", Blank: true, Fact: "loading: 0.20"}}}
}

func TestRangesLieOnOneAxis(t *testing.T) {
	r := NewRanges()
	if !slices.Equal(r.Facts(), []string{noBars}) {
		t.Errorf("%q", r.Facts())
	}
	r.SetData(ranges())
	seen.Open(t, fyne.NewSize(700, 200), r)
	x, ticks := r.across(r.Size().Width)
	if ticks[0] != 0.5 || ticks[len(ticks)-1] != 2 || x(2)-x(1) != x(1)-x(0.5) || x(100) != x(most) {
		t.Errorf("ticks %v", ticks)
	}
	var bars, points []float32
	for _, o := range seen.All[*canvas.Rectangle](r) {
		if o.Size().Height == 2*half && o.Size().Width > 20 {
			bars = append(bars, o.Position().X, o.Position().X+o.Size().Width)
		}
	}
	for _, o := range seen.All[*canvas.Circle](r) {
		points = append(points, o.Position().X+o.Size().Width/2)
	}
	if want := []float32{x(0.5), x(1), x(1), x(2)}; !alike(bars, want) {
		t.Errorf("bars %v, want %v", bars, want)
	}
	if want := []float32{x(1), x(0.75), x(1.25), x(1.5)}; len(points) != 6 || !alike(points[:4], want) { // the last two are the legend
		t.Errorf("today and middle %v, want %v", points, want)
	}
}

func alike(a, b []float32) bool {
	return slices.EqualFunc(a, b, func(x, y float32) bool { return x-y < 0.01 && y-x < 0.01 })
}

func TestRangesAreWalkedAndSayEachInWords(t *testing.T) {
	r := NewRanges()
	r.SetData(ranges())
	var gone []int
	r.OnSelected = func(i int) { gone = append(gone, i) }
	w := seen.Open(t, fyne.NewSize(700, 200), r)
	w.Canvas().Focus(r)
	seen.Press(r, fyne.KeyDown, fyne.KeyDown, fyne.KeyUp)
	top, height := r.Place(2)
	test.TapAt(r, fyne.NewPos(40, top+height/2))
	if !slices.Equal(gone, []int{0, 1, 0, 2}) || !slices.Contains(r.Facts(), "loading: 0.20") {
		t.Errorf("went to %v, facts %q", gone, r.Facts())
	}
	for _, words := range []string{"Hours, body", "1.50", "8 times in 10", "times the starter value"} {
		if !seen.Says(r, words) {
			t.Errorf("%q is missing from %q", words, seen.Texts(r))
		}
	}
}

func TestRangesLook(t *testing.T) {
	seen.Picture(t, "ranges", fyne.NewSize(700, 200), func() fyne.CanvasObject {
		r := NewRanges()
		r.SetData(ranges())
		seen.Press(r, fyne.KeyDown)
		return r
	})
}
