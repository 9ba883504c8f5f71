package bench

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/widgets"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// units is the section of the currency and the unit of distance.
type units struct {
	page     *Page
	currency *widgets.Words
	change   *widgets.Suggest
	distance *widgets.Select
	decimals *widgets.Select
	muted    bool
}

// decimalMarks are the marks before decimals, decimalNames how a number looks with each.
var decimalMarks, decimalNames = []string{".", ","}, []string{"1,234.50", "1.234,50"}

func newUnits(p *Page) *section {
	u := &units{page: p, currency: widgets.NewLine("")}
	u.change = widgets.NewSuggest("type another code", func(c widgets.Choice) { p.do(desk.SetCurrency(c.ID)) })
	var choices []widgets.Choice
	for _, code := range money.Codes() {
		choices = append(choices, widgets.Choice{ID: code, Name: code})
	}
	u.change.SetChoices(choices)
	u.distance = widgets.NewSelect(lot.OdometerUnits, func(unit string) {
		if !u.muted {
			p.do(desk.EditShop("odometer unit", func(s *desk.Shop) { s.OdometerUnit = unit }))
		}
	})
	u.decimals = widgets.NewSelect(decimalNames, func(string) {
		if mark := decimalMarks[u.decimals.SelectedIndex()]; !u.muted {
			p.do(desk.EditShop("decimal mark", func(s *desk.Shop) { s.DecimalMark = mark }))
		}
	})
	rows := container.New(layout.NewFormLayout(),
		form.Label("Currency"), container.NewBorder(nil, nil, u.currency, nil, u.change),
		form.Label("Odometers of new lots in"), form.Roomy(u.distance, lot.OdometerUnits),
		form.Label("Fields write numbers as"), form.Roomy(u.decimals, decimalNames))
	body := container.NewVBox(form.Heading("Currency and units",
		"Of the figures on the Bench and of new lots (ISO 4217). Another currency keeps the figures as they are written: nothing is "+
			"converted. Lots that are there keep theirs."), rows)
	return &section{name: "Currency and units", body: container.NewVScroll(body), show: u.show,
		first: func() fyne.Focusable { return u.change }}
}

func (u *units) show(s desk.State) {
	u.muted = true
	u.currency.SetText(s.Shop.Currency)
	u.distance.SetSelected(s.Shop.OdometerUnit)
	u.decimals.SetSelectedIndex(max(slices.Index(decimalMarks, s.Shop.DecimalMark), 0))
	u.muted = false
}
