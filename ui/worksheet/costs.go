package worksheet

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
)

// newCosts returns the section of what the sale charges, the house rules, time, selling and labour: all of them the
// Bench's until they are changed for this lot.
func newCosts(p *Page) *section {
	rules, home, weeks, selling, labour, rivals, exchange := form.New(p.edit), form.New(p.edit), form.New(p.edit), form.New(p.edit),
		form.New(p.edit), form.New(p.edit), form.New(p.edit)
	stop, stands, parts := form.New(p.edit), form.New(p.edit), form.New(p.edit)
	form.Stopping(stop)
	form.Standing(stands)
	form.Parting(parts)
	form.Rules(rules)
	form.Home(home)
	form.Time(weeks)
	form.Selling(selling)
	form.Labour(labour)
	form.Rivals(rivals)
	form.Exchange(exchange)
	restricted := widgets.NewCheck("The law here lets me sell airbags and the like", nil)
	propose := widgets.NewButton("Propose starter values", func() { p.do(desk.ProposeWays(restricted.Checked)) })
	proposal := widget.NewLabel("")
	proposal.Wrapping = fyne.TextWrapWord
	t := form.NewTerms(p.edit, "")
	says := widget.NewLabel("")
	says.Wrapping = fyne.TextWrapWord
	take := widgets.NewButton("Take the Bench's terms", func() { p.do(desk.TakeTerms()) })
	keep := widgets.NewButton("", func() { p.do(desk.KeepTerms()) })
	whose := container.NewVBox(says, container.NewHBox(take, keep))
	left := container.NewVBox(
		form.Heading("House rules", "The walk-away bid is the largest legal bid at which all of them hold. Leave a field empty to turn its "+
			"rule off."), rules.Rows,
		form.Heading("Who else bids", "Whoever wins has probably overvalued it; with more bidders, more so."), rivals.Rows,
		form.Heading("Ways out", "Nobody must finish a lot. Where money is given for a way, it is a plan with a bid of its own, and what "+
			"stopping after the strip-down leads to. All three empty: not a way."),
		container.NewHBox(propose), restricted,
		form.Small("Used airbags, belts and catalytic converters: what may be sold, and how, the agency says."), proposal, stop.Rows,
		form.Heading("Sell it on as it stands", "What it brings after paying to sell it."), stands.Rows,
		form.Heading("Sell it for parts", "What its parts and the rest bring, after paying to sell them. Taking a vehicle apart for sale may "+
			"need a license: ask the agency."), parts.Rows,
		form.Heading("Bringing it home", ""), home.Rows,
		form.Heading("Time", "Holding is space, insurance and the like; capital cost is a year's interest on the money out."), weeks.Rows,
		form.Heading("Selling", ""), selling.Rows,
		form.Heading("My labor", "An hour of yours is a cost at its rate, so that the profit is what is left after paying yourself."),
		labour.Rows,
		form.Heading("Catalogue", "Its figures are in USD. In a lot of another currency, enter what one USD is in it; without that the lot "+
			"gets no bid."), exchange.Rows,
	)
	body := container.NewVScroll(container.NewVBox(whose, t.Body, left))
	return &section{body: body, forms: []*form.Form{rules, home, weeks, selling, labour, rivals, exchange, stop, stands, parts},
		show: func(p *Page) {
			says.SetText(view.TermsWords(p.open))
			take.Hidden = len(p.open.Differs) == 0
			words := view.KeepTermsWords(p.open)
			keep.Hidden = words == ""
			keep.SetText(words)
			whose.Refresh()
			proposal.SetText(view.ProposalWords(p.open.Case))
			t.Render(p.open.Case)
		}}
}
