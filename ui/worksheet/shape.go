package worksheet

import (
	"fyne.io/fyne/v2"

	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/ui/widgets/plot"
)

// shape is the chart of what the finished vehicle may bring: the chance of at least a price, along the prices.
type shape struct {
	chart *plot.Curve
	of    *desk.Valued // what is drawn
}

func newShape() *shape { return &shape{chart: plot.NewCurve()} }

func (s *shape) render(o desk.Open) {
	if s.of == o.Valued && s.of != nil {
		return
	}
	s.of = o.Valued
	d := plot.CurveData{Y: plot.Axis{Title: "chance of that or more", Format: view.Percent}, Empty: "No price is known yet."}
	for _, p := range view.PriceChances(o.Valued) {
		d.Points = append(d.Points, plot.CurvePoint{X: p.Price, Y: p.Chance})
	}
	if len(d.Points) > 0 {
		p := view.NewPurse(o.Valued.Answer.Currency)
		d.X = plot.Axis{Title: p.Code, Format: p.Whole}
		d.Mark = &o.Valued.Answer.Resale.P50
	}
	s.chart.SetData(d)
}

// show shows or hides an object.
func show(o fyne.CanvasObject, on bool) {
	if on {
		o.Show()
	} else {
		o.Hide()
	}
}
