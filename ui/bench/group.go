package bench

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation"
)

// group is one group of the shop's terms: its fields under a heading that says whose values they are.
type group struct {
	page *Page
	name string // among the desk's groups of terms
	form *form.Form
	mark *whose
	body fyne.CanvasObject
}

// newGroup returns a group whose fields are added by fill.
func newGroup(p *Page, name, title, help string, fill func(*form.Form)) *group {
	g := &group{page: p, name: name, form: form.New(p.edit)}
	fill(g.form)
	g.mark = newWhose("Put the starter values back", func() {
		p.do(desk.EditShop("starter values: "+name, func(s *desk.Shop) { s.PutBack(name, p.state.StarterShop) }))
	})
	g.body = container.NewVBox(form.Heading(title, help), g.mark.body, g.form.Rows)
	return g
}

func (g *group) show(s desk.State) {
	g.form.Render(s.Shop.Onto(valuation.Defaults()))
	g.mark.set(view.Yours(s, g.name))
}

// whose says whether values are the starter's or the user's, and offers the starter's again.
type whose struct {
	body *fyne.Container
	says *widget.Label
	back *widgets.Button
}

func newWhose(words string, putBack func()) *whose {
	w := &whose{says: widget.NewLabel(""), back: widgets.NewButton(words, putBack)}
	w.says.Wrapping = fyne.TextWrapWord
	w.back.Importance = widget.LowImportance
	w.body = container.NewVBox(w.says, container.NewHBox(w.back))
	return w
}

// set says whose the values are.
func (w *whose) set(yours bool) {
	w.says.SetText(view.Whose(yours))
	w.back.Hidden = !yours
	w.body.Refresh()
}

// newRules returns the section of the house rules.
func newRules(p *Page) *section {
	rules := newGroup(p, desk.HouseRules, "House rules",
		"The walk-away bid is the largest legal bid at which all of them hold. Leave a field empty to turn its rule off.", form.Rules)
	rivals := newGroup(p, desk.OtherBids, "Who else bids", "Whoever wins has probably overvalued it; with more bidders, more so.",
		form.Rivals)
	season := newGroup(p, desk.OfSeason, "Season",
		"How prices of the month lie against the year's mean: 1.03 is 3 % above it. All 1: no season.",
		form.Season)
	return groups("House rules", rules, rivals, season)
}

// newLabour returns the section of labour, time and selling.
func newLabour(p *Page) *section {
	return groups("Labor and time",
		newGroup(p, desk.OwnLabour, "My labor",
			"An hour of yours is a cost at its rate, so that the profit is what is left after paying yourself.",
			form.Labour),
		newGroup(p, desk.OwnTime, "Time", "Holding is space, insurance and the like; capital cost is a year's interest on the money out.",
			form.Time),
		newGroup(p, desk.Selling, "Selling", "", form.Selling))
}

// groups returns a section of groups one under the other.
func groups(name string, all ...*group) *section {
	body := container.NewVBox(form.Small("New lots begin with these. Lots that are there keep theirs; each says under Costs where it " +
		"differs."))
	for _, g := range all {
		body.Add(g.body)
	}
	return &section{name: name, body: container.NewVScroll(body), show: func(s desk.State) {
		for _, g := range all {
			g.show(s)
		}
	}, first: all[0].form.First}
}
