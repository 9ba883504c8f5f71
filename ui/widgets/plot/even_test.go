package plot

import (
	"math"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"walkline/ui/theme"
	"walkline/ui/widgets/seen"
)

// triangle rises and falls evenly from 0 to 4,000 in forty slices.
func triangle() BreakEvenData {
	d := BreakEvenData{X: Axis{Title: "invoice total"}, Bid: Line{1050, "bid USD 900"}, Limit: &Line{2000, "walk-away bid"},
		Loss: "loss 14 %", Gain: "gain 86 %", Words: "A bid of USD 900 costs USD 1,050.", Empty: "No odds."}
	for i := range 40 {
		d.Slices = append(d.Slices, Slice{From: float64(100 * i), To: float64(100 * (i + 1)), Chance: (20 - math.Abs(float64(i)-19.5)) / 400})
	}
	return d
}

func TestBelowIsTheAreaLeftOfTheLine(t *testing.T) {
	b := NewBreakEven()
	b.SetData(triangle())
	// x² / 2 on a triangle of height 1/4 a thousand
	for x, want := range map[float64]float64{-5: 0, 0: 0, 1000: .125, 1050: (1.05 * 1.05) / 8, 2000: .5, 3000: .875, 4000: 1, 9000: 1} {
		if got := b.Below(x); math.Abs(got-want) > .0005 {
			t.Errorf("below %g lie %g, want %g", x, got, want)
		}
	}
}

func TestTheBreakEvenChartTellsWhatIsAskedOfIt(t *testing.T) {
	b := NewBreakEven()
	b.SetData(triangle())
	var dragged []float64
	var steps, ends []int
	b.OnDrag = func(x float64) { dragged = append(dragged, math.Round(x)) }
	b.OnStep = func(n int) { steps = append(steps, n) }
	b.OnEnd = func(way int) { ends = append(ends, way) }
	w := seen.Open(t, fyne.NewSize(800, 300), b)
	test.TapAt(b, b.frame().at(3000, 0))
	for _, x := range []float64{500, -9000, 90000} {
		b.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: b.frame().at(x, 0)}})
	}
	b.DragEnd()
	if !slices.Equal(dragged, []float64{3000, 500, 0, 4000}) || w.Canvas().Focused() != b {
		t.Errorf("dragged to %v, focused %v", dragged, w.Canvas().Focused())
	}
	seen.Press(b, fyne.KeyRight, fyne.KeyLeft, fyne.KeyUp, fyne.KeyDown, fyne.KeyPageUp, fyne.KeyPageDown, fyne.KeyHome, fyne.KeyEnd)
	if !slices.Equal(steps, []int{1, -1, 1, -1, 10, -10}) || !slices.Equal(ends, []int{-1, 1}) {
		t.Errorf("steps %v, ends %v", steps, ends)
	}
}

func TestTheBreakEvenChartInWords(t *testing.T) {
	b := NewBreakEven()
	b.SetData(BreakEvenData{Empty: "No odds."})
	seen.Press(b, fyne.KeyRight)
	if !slices.Equal(b.Facts(), []string{"No odds."}) || b.Caption() != "No odds." {
		t.Errorf("%q", b.Facts())
	}
	b.SetData(triangle())
	seen.Open(t, fyne.NewSize(800, 300), b)
	facts := strings.Join(b.Facts(), "\n")
	// 2,000 √0.2
	for _, words := range []string{"bid USD 900: loss 14 %, gain 86 %", "walk-away bid at 2,000", "50 % lie below 2,000",
		"10 % lie below 894"} {
		if !strings.Contains(facts, words) {
			t.Errorf("%q is missing from %q", words, facts)
		}
	}
	b.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: b.frame().at(2000, 0).AddXY(0.01, 0)}})
	if !seen.Says(b, "50 % lie below 2,000") {
		t.Errorf("under the pointer: %q", b.Caption())
	}
	b.MouseOut()
	if !seen.Says(b, "A bid of USD 900 costs USD 1,050.") {
		t.Errorf("without the pointer: %q", b.Caption())
	}
}

// The loss is filled with the warning colour up to the line and no further, and stands in words beside it.
func TestTheLossEndsAtTheLine(t *testing.T) {
	b := NewBreakEven()
	b.SetData(triangle())
	seen.Open(t, fyne.NewSize(800, 300), b)
	line, right := b.frame().at(1050, 0).X, float32(0)
	for _, r := range seen.All[*canvas.Rectangle](b) {
		if r.FillColor == theme.Color(theme.ColorWarning) {
			right = max(right, r.Position().X+r.Size().Width)
		}
	}
	if right < line-2 || right > line+.5 {
		t.Errorf("the loss ends at %g, the line stands at %g", right, line)
	}
	if !seen.Says(b, "loss 14 %") || !seen.Says(b, "gain 86 %") {
		t.Errorf("%q", seen.Texts(b))
	}
}

// Whatever the bid, both sides of the line are named inside the chart.
func TestTheSidesAreNamedInsideTheChart(t *testing.T) {
	for _, at := range []float64{0, 20, 2000, 3990, 4000, 12000} {
		d := triangle()
		d.Bid.At = at
		b := NewBreakEven()
		b.SetData(d)
		seen.Open(t, fyne.NewSize(700, 300), b)
		for _, words := range seen.All[*canvas.Text](b) {
			if left, right := words.Position().X, words.Position().X+words.MinSize().Width; left < -.5 || right > b.Size().Width+.5 {
				t.Errorf("bid at %g: %q runs from %g to %g of %g", at, words.Text, left, right, b.Size().Width)
			}
		}
	}
}

func TestBreakEvenLooks(t *testing.T) {
	seen.Picture(t, "breakeven", fyne.NewSize(800, 340), func() fyne.CanvasObject {
		b := NewBreakEven()
		b.SetData(triangle())
		return b
	})
}
