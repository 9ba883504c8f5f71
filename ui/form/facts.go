package form

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"walkline/ui/damage"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// Identity adds the fields that say which vehicle it is, and returns the first.
func Identity(f *Form) fyne.Focusable {
	year := widgets.Spec{Kind: widgets.Whole, Optional: true, Least: widgets.Bound(lot.FirstModelYear), Most: widgets.Bound(lot.LastModelYear)}
	first := f.Number("Model year", Ungrouped(year), func(c *valuation.Case) any { return &c.Lot.ModelYear })
	f.Text("Make", func(c *valuation.Case) *string { return &c.Lot.Make })
	f.Text("Model", func(c *valuation.Case) *string { return &c.Lot.Model })
	f.Text("Trim", func(c *valuation.Case) *string { return &c.Lot.Trim })
	vin(f)
	f.Number("Odometer", widgets.Spec{Kind: widgets.Whole, Optional: true, Least: widgets.Bound(0), Most: widgets.Bound(lot.MostMileage)},
		func(c *valuation.Case) any { return &c.Lot.Odometer })
	f.Choice("Odometer unit", lot.OdometerUnits, func(c *valuation.Case) *string { return &c.Lot.OdometerUnit })
	f.Choice("Odometer statement", lot.OdometerStatuses, func(c *valuation.Case) *string { return &c.Lot.OdometerStatus })
	return first.Focus()
}

// vin adds the field of the VIN, with what the VIN says of itself and against the facts below it as it is typed.
func vin(f *Form) {
	const label = "VIN"
	e := widgets.NewTextEntry()
	e.OnChanged = func(s string) { f.Change(label, func(c *valuation.Case) { c.Lot.VIN = s }) }
	e.SetMeaning(view.Help(label))
	says := widgets.NewCaption("")
	f.Row(label, container.New(layout.NewCustomPaddedVBoxLayout(0), bounded(e), says), func(c valuation.Case) {
		if e.Text != c.Lot.VIN {
			e.SetText(c.Lot.VIN)
		}
		words, wrong := view.VIN(c.Lot)
		says.SetText(words)
		says.SetWarning(wrong)
	})
}

// Sale adds the fields of the sale at which a lot is offered.
func Sale(f *Form) {
	f.Text("Lot number", func(c *valuation.Case) *string { return &c.Lot.Number })
	f.Text("Sale", func(c *valuation.Case) *string { return &c.Lot.Sale })
	f.Date("Sale day", func(c *valuation.Case) *lot.Date { return &c.Lot.SaleDate })
	f.Date("Valued on", func(c *valuation.Case) *lot.Date { return &c.ValuedOn })
}

// Title adds the fields of the title as it is offered, and returns the first.
func Title(f *Form) fyne.Focusable {
	first := f.Choice("Title document", lot.Documents, func(c *valuation.Case) *string { return &c.Lot.Title.Document })
	f.Words("Brands on it", "Flood damage, Collision", func(c *valuation.Case) *[]string { return &c.Lot.Title.Brands })
	return first
}

// Paper adds all fields of the title.
func Paper(f *Form) {
	Title(f)
	f.Text("Issued in", func(c *valuation.Case) *string { return &c.Lot.Title.IssuedIn })
	f.Text("Register in", func(c *valuation.Case) *string { return &c.Lot.Title.RegisterIn })
}

// Condition adds how the vehicle stands in the yard.
func Condition(f *Form) {
	f.Several("Loss", lot.Losses, func(c *valuation.Case) *[]string { return &c.Lot.Loss })
	f.Choice("Runs?", lot.Conditions, func(c *valuation.Case) *string { return &c.Lot.Condition })
	f.YesNo("Keys", func(c *valuation.Case) **bool { return &c.Lot.Keys })
	f.Several("Airbags deployed", lot.AirbagPositions, func(c *valuation.Case) *[]string { return &c.Lot.Airbags })
}

// Marked adds a tick for each area that is damaged and one for none, with the marks in words, and returns the first tick. How far and
// how deep an area is hurt is not asked: a new mark is functional and bolted.
func Marked(f *Form) fyne.Focusable {
	grid := container.New(byScale{columns: perRow - 1})
	ticks := make([]*widgets.Check, len(lot.Areas))
	for i, area := range lot.Areas {
		ticks[i] = widgets.NewCheck(damage.Area(area), func(on bool) {
			extent, depth := "", ""
			if on {
				extent, depth = lot.Extents[1], lot.Depths[1]
			}
			f.Change("damage "+damage.Area(area), func(c *valuation.Case) { c.Damage = WithCell(c.Damage, area, extent, depth) })
		})
		grid.Add(ticks[i])
	}
	f.Row("What's damaged", grid, func(c valuation.Case) {
		for i, t := range ticks {
			t.SetChecked(slices.ContainsFunc(c.Damage, func(d lot.Damage) bool { return d.Area == lot.Areas[i] }))
		}
	})
	f.tick("No damage", "I looked, and saw no damage", func(c valuation.Case) bool { return c.Findings[valuation.NothingSeen] == "no" },
		func(c *valuation.Case, on bool) { c.SeeNothing(on) })
	return ticks[0]
}

// WithCell returns the survey with one area set, or cleared by an empty extent; the note of the area stays.
func WithCell(survey []lot.Damage, area, extent, depth string) []lot.Damage {
	at := slices.IndexFunc(survey, func(x lot.Damage) bool { return x.Area == area })
	switch {
	case at < 0 && extent != "":
		return append(survey, lot.Damage{Area: area, Extent: extent, Depth: depth})
	case at >= 0 && extent == "":
		return slices.Delete(survey, at, at+1)
	case at >= 0:
		survey[at].Extent, survey[at].Depth = extent, depth
	}
	return survey
}
