package draw

import (
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/ui/theme"
)

var black, white = color.NRGBA{A: 255}, color.NRGBA{R: 255, G: 255, B: 255, A: 255}

func square(from, to float32) Path {
	return Path{{X: from, Y: from}, {X: to, Y: from}, {X: to, Y: to}, {X: from, Y: to}}
}

// covered sums the alpha of an image in pixels.
func covered(p *Pen) float64 {
	sum := 0.0
	for i := 3; i < len(p.dst.Pix); i += 4 {
		sum += float64(p.dst.Pix[i]) / 255
	}
	return sum
}

func TestPenFillsTheArea(t *testing.T) {
	for _, scale := range []float32{1, 2} {
		p := NewPen(100, 100, scale)
		p.Fill(Ink{Fill: black}, square(10.5, 30.5))
		want := 400 * float64(scale*scale)
		if got := covered(p); got < want*0.995 || got > want*1.005 {
			t.Errorf("scale %v: %v pixels, want %v", scale, got, want)
		}
	}
}

func TestPenLeavesTheHoleAndStaysInside(t *testing.T) {
	p := NewPen(100, 100, 1)
	p.Between(black, square(10, 50), square(20, 40))
	if got := covered(p); got < 1195 || got > 1205 {
		t.Errorf("%v pixels, want 1200", got)
	}
	p = NewPen(20, 20, 1)
	p.Fill(Ink{Fill: black}, square(-50, 200)) // beyond every edge
	if got := covered(p); got != 400 {
		t.Errorf("%v pixels of 400", got)
	}
	p = NewPen(20, 20, 1)
	p.Fill(Ink{Fill: black}, square(50, 60), nil) // outside, and nothing
	if got := covered(p); got != 0 {
		t.Errorf("%v pixels of none", got)
	}
}

func TestStrokeHasItsWidth(t *testing.T) {
	p := NewPen(100, 100, 1)
	p.Stroke(black, 4, Path{{X: 10, Y: 10}, {X: 50, Y: 10}, {X: 90, Y: 10}})
	if got := covered(p); got < 318 || got > 322 {
		t.Errorf("%v pixels, want 320", got)
	}
	p = NewPen(100, 100, 1)
	p.Stroke(black, 2, append(square(20, 60), fyne.NewPos(20, 20))) // closed: mitred corners
	if got := covered(p); got < 300 || got > 325 {
		t.Errorf("%v pixels, want about 320", got)
	}
}

// The share of hatch is the width of a line over its period; crossed sets overlap where both lie.
func TestHatchHasItsShare(t *testing.T) {
	for _, c := range []struct {
		in   Ink
		want float64
	}{
		{Ink{Fill: white, Hatch: black, Period: 10, Width: 2}, 0.2}, {Ink{Fill: white, Hatch: black, Period: 5, Width: 1}, 0.2},
		{Ink{Fill: white, Hatch: black, Period: 10, Width: 2, Cross: true}, 0.36}, {Ink{Fill: white}, 0},
	} {
		p := NewPen(400, 400, 1)
		p.Fill(c.in, square(0, 400))
		dark := 0.0
		for i := 0; i < len(p.dst.Pix); i += 4 {
			dark += 1 - float64(p.dst.Pix[i])/255
		}
		if got := dark / 160000; got < c.want-0.015 || got > c.want+0.015 {
			t.Errorf("%+v: %v dark, want %v", c.in, got, c.want)
		}
	}
}

func TestShortenedFits(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(theme.New(theme.Options{Look: theme.Light}))
	long := "2019 Corvid Sallow Estate, long bed"
	for _, width := range []float32{10, 60, 120, 1000} {
		got := Shortened(long, width, theme.SizeBody, fyne.TextStyle{})
		if TextWidth(got, theme.SizeBody, fyne.TextStyle{}) > width && got != "…" {
			t.Errorf("%q is wider than %v", got, width)
		}
		if width == 1000 && got != long {
			t.Errorf("%q was cut for nothing", got)
		}
	}
}

func TestTextTakesTheThemeOfTheMoment(t *testing.T) {
	a := test.NewTempApp(t)
	a.Settings().SetTheme(theme.New(theme.Options{Look: theme.Light}))
	words := NewText("words", theme.SizeBody, Foreground)
	a.Settings().SetTheme(theme.New(theme.Options{Look: theme.Dark, Scale: 1.5}))
	words.Dress()
	if words.Color != theme.Color(Foreground) || words.TextSize != theme.Size(theme.SizeBody) {
		t.Errorf("color %v, size %v", words.Color, words.TextSize)
	}
}
