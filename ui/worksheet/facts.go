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
	vehicle, sale, paper, state := form.New(form.Surveyed(p.edit)), form.New(p.edit), form.New(p.edit), form.New(p.edit)
	first := factsOfVehicle(vehicle)
	form.Vehicle(vehicle)
	factsOfSale(sale)
	factsOfPaper(paper)
	factsOfState(state)
	listed := form.NewListed(p.edit)
	body := container.NewVBox(
		form.Heading("Vehicle", "As the list and the door plate say. A VIN is checked as it is typed."), vehicle.Rows,
		form.Heading("Sale", ""), sale.Rows,
		form.Heading("Paper", "What the document is decides what may be done with the vehicle. Ask the agency where it will be registered."),
		paper.Rows,
		form.Heading("State", "How it stands in the yard."), state.Rows,
		form.Heading("What the list says", "Kept from the run list, or typed. It is the list's word: nothing is priced from it, and it marks "+
			"no damage."),
		listed.Rows,
	)
	return &section{body: container.NewVScroll(body), forms: []*form.Form{vehicle, sale, paper, state, listed}, first: first}
}

// factsOfVehicle adds the fields of the vehicle and returns the first.
func factsOfVehicle(f *form.Form) fyne.Focusable {
	year := widgets.Spec{Kind: widgets.Whole, Optional: true, Least: widgets.Bound(lot.FirstModelYear), Most: widgets.Bound(lot.LastModelYear)}
	first := f.Number("Model year", form.Ungrouped(year), func(c *valuation.Case) any { return &c.Lot.ModelYear })
	f.Text("Make", func(c *valuation.Case) *string { return &c.Lot.Make })
	f.Text("Model", func(c *valuation.Case) *string { return &c.Lot.Model })
	f.Text("Trim", func(c *valuation.Case) *string { return &c.Lot.Trim })
	f.Text("VIN", func(c *valuation.Case) *string { return &c.Lot.VIN })
	f.Number("Odometer", widgets.Spec{Kind: widgets.Whole, Optional: true, Least: widgets.Bound(0), Most: widgets.Bound(lot.MostMileage)},
		func(c *valuation.Case) any { return &c.Lot.Odometer })
	f.Choice("Odometer unit", lot.OdometerUnits, func(c *valuation.Case) *string { return &c.Lot.OdometerUnit })
	f.Choice("Odometer statement", lot.OdometerStatuses, func(c *valuation.Case) *string { return &c.Lot.OdometerStatus })
	return first.Focus()
}

func factsOfSale(f *form.Form) {
	f.Text("Lot number", func(c *valuation.Case) *string { return &c.Lot.Number })
	f.Text("Sale", func(c *valuation.Case) *string { return &c.Lot.Sale })
	f.Date("Sale day", func(c *valuation.Case) *lot.Date { return &c.Lot.SaleDate })
	f.Date("Valued on", func(c *valuation.Case) *lot.Date { return &c.ValuedOn })
}

func factsOfPaper(f *form.Form) {
	f.Choice("Title document", documents, func(c *valuation.Case) *string { return &c.Lot.Title.Document })
	f.Words("Brands on it", "Flood damage, Collision", func(c *valuation.Case) *[]string { return &c.Lot.Title.Brands })
	f.Text("Issued in", func(c *valuation.Case) *string { return &c.Lot.Title.IssuedIn })
	f.Text("Register in", func(c *valuation.Case) *string { return &c.Lot.Title.RegisterIn })
}

func factsOfState(f *form.Form) {
	f.Several("Loss", lot.Losses, func(c *valuation.Case) *[]string { return &c.Lot.Loss })
	f.Choice("Runs?", lot.Conditions, func(c *valuation.Case) *string { return &c.Lot.Condition })
	f.YesNo("Keys", func(c *valuation.Case) **bool { return &c.Lot.Keys })
	f.Several("Airbags deployed", lot.AirbagPositions, func(c *valuation.Case) *[]string { return &c.Lot.Airbags })
}

// section is one part of the worksheet.
type section struct {
	body  fyne.CanvasObject
	forms []*form.Form
	show  func(*Page)    // writes what no form holds; may be nil
	first fyne.Focusable // takes the keyboard when the section is gone to; may be nil
}
