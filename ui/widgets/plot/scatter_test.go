package plot

import (
	"image/color"
	"math"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"walkline/ui/widgets/seen"
)

// sales are made up.
func sales() ScatterData {
	d := ScatterData{X: Axis{Title: "miles"}, Y: Axis{Title: "price, USD"}, Empty: "No comparables yet: import or add some."}
	for i, miles := range []float64{61000, 34000, 52000, 78000, 45000, 90000, 70000, 66000} {
		d.Points = append(d.Points, ScatterPoint{X: miles, Y: 15500 - miles*0.07 + 700*math.Sin(float64(3*i)), Weight: float64(i%4+1) / 4,
			Used: i != 5, Branded: i == 6})
	}
	for miles := 30000.0; miles <= 95000; miles += 5000 {
		middle := 15500 - miles*0.07
		d.Band = append(d.Band, BandPoint{miles, middle * 0.88, middle, middle * 1.12})
	}
	d.Words = func(i int) string { return "row " + string(rune('A'+i)) }
	d.Subject = &Subject{BandPoint{58000, 10000, 11440, 12900}, "This lot: 11,440 at 58,000 miles, likely between 10,000 and 12,900"}
	return d
}

func TestScatterWalksPointsByX(t *testing.T) {
	s := NewScatter()
	s.SetData(sales())
	var walked, opened []int
	s.OnSelected = func(i int) { walked = append(walked, i) }
	s.OnOpen = func(i int) { opened = append(opened, i) }
	w := seen.Open(t, fyne.NewSize(700, 420), s)
	w.Canvas().Focus(s)
	seen.Press(s, fyne.KeyRight, fyne.KeyRight, fyne.KeyRight, fyne.KeyLeft, fyne.KeyEnd, fyne.KeyRight, fyne.KeyReturn, fyne.KeyHome)
	if !slices.Equal(walked, []int{1, 4, 2, 4, 5, 1}) || !slices.Equal(opened, []int{5}) {
		t.Errorf("walked %v, opened %v", walked, opened)
	}
	if !slices.Contains(seen.Texts(s), "row B") {
		t.Errorf("the plot says %q", seen.Texts(s))
	}
}

func TestScatterPointerFindsPoints(t *testing.T) {
	s := NewScatter()
	s.SetData(sales())
	var walked []int
	s.OnSelected = func(i int) { walked = append(walked, i) }
	w := seen.Open(t, fyne.NewSize(700, 420), s)
	p := s.data.Points[5]
	at := s.frame().at(p.X, p.Y)
	s.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at.AddXY(4, 0)}})
	if !slices.Contains(seen.Texts(s), "row F, left out") {
		t.Errorf("the plot says %q", seen.Texts(s))
	}
	s.MouseOut()
	if !slices.Contains(seen.Texts(s), s.data.Subject.Words) {
		t.Errorf("the plot says %q", seen.Texts(s))
	}
	test.TapAt(s, at)
	if !slices.Equal(walked, []int{5}) || w.Canvas().Focused() != s {
		t.Errorf("tapped %v, focused %v", walked, w.Canvas().Focused())
	}
	test.TapAt(s, fyne.NewPos(1, 1))
	if s.Selected() != 5 {
		t.Error("a tap beside the points changed the selection")
	}
}

func TestScatterFactsNameEveryPoint(t *testing.T) {
	s := NewScatter()
	if s.SetData(ScatterData{Empty: "nothing"}); !slices.Equal(s.Facts(), []string{"nothing"}) {
		t.Errorf("facts %q", s.Facts())
	}
	s.SetData(sales())
	facts := strings.Join(s.Facts(), "\n")
	if len(s.Facts()) != 9 || !strings.Contains(facts, "row F, left out") || !strings.Contains(facts, "row G, branded title") {
		t.Errorf("facts %q", s.Facts())
	}
}

func TestScatterDrawsOneShapeAPoint(t *testing.T) {
	s := NewScatter()
	s.SetData(sales())
	seen.Open(t, fyne.NewSize(700, 420), s)
	circles := seen.All[*canvas.Circle](s)
	if len(circles) != 7+2 { // seven clean titles and two circles of the legend; the branded ones are squares
		t.Errorf("%d circles", len(circles))
	}
}

func TestNiceTicks(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		count     int
		want      []float64
	}{
		{0, 10, 5, []float64{0, 2, 4, 6, 8, 10}}, {3, 97, 5, []float64{0, 20, 40, 60, 80, 100}}, {-1, 1, 4, []float64{-1, -0.5, 0, 0.5, 1}},
		{5, 5, 2, []float64{4, 5, 6}}, {math.NaN(), 1, 5, []float64{0, 1}},
	} {
		got := niceTicks(c.low, c.high, c.count)
		same := len(got) == len(c.want)
		for i := range got {
			same = same && math.Abs(got[i]-c.want[i]) < 1e-9
		}
		if !same {
			t.Errorf("%v..%v: %v, want %v", c.low, c.high, got, c.want)
		}
	}
}

func TestScatterLooks(t *testing.T) {
	seen.Picture(t, "scatter", fyne.NewSize(800, 460), func() fyne.CanvasObject {
		s := NewScatter()
		s.SetData(sales())
		s.Select(3)
		return container.NewStack(s)
	})
}

// TestManyPointsAreOnePicture gives the plot more points than the canvas should draw one by one: they are painted, at
// their places, and are still walked and told.
func TestManyPointsAreOnePicture(t *testing.T) {
	d := ScatterData{X: Axis{Title: "miles"}, Y: Axis{Title: "price"}}
	for i := range 1000 {
		d.Points = append(d.Points, ScatterPoint{X: float64(i), Y: float64(i), Weight: 1, Used: i != 500})
	}
	s := NewScatter()
	s.SetData(d)
	w := seen.Open(t, fyne.NewSize(700, 420), s)
	if circles := len(seen.All[*canvas.Circle](w.Content())); circles > 10 { // those of the legend
		t.Errorf("%d circles on the canvas", circles)
	}
	picture := w.Canvas().Capture()
	f := s.frame()
	for i, dark := range map[float64]bool{100: true, 900: true} {
		at := f.at(i, i)
		if got := isDark(picture.At(int(at.X), int(at.Y))); got != dark {
			t.Errorf("the pixel of point %v is %v", i, picture.At(int(at.X), int(at.Y)))
		}
	}
	if at := f.at(100, 900); isDark(picture.At(int(at.X), int(at.Y))) {
		t.Error("a place without a point is painted")
	}
	if got := len(s.Facts()); got != 1000 {
		t.Errorf("%d facts", got)
	}
}

func isDark(c color.Color) bool {
	r, g, b, _ := c.RGBA()
	return r+g+b < 3*0x9000
}
