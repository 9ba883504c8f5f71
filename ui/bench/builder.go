package bench

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/valuation/money"
)

// newBuilder returns the section of who rebuilds, as the file for the rebuilt inspection names them.
func newBuilder(p *Page) *section {
	f := form.NewOf(func(label string, change func(*desk.Shop)) { p.do(desk.EditShop(label, change)) },
		func(s desk.Shop) money.Currency { return view.NewPurse(s.Currency).Currency })
	f.Text("Name", func(s *desk.Shop) *string { return &s.Builder.Name })
	f.Text("Address", func(s *desk.Shop) *string { return &s.Builder.Address })
	f.Text("License", func(s *desk.Shop) *string { return &s.Builder.Licence })
	body := container.NewVBox(form.Heading("Who rebuilds",
		"Printed on the file for the rebuilt inspection. What is empty prints as not entered; whether a license is asked for, the agency says."),
		f.Rows)
	return &section{name: "Who rebuilds", body: container.NewVScroll(body), show: func(s desk.State) { f.Render(s.Shop) },
		first: func() fyne.Focusable { return f.First() }}
}
