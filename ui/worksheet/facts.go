package worksheet

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/form"
	"walkline/ui/widgets"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// documents are the title documents offered; the words are the trade's and AAMVA D20's.
var documents = []string{"clear", "salvage", "rebuilt", "junk", "parts only", "dismantled", "flood damage",
	"certificate of destruction", "bill of sale", "none", lot.NotYetKnown}

// newFacts returns the section for what the sale's list and the papers say.
func newFacts(p *Page) *section {
	vehicle, sale, paper, state := form.New(p.edit), form.New(p.edit), form.New(p.edit), form.New(p.edit)
	first := factsOfVehicle(vehicle)
	factsOfSale(sale)
	factsOfPaper(paper)
	factsOfState(state)
	body := container.NewVBox(
		form.Heading("Vehicle", "As the list and the door plate say. A VIN is checked as it is typed."), vehicle.Rows,
		form.Heading("Sale", ""), sale.Rows,
		form.Heading("Paper", "What the document is decides what may be done with the vehicle. Ask the agency where it will be registered."), paper.Rows,
		form.Heading("State", "How it stands in the yard."), state.Rows,
	)
	return &section{body: container.NewVScroll(body), forms: []*form.Form{vehicle, sale, paper, state}, first: first}
}

// factsOfVehicle adds the fields of the vehicle and returns the first.
func factsOfVehicle(f *form.Form) fyne.Focusable {
	year := widgets.Spec{Kind: widgets.Whole, Optional: true, Least: widgets.Bound(lot.FirstModelYear), Most: widgets.Bound(lot.LastModelYear)}
	first := f.Number("Model year", form.Ungrouped(year), func(c valuation.Case) widgets.Number { return form.OrZero(c.Lot.ModelYear) },
		func(c *valuation.Case, n widgets.Number) { c.Lot.ModelYear = n.Int() })
	f.Text("Make", func(c valuation.Case) string { return c.Lot.Make }, func(c *valuation.Case, s string) { c.Lot.Make = s })
	f.Text("Model", func(c valuation.Case) string { return c.Lot.Model }, func(c *valuation.Case, s string) { c.Lot.Model = s })
	f.Text("Trim", func(c valuation.Case) string { return c.Lot.Trim }, func(c *valuation.Case, s string) { c.Lot.Trim = s })
	f.Text("VIN", func(c valuation.Case) string { return c.Lot.VIN }, func(c *valuation.Case, s string) { c.Lot.VIN = s })
	f.Number("Odometer", widgets.Spec{Kind: widgets.Whole, Optional: true, Least: widgets.Bound(0), Most: widgets.Bound(lot.MostMileage)},
		func(c valuation.Case) widgets.Number { return form.OrNone(c.Lot.Odometer) },
		func(c *valuation.Case, n widgets.Number) { c.Lot.Odometer = form.ToPointer(n) })
	f.Choice("Odometer unit", lot.OdometerUnits, func(c valuation.Case) string { return c.Lot.OdometerUnit }, func(c *valuation.Case, s string) { c.Lot.OdometerUnit = s })
	f.Choice("Odometer statement", lot.OdometerStatuses, func(c valuation.Case) string { return c.Lot.OdometerStatus }, func(c *valuation.Case, s string) { c.Lot.OdometerStatus = s })
	return first.Focus()
}

func factsOfSale(f *form.Form) {
	f.Text("Lot number", func(c valuation.Case) string { return c.Lot.Number }, func(c *valuation.Case, s string) { c.Lot.Number = s })
	f.Text("Sale", func(c valuation.Case) string { return c.Lot.Sale }, func(c *valuation.Case, s string) { c.Lot.Sale = s })
	f.Date("Sale day", func(c valuation.Case) lot.Date { return c.Lot.SaleDate }, func(c *valuation.Case, d lot.Date) { c.Lot.SaleDate = d })
	f.Date("Valued on", func(c valuation.Case) lot.Date { return c.ValuedOn }, func(c *valuation.Case, d lot.Date) { c.ValuedOn = d })
}

func factsOfPaper(f *form.Form) {
	f.Choice("Title document", documents, func(c valuation.Case) string { return c.Lot.Title.Document }, func(c *valuation.Case, s string) { c.Lot.Title.Document = s })
	f.Words("Brands on it", "Flood damage, Collision", func(c valuation.Case) []string { return c.Lot.Title.Brands }, func(c *valuation.Case, s []string) { c.Lot.Title.Brands = s })
	f.Text("Issued in", func(c valuation.Case) string { return c.Lot.Title.IssuedIn }, func(c *valuation.Case, s string) { c.Lot.Title.IssuedIn = s })
	f.Text("Register in", func(c valuation.Case) string { return c.Lot.Title.RegisterIn }, func(c *valuation.Case, s string) { c.Lot.Title.RegisterIn = s })
}

func factsOfState(f *form.Form) {
	f.Several("Loss", lot.Losses, func(c valuation.Case) []string { return c.Lot.Loss }, func(c *valuation.Case, s []string) { c.Lot.Loss = s })
	f.Choice("It", lot.Conditions, func(c valuation.Case) string { return c.Lot.Condition }, func(c *valuation.Case, s string) { c.Lot.Condition = s })
	f.Choice("Keys", []string{"yes", "no", "unknown"}, keys, setKeys)
	f.Several("Airbags deployed", lot.AirbagPositions, func(c valuation.Case) []string { return c.Lot.Airbags }, func(c *valuation.Case, s []string) { c.Lot.Airbags = s })
}

func keys(c valuation.Case) string {
	switch {
	case c.Lot.Keys == nil:
		return "unknown"
	case *c.Lot.Keys:
		return "yes"
	}
	return "no"
}

func setKeys(c *valuation.Case, s string) {
	has := s == "yes"
	c.Lot.Keys = &has
	if s == "unknown" {
		c.Lot.Keys = nil
	}
}

// section is one part of the worksheet.
type section struct {
	body  fyne.CanvasObject
	forms []*form.Form
	show  func(*Page)    // writes what no form holds; may be nil
	first fyne.Focusable // takes the keyboard when the section is gone to; may be nil
}
