package form

import (
	"fyne.io/fyne/v2/container"

	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation"
	"walkline/valuation/prob"
)

// How the price moves while the lot is owned, as it is chosen.
const (
	byRows = "as the comparables tell"
	stays  = "it stays"
	byMe   = "my figures"
)

// usualChange is what "my figures" begin with: a starter value, from memory.
var usualChange = prob.Three{Low: -.12, Likely: -.10, High: -.07}

// Growing adds the fields of how the price moves while the lot is owned. Its three figures count with "my figures" alone.
func Growing(f *Form) {
	ways := []string{byRows, stays, byMe}
	f.picked("Price while I own it", ways, ways, func(c valuation.Case) string {
		switch y := c.Resale.YearlyChange; {
		case y == nil:
			return byRows
		case y.Zero():
			return stays
		}
		return byMe
	}, func(c *valuation.Case, way string) {
		change := map[string]prob.Three{stays: {}, byMe: usualChange}[way]
		if c.Resale.YearlyChange = &change; way == byRows {
			c.Resale.YearlyChange = nil
		}
	})
	spec := widgets.Spec{Kind: widgets.Percent, Digits: 3, Least: widgets.Bound(-0.9), Most: widgets.Bound(5)}
	f.Three("Yearly change", spec, func(c *valuation.Case) any { return &c.Resale.YearlyChange }).SetRoom(tightRoom)
}

// Mileage adds the field of what an odometer that can't be trusted may stand for.
func Mileage(f *Form) {
	f.Three("True mileage may be", widgets.Spec{Least: widgets.Bound(0)}, func(c *valuation.Case) any { return &c.Resale.TrueMileage }).
		SetRoom(tightRoom)
}

// Discounts adds a field for what a title takes off by the cause of its brand; nothing in it: the starter value.
func Discounts(f *Form) {
	below := Percents
	below.Most = widgets.Bound(0.99)
	for _, cause := range valuation.Causes {
		e := f.three(discountLabel(cause), below, func(c valuation.Case) prob.Three { return c.Resale.Discounts[cause] },
			func(c *valuation.Case, off prob.Three) {
				discounts := map[string]prob.Three{}
				for known, d := range c.Resale.Discounts {
					discounts[known] = d
				}
				if discounts[cause] = off; off.Zero() {
					delete(discounts, cause)
				}
				if c.Resale.Discounts = discounts; len(discounts) == 0 {
					c.Resale.Discounts = nil
				}
			})
		e.SetBlank()
		e.SetRoom(tightRoom)
	}
}

// tightRoom is kept free beside a field that stands beside a chart.
const tightRoom = 60

// discountLabel names what a cause takes off.
func discountLabel(cause string) string { return Sentence(view.Words(cause)) + " takes off" }

var months = []string{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"}

// Season adds the twelve factors of the price by month; all 1 is no season, and is not kept.
func Season(f *Form) {
	const perRow = 3
	grid := container.NewGridWithColumns(perRow)
	entries := make([]*widgets.NumberEntry, len(months))
	for i, month := range months {
		e := widgets.NewNumberEntry(widgets.Spec{Digits: 2, Least: widgets.Bound(0.2), Most: widgets.Bound(5)}, nil)
		e.SetFigures(4)
		e.SetRoom(0)
		e.SetMeaning(view.Help("Season"))
		e.OnChanged = func(n widgets.Number) {
			f.Change("season, "+month, func(c *valuation.Case) { c.Resale.Season = seasonWith(c.Resale.Season, i, n.Float()) })
		}
		f.leads(e.Focus())
		entries[i] = e
		grid.Add(container.NewBorder(nil, nil, Label(month), nil, e))
	}
	f.Row("Season", grid, func(c valuation.Case) {
		for i, e := range entries {
			factor := 1.0
			if len(c.Resale.Season) == len(months) {
				factor = c.Resale.Season[i]
			}
			e.SetValue(widgets.Known(factor))
		}
	})
}

// seasonWith returns a season with one month's factor changed; nothing where every month is like the year.
func seasonWith(season []float64, month int, factor float64) []float64 {
	next := make([]float64, len(months))
	flat := true
	for i := range next {
		next[i] = 1
		if len(season) == len(months) {
			next[i] = season[i]
		}
		if i == month {
			next[i] = factor
		}
		flat = flat && next[i] == 1
	}
	if flat {
		return nil
	}
	return next
}
