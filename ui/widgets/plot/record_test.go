package plot

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"walkline/ui/widgets/seen"
)

// tenths are made up.
func tenths() HistogramData {
	d := HistogramData{X: Axis{Title: "where in the forecast"}, Y: Axis{Title: "buys"}, Even: 2, Name: "if the forecasts are right",
		Empty: "No buys yet."}
	for i, n := range []int{1, 3, 0, 2, 4, 2, 1, 3, 2, 2} {
		d.Bins = append(d.Bins, HistogramBin{float64(i) / 10, float64(i+1) / 10, n, "bin " + string(rune('A'+i))})
	}
	return d
}

func said() ReliabilityData {
	return ReliabilityData{X: Axis{Title: "said"}, Y: Axis{Title: "came"}, Empty: "Nothing yet.", Bins: []ReliabilityBin{
		{0.08, 0.1, 0.01, 0.4, 10, "said 8 %, came 10 % of 10"}, {0.35, 0.5, 0.2, 0.8, 6, "said 35 %"}, {0.9, 1, 0.4, 1, 2, "said 90 %"}}}
}

func TestHistogramIsWalkedAndSaysEveryBin(t *testing.T) {
	h := NewHistogram()
	if !slices.Equal(h.Facts(), []string{""}) {
		t.Errorf("facts %q", h.Facts())
	}
	h.SetData(tenths())
	w := seen.Open(t, fyne.NewSize(500, 300), h)
	w.Canvas().Focus(h)
	seen.Press(h, fyne.KeyRight, fyne.KeyRight, fyne.KeyRight, fyne.KeyLeft)
	if h.Selected() != 1 || !seen.Says(h, "bin B") || len(h.Facts()) != 10 {
		t.Errorf("selected %d, facts %q", h.Selected(), h.Facts())
	}
	at := h.frame().at(0.45, 0.5)
	h.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}})
	if !seen.Says(h, "bin E") {
		t.Errorf("the plot says %q", seen.Texts(h))
	}
	h.MouseOut()
	test.TapAt(h, at)
	if h.Selected() != 4 || w.Canvas().Focused() != h {
		t.Errorf("tapped, it selected %d", h.Selected())
	}
	h.SetData(HistogramData{Empty: "No buys yet.", Bins: []HistogramBin{{0, 1, 0, "none"}}})
	if !seen.Says(h, "No buys yet.") || h.Selected() != 0 {
		t.Errorf("the plot says %q", seen.Texts(h))
	}
}

func TestBarsAreAsHighAsTheirCounts(t *testing.T) {
	h := NewHistogram()
	h.SetData(tenths())
	seen.Open(t, fyne.NewSize(500, 300), h)
	var heights []float32
	for _, r := range seen.All[*canvas.Rectangle](h) {
		if r.Size().Width > 10 && r.Size().Height > 10 && r.StrokeWidth == 0 && r.Size() != h.Size() {
			heights = append(heights, r.Size().Height)
		}
	}
	unit := h.frame().at(0, 0).Y - h.frame().at(0, 1).Y
	want := []float32{1, 3, 2, 4, 2, 1, 3, 2, 2}
	if len(heights) != len(want) {
		t.Fatalf("%d bars", len(heights))
	}
	for i, n := range want {
		if d := heights[i] - n*unit; d > 0.5 || d < -0.5 {
			t.Errorf("bar %d is %v high, want %v", i, heights[i], n*unit)
		}
	}
}

func TestReliabilityIsWalkedAndSaysEveryBin(t *testing.T) {
	r := NewReliability()
	r.SetData(said())
	w := seen.Open(t, fyne.NewSize(400, 360), r)
	w.Canvas().Focus(r)
	seen.Press(r, fyne.KeyEnd)
	if !seen.Says(r, "said 90 %") || len(r.Facts()) != 3 {
		t.Errorf("facts %q, texts %q", r.Facts(), seen.Texts(r))
	}
	r.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: r.frame().at(0.35, 0.5).AddXY(5, 0)}})
	if !seen.Says(r, "said 35 %") {
		t.Errorf("texts %q", seen.Texts(r))
	}
	r.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: r.frame().at(0.6, 0.1)}})
	if !seen.Says(r, "said 90 %") {
		t.Errorf("beside the points, the selected one is read: %q", seen.Texts(r))
	}
	r.SetData(ReliabilityData{Empty: "Nothing yet."})
	if r.Selected() != -1 || !slices.Equal(r.Facts(), []string{"Nothing yet."}) {
		t.Errorf("selected %d, facts %q", r.Selected(), r.Facts())
	}
}

func TestRecordPlotsLook(t *testing.T) {
	seen.Picture(t, "record-plots", fyne.NewSize(900, 360), func() fyne.CanvasObject {
		h, r := NewHistogram(), NewReliability()
		h.SetData(tenths())
		r.SetData(said())
		seen.Press(h, fyne.KeyRight, fyne.KeyRight)
		seen.Press(r, fyne.KeyRight)
		return container.NewGridWithColumns(2, h, r)
	})
}
