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

	"walkline/ui/widgets/seen"
)

// even rises evenly: a loss from nothing at 0 to certain at 4,000, a win from nothing at 1,000 to certain at 3,000.
func even() ChancesData {
	d := ChancesData{X: Axis{Title: "bid"}, At: 1000, Name: "bid USD 1,000", Words: "A bid of USD 1,000 costs USD 1,200.", Empty: "No odds.",
		Posts: []Post{{At: 2000, Name: "walk-away bid", Strong: true}, {At: 2010, Name: "chance of a loss"}, {At: 400, Name: "cash"}},
		Steps: []float64{900, 950, 1000, 1050, 1100},
		Lines: []ChanceLine{{Name: "loss", Warns: true}, {Name: "win"}}}
	for x := 0.0; x <= 4000; x += 50 {
		d.Lines[0].Points = append(d.Lines[0].Points, CurvePoint{x, x / 4000})
		d.Lines[1].Points = append(d.Lines[1].Points, CurvePoint{x, min(max((x-1000)/2000, 0), 1)})
	}
	return d
}

func TestALineIsReadBetweenItsPoints(t *testing.T) {
	points := even().Lines[0].Points
	for x, want := range map[float64]float64{-5: 0, 0: 0, 1000: .25, 1010: .2525, 4000: 1, 9000: 1} {
		if got := valueOf(points, x); math.Abs(got-want) > 1e-9 {
			t.Errorf("at %g: %g, want %g", x, got, want)
		}
	}
}

func TestTheChancesTellWhatIsAskedOfThem(t *testing.T) {
	c := NewChances()
	c.SetData(even())
	var picked []float64
	var steps, ends []int
	c.OnPick = func(x float64) { picked = append(picked, math.Round(x)) }
	c.OnStep = func(n int) { steps = append(steps, n) }
	c.OnEnd = func(way int) { ends = append(ends, way) }
	w := seen.Open(t, fyne.NewSize(800, 300), c)
	test.TapAt(c, c.frame().at(3000, 0))
	test.TapAt(c, fyne.NewPos(0, 40))
	if !slices.Equal(picked, []float64{3000, 0}) || w.Canvas().Focused() != c {
		t.Errorf("picked %v, focused %v", picked, w.Canvas().Focused())
	}
	seen.Press(c, fyne.KeyRight, fyne.KeyLeft, fyne.KeyUp, fyne.KeyDown, fyne.KeyPageUp, fyne.KeyPageDown, fyne.KeyHome, fyne.KeyEnd)
	if !slices.Equal(steps, []int{1, -1, 1, -1, 10, -10}) || !slices.Equal(ends, []int{-1, 1}) {
		t.Errorf("steps %v, ends %v", steps, ends)
	}
}

func TestTheChancesInWords(t *testing.T) {
	c := NewChances()
	c.SetData(ChancesData{Empty: "No odds."})
	seen.Press(c, fyne.KeyRight)
	if !slices.Equal(c.Facts(), []string{"No odds."}) || c.Caption() != "No odds." {
		t.Errorf("%q", c.Facts())
	}
	c.SetData(even())
	seen.Open(t, fyne.NewSize(800, 300), c)
	facts := strings.Join(c.Facts(), "\n")
	for _, words := range []string{"bid USD 1,000: 1,000: loss 25 %, win 0.0 %", "walk-away bid at 2,000", "cash at 400", "loss 10 % from 400",
		"win 50 % from 2,000"} {
		if !strings.Contains(facts, words) {
			t.Errorf("%q is missing from %q", words, facts)
		}
	}
	c.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: c.frame().at(2000, 0).AddXY(0.01, 0)}})
	if !seen.Says(c, "2,000: loss 50 %, win 50 %") {
		t.Errorf("under the pointer: %q", c.Caption())
	}
	c.MouseOut()
	if !seen.Says(c, "A bid of USD 1,000 costs USD 1,200.") {
		t.Errorf("without the pointer: %q", c.Caption())
	}
}

// The limits that crowd keep the name of the strong one, and every text stands inside the plot, wherever the walker is.
func TestNamesStandInsideAndApart(t *testing.T) {
	for _, at := range []float64{0, 20, 2000, 3990, 4000, 12000} {
		d := even()
		d.At = at
		c := NewChances()
		c.SetData(d)
		seen.Open(t, fyne.NewSize(700, 300), c)
		if !seen.Says(c, "walk-away bid") || seen.Says(c, "chance of a loss") {
			t.Errorf("at %g: %q", at, seen.Texts(c))
		}
		for _, words := range seen.All[*canvas.Text](c) {
			left := words.Position().X
			if words.Alignment == fyne.TextAlignLeading && (left < -.5 || left+words.MinSize().Width > c.Size().Width+.5) {
				t.Errorf("at %g: %q runs from %g, %g wide, of %g", at, words.Text, left, words.MinSize().Width, c.Size().Width)
			}
		}
	}
}

func TestChancesLooks(t *testing.T) {
	seen.Picture(t, "chances", fyne.NewSize(800, 340), func() fyne.CanvasObject {
		c := NewChances()
		c.SetData(even())
		return c
	})
}
