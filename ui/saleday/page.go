package saleday

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/table"
	"walkline/valuation/money"
)

// Page is the page of the sale plan.
type Page struct {
	days  *widgets.Select
	form  *form.Of[desk.SaleDay]
	in    *coming
	table *table.Table
	words *widget.Label
	body  *container.Scroll
	state desk.State
	muted bool // the choice of the day is being written
}

// Bounds of what there is, as the solver has them.
var (
	cash  = widgets.Spec{Kind: widgets.Money, Least: widgets.Bound(0)}
	hours = widgets.Spec{Kind: widgets.Plain, Unit: "h", Digits: 1, Least: widgets.Bound(0), Most: widgets.Bound(1e5)}
	bays  = widgets.Spec{Kind: widgets.Plain, Least: widgets.Bound(0), Most: widgets.Bound(1000)}
)

// planHeight is what the plan keeps for itself, at text scale 1: its head and a few lots.
const planHeight = 200

// New returns the page, not yet showing a state.
func New(do func(desk.Action)) *Page {
	p := &Page{words: widget.NewLabel(""), in: newComing(do)}
	p.words.Wrapping = fyne.TextWrapWord
	p.days = widgets.NewSelect(nil, func(string) {
		if at := p.days.SelectedIndex(); !p.muted && at >= 0 {
			do(desk.ShowDay(p.state.Day.Days[at]))
		}
	})
	edit := func(label string, change func(*desk.SaleDay)) { do(desk.EditDay(label, change)) }
	p.form = form.NewOf(edit, currencyOf)
	p.form.Row("Planned from", form.Roomy(p.days, []string{"Nov 27, 2026"}), func(desk.SaleDay) {})
	p.form.Number("Cash to spend", cash, func(d *desk.SaleDay) any { return &d.Cash })
	p.form.Number("Your hours to spend", hours, func(d *desk.SaleDay) any { return &d.Hours })
	p.form.Number("Bays in all", bays, func(d *desk.SaleDay) any { return &d.Bays })
	p.form.Tick("First guesses", "plan lots nobody looked at", func(d *desk.SaleDay) *bool { return &d.Guesses })
	var columns []table.Column
	for _, c := range view.DayColumns {
		columns = append(columns, table.Column{Title: c.Title, Width: c.Width, Right: c.Figures, Meaning: view.Help(c.Title)})
	}
	p.table = table.New(columns)
	p.table.Empty = "No lot in the plan yet."
	p.table.OnOpen = func(row int) {
		if plan := p.state.Planned(); plan != nil && row < len(plan.Lots) {
			do(desk.OpenLot(plan.Lots[row].ID))
		}
	}
	top := container.NewVBox(container.NewBorder(nil, nil, p.form.Rows, nil, p.words),
		p.later(do), p.in.body)
	p.body = container.NewVScroll(container.New(layout.NewCustomPaddedLayout(theme.Space, theme.Space, theme.Wide, theme.Wide),
		form.Under(top, container.New(form.LeastHeight{Height: planHeight}, p.table), nil)))
	return p
}

// later returns the fields of what is kept for the next sale, in a row.
func (p *Page) later(do func(desk.Action)) fyne.CanvasObject {
	row, line := form.Apart(p.form), container.NewHBox()
	row.Number("Worth of a free bay", cash, func(d *desk.SaleDay) any { return &d.Later.Bay }).SetRoom(0)
	row.Number("Of a free hour", cash, func(d *desk.SaleDay) any { return &d.Later.Hour }).SetRoom(0)
	row.Number("Of 1,000 in cash", cash, func(d *desk.SaleDay) any { return &d.Later.Thousand }).SetRoom(0)
	for _, o := range row.Rows.Objects {
		line.Add(o)
	}
	line.Add(widgets.NewButton("From the past year", func() { do(desk.TakePastYear()) }))
	return line
}

func currencyOf(d desk.SaleDay) money.Currency { return view.NewPurse(d.Currency).Currency }

// Object returns the page to be laid out.
func (p *Page) Object() fyne.CanvasObject { return p.body }

// First returns what takes the keyboard.
func (p *Page) First() fyne.Focusable { return p.form.First() }

// Render writes the plan of the day into the page.
func (p *Page) Render(s desk.State) {
	p.state, p.muted = s, true
	p.days.Options = nil
	for _, day := range s.Day.Days {
		p.days.Options = append(p.days.Options, view.Day(day))
	}
	p.days.SetSelected(view.Day(s.Day.Date))
	p.muted = false
	has := desk.SaleDay{Currency: s.Shop.Currency}
	if s.Day.Has != nil {
		has = *s.Day.Has
	}
	p.form.Render(has)
	p.in.render(has)
	plan := s.Planned()
	var rows []table.Row
	if plan != nil {
		for _, cells := range view.DayRows(plan) {
			rows = append(rows, table.Row{Cells: cells})
		}
	}
	p.table.SetRows(rows)
	p.words.SetText(says(s, plan))
}

// says is what stands beside the fields.
func says(s desk.State, plan *desk.DayPlan) string {
	switch {
	case !s.Day.Date.Known():
		return "No lot has a sale day yet. Enter it under Facts, or import a run list."
	case s.Day.Has == nil:
		return "Enter the cash that you can spend from this day on, your hours and your bays."
	case s.Day.Has.Currency != s.Shop.Currency:
		return fmt.Sprintf("This day's money was entered in %s, the Bench is in %s now. Nothing converts it. Clear it to enter it in %s.",
			s.Day.Has.Currency, s.Shop.Currency, s.Shop.Currency) + "\n" + planWords(s, plan)
	}
	return planWords(s, plan)
}

// planWords says what came of the plan.
func planWords(s desk.State, plan *desk.DayPlan) string {
	switch {
	case plan != nil:
		return strings.Join(view.DayWords(plan), "\n")
	case s.Day.Problem != "":
		return "No plan. " + s.Day.Problem
	}
	return "Being planned…"
}
