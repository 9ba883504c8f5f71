package worksheet

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/form"
)

// newFacts returns the section for what the sale's list and the papers say.
func newFacts(p *Page) *section {
	vehicle, sale, paper, state := form.New(form.Surveyed(p.edit)), form.New(p.edit), form.New(p.edit), form.New(p.edit)
	first := form.Identity(vehicle)
	form.Vehicle(vehicle)
	form.Sale(sale)
	form.Paper(paper)
	form.Condition(state)
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

// section is one part of the worksheet.
type section struct {
	body  fyne.CanvasObject
	forms []*form.Form
	show  func(*Page)    // writes what no form holds; may be nil
	first fyne.Focusable // takes the keyboard when the section is gone to; may be nil
}
