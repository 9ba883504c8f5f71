package plot

import (
	"math"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"walkline/ui/widgets/seen"
)

func fall() []WaterfallBar {
	return []WaterfallBar{{"Resale", 14200, "USD 14,200"}, {"Selling", -600, "-600"}, {"Repair", -4900, "-4,900"},
		{"Hidden damage", -1150, "-1,150"}, {"Fees and freight", -980, "-980"}, {"Profit and allowance", -2320, "-2,320"},
		{"Walk-away bid", 4250, "USD 4,250"}}
}

func TestWaterfallOpensBars(t *testing.T) {
	b := NewWaterfall()
	b.SetBars(fall())
	var opened []int
	b.OnOpen = func(i int) { opened = append(opened, i) }
	w := seen.Open(t, fyne.NewSize(700, 300), b)
	w.Canvas().Focus(b)
	seen.Press(b, fyne.KeyDown, fyne.KeyDown, fyne.KeyReturn, fyne.KeyUp, fyne.KeyUp, fyne.KeyUp, fyne.KeyReturn, fyne.KeyEnd, fyne.KeyDown,
		fyne.KeySpace)
	test.TapAt(b, fyne.NewPos(50, 3.5*barStep()))
	if !slices.Equal(opened, []int{1, 0, 6, 3}) {
		t.Errorf("opened %v", opened)
	}
	if !slices.Contains(b.Facts(), "Hidden damage: -1,150") || !seen.Says(b, "USD 4,250") {
		t.Errorf("facts %q", b.Facts())
	}
}

func TestWaterfallGoesOnWhereTheLastEnded(t *testing.T) {
	b := NewWaterfall()
	b.SetBars(fall())
	for i := 1; i < len(b.rows)-1; i++ {
		if b.rows[i].from != b.rows[i-1].to {
			t.Errorf("bar %d begins at %v, the one before ended at %v", i, b.rows[i].from, b.rows[i-1].to)
		}
	}
	last := b.rows[len(b.rows)-1]
	if before := b.rows[len(b.rows)-2]; last.from != 0 || math.Abs(last.to-before.to) > 1e-9 {
		t.Errorf("the total runs %v..%v, the steps end at %v", last.from, last.to, before.to)
	}
}

func TestShareBars(t *testing.T) {
	b := NewShareBars()
	if !slices.Equal(b.Facts(), []string{"No figures yet."}) {
		t.Errorf("facts %q", b.Facts())
	}
	b.SetShares([]Share{{"Hidden damage", 0.41}, {"Resale price", 0.333}, {"Paint", 0.004}})
	if !slices.Equal(b.Facts(), []string{"Hidden damage: 41 %", "Resale price: 33 %", "Paint: 0 %"}) {
		t.Errorf("facts %q", b.Facts())
	}
	w := seen.Open(t, fyne.NewSize(500, 200), b)
	w.Canvas().Focus(b)
	seen.Press(b, fyne.KeyDown, fyne.KeyReturn)
	if b.Selected() != 0 {
		t.Errorf("selected %d", b.Selected())
	}
}

func fees() CurveData {
	mark := 4250.0
	return CurveData{X: Axis{Title: "hammer price"}, Y: Axis{Title: "fee"}, Steps: true, Mark: &mark, Name: "walk-away bid",
		Empty:  "No schedule.",
		Points: []CurvePoint{{0, 100}, {1000, 250}, {2000, 400}, {4000, 525}, {6000, 650}, {10000, 650}}}
}

func TestCurveReadsItsSteps(t *testing.T) {
	c := NewCurve()
	c.SetData(fees())
	for x, want := range map[float64]float64{0: 100, 999: 100, 1000: 250, 3999: 400, 4250: 525, 10000: 650} {
		if got, ok := c.At(x); !ok || got != want {
			t.Errorf("at %v: %v, %v, want %v", x, got, ok, want)
		}
	}
	if _, ok := c.At(10001); ok {
		t.Error("reads beyond its end")
	}
	if _, ok := c.At(math.NaN()); ok {
		t.Error("reads at no place")
	}
	straight := NewCurve()
	straight.SetData(CurveData{Points: []CurvePoint{{0, 0}, {10, 100}}})
	if got, _ := straight.At(2.5); got != 25 {
		t.Errorf("a straight line at a quarter is %v", got)
	}
}

func TestCurveSaysWhatItReads(t *testing.T) {
	c := NewCurve()
	c.SetData(fees())
	w := seen.Open(t, fyne.NewSize(600, 360), c)
	if want := "walk-away bid, hammer price 4,250: fee 525"; !seen.Says(c, want) {
		t.Errorf("the plot says %q", seen.Texts(c))
	}
	w.Canvas().Focus(c)
	seen.Press(c, fyne.KeyRight, fyne.KeyRight)
	if !seen.Says(c, "hammer price 1,000: fee 250") {
		t.Errorf("the plot says %q", seen.Texts(c))
	}
	at := c.frame().at(6000, 0)
	c.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at.AddXY(0.5, 0)}})
	if !seen.Says(c, ": fee 650") {
		t.Errorf("the plot says %q", seen.Texts(c))
	}
	if len(c.Facts()) != 6 {
		t.Errorf("facts %q", c.Facts())
	}
}

func TestBarsLook(t *testing.T) {
	seen.Picture(t, "bars", fyne.NewSize(800, 760), func() fyne.CanvasObject {
		a := NewWaterfall()
		a.SetBars(fall())
		seen.Press(a, fyne.KeyDown, fyne.KeyDown, fyne.KeyDown)
		b := NewShareBars()
		b.SetShares([]Share{{"Hidden damage", 0.41}, {"Resale price", 0.333}, {"Paint", 0.04}})
		c := NewCurve()
		c.SetData(fees())
		return container.NewBorder(container.NewVBox(a, b), nil, nil, nil, c)
	})
}
