package worksheet

import (
	"math"

	"fyne.io/fyne/v2"

	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/ui/widgets/plot"
	"walkline/valuation"
)

// shape is the chart of what the finished vehicle may bring, with a price that the user asks about.
type shape struct {
	chart  *plot.BreakEven
	open   desk.Open
	of     *desk.Valued // what slices were read from
	slices []valuation.Slice
	at     float64 // the price asked about; 0: the middle one
}

func newShape() *shape {
	s := &shape{chart: plot.NewBreakEven()}
	s.chart.OnDrag = s.ask
	s.chart.OnStep = func(steps int) { s.ask(s.now() + float64(steps)*s.step()) }
	s.chart.OnEnd = func(way int) {
		if len(s.slices) > 0 {
			s.ask(map[bool]float64{true: s.slices[0].From, false: s.slices[len(s.slices)-1].To}[way < 0])
		}
	}
	return s
}

// now returns the price that the line stands at.
func (s *shape) now() float64 {
	if s.at == 0 && s.open.Valued != nil {
		return s.open.Valued.Answer.Resale.P50
	}
	return s.at
}

// step is how far a key moves the line: a round figure near a hundredth of the shape.
func (s *shape) step() float64 {
	if len(s.slices) == 0 {
		return 0
	}
	wide := s.slices[len(s.slices)-1].To - s.slices[0].From
	return math.Pow(10, math.Round(math.Log10(max(wide, 1)/100)))
}

// ask moves the line to a price, at a round figure.
func (s *shape) ask(price float64) {
	if unit := s.step(); unit > 0 {
		s.at = max(math.Round(price/unit)*unit, unit)
		s.render(s.open)
	}
}

func (s *shape) render(o desk.Open) {
	if s.open.ID != o.ID {
		s.at = 0 // another lot
	}
	s.open = o
	if s.of != o.Valued {
		s.of, s.slices = o.Valued, view.PriceShape(o.Valued)
	}
	at, known := view.NewPriceOdds(o, s.slices, s.at)
	if !known {
		s.chart.SetData(plot.BreakEvenData{Empty: "No price is known yet."})
		return
	}
	d := plot.BreakEvenData{X: plot.Axis{Title: view.NewPurse(o.Case.Currency).Code}, Bid: plot.Line{At: at.At, Name: at.Name}, Loss: at.Less,
		Gain: at.More, Words: at.Words}
	for _, x := range at.Slices {
		d.Slices = append(d.Slices, plot.Slice{From: x.From, To: x.To, Chance: x.Chance})
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
