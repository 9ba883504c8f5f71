package view

import (
	"fmt"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// Dot is one comparable of the scatter.
type Dot struct {
	Row              int // position in the case
	X, Price, Weight float64
	Used, Branded    bool
}

// Scatter is what the price chart shows. Units: X in the lot's unit of mileage, or model year; prices in major units.
type Scatter struct {
	XLabel, YLabel string
	Years          bool // X is a model year
	Words          string
	Dots           []Dot
	DotWords       func(i int) string // the dot in words
	Band           []valuation.BandPoint
	Subject        *float64 // where the subject stands on X; nil: not known
	P10, P50, P90  float64
}

// ByMileage returns the chart of price against mileage. Brought: prices adjusted to this lot in all but mileage, where the
// last valuation used the row; else as they stand.
func ByMileage(o desk.Open, brought bool) Scatter {
	unit := o.Case.Lot.OdometerUnit
	x := abscissa{title: "mileage, " + unit, at: func(r resale.Row) (float64, bool) { return r.MileageIn(unit) }}
	if brought {
		x.brought = func(a resale.Adjusted) money.Amount { return a.Adjusted - a.Mileage }
	}
	s := scatter(o, x)
	if o.Case.Lot.Odometer != nil {
		x := float64(*o.Case.Lot.Odometer)
		s.Subject = &x
	}
	if o.Valued != nil {
		s.Band = o.Valued.ByMileage
	}
	return s
}

// ByYear returns the chart of price against model year. Brought: prices adjusted to this lot in all but age.
func ByYear(o desk.Open, brought bool) Scatter {
	x := abscissa{title: "model year", at: func(r resale.Row) (float64, bool) { return float64(r.ModelYear), r.ModelYear != 0 }}
	if brought {
		x.brought = func(a resale.Adjusted) money.Amount { return a.Adjusted - a.Age }
	}
	s := scatter(o, x)
	s.Years = true
	if o.Case.Lot.ModelYear != 0 {
		x := float64(o.Case.Lot.ModelYear)
		s.Subject = &x
	}
	if o.Valued != nil {
		s.Band = o.Valued.ByYear
	}
	return s
}

// abscissa is what prices are drawn against.
type abscissa struct {
	title   string
	at      func(resale.Row) (float64, bool)
	brought func(resale.Adjusted) money.Amount // the price to draw of a row that was used; nil: as it stands
}

func scatter(o desk.Open, x abscissa) Scatter {
	p := NewPurse(o.Case.Currency)
	s := Scatter{XLabel: x.title, YLabel: p.Code}
	adjusted := make([]resale.Adjusted, len(o.Case.Resale.Rows))
	if o.Valued != nil {
		a := o.Valued.Answer
		s.P10, s.P50, s.P90 = a.Resale.P10, a.Resale.P50, a.Resale.P90
		s.Words = "this lot: " + p.Whole(a.Resale.P50) + ", 8 times in 10 from " + p.Range(a.Resale.P10, a.Resale.P90)
		for _, r := range a.Resale.Adjusted {
			if r.Row < len(adjusted) {
				adjusted[r.Row] = r
			}
		}
	}
	for i, r := range o.Case.Resale.Rows {
		v, ok := x.at(r)
		if !ok {
			continue
		}
		a, price := adjusted[i], r.Price
		if x.brought != nil && a.Used {
			price = x.brought(a)
		}
		s.Dots = append(s.Dots, Dot{Row: i, X: v, Price: p.Major(price), Weight: a.Weight, Used: !r.Excluded,
			Branded: r.Title != "" && r.Title != "clear"})
	}
	s.DotWords = func(i int) string { return dotWords(p, o.Case.Resale.Rows[s.Dots[i].Row], s.Dots[i].Price) }
	return s
}

// dotWords says what a dot is; drawn is the price that it is drawn at, in major units.
func dotWords(p Purse, r resale.Row, drawn float64) string {
	words := fmt.Sprintf("%s %s, %s, %s", p.Show(r.Price), kind(r.Kind), Vehicle(r.ModelYear, r.Trim), mileage(r))
	if drawn != p.Major(r.Price) {
		words += ", adjusted to this lot " + p.Code + " " + p.Whole(drawn)
	}
	return words
}
