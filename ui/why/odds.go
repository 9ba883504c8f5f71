package why

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/plot"
	"walkline/ui/widgets/table"
	"walkline/valuation"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
)

// odds is the section of what any bid brings.
type odds struct {
	do      func(desk.Action)
	entry   *widgets.NumberEntry
	doubt   *widgets.Words
	chart   *plot.Chances
	figures *fyne.Container
	rules   *table.Table

	open  desk.Open
	lines []plot.ChanceLine
	of    *desk.Valued // what the lines were read from
	at    view.Odds
}

func newOdds(do func(desk.Action)) section {
	o := &odds{do: do, doubt: widgets.NewCaption(""), chart: plot.NewChances(), figures: container.NewVBox()}
	o.entry = widgets.NewNumberEntry(spec(view.NewPurse("")), o.typed)
	o.entry.SetRoom(60)
	o.chart.OnPick = o.picked
	o.chart.OnStep = func(by int) { o.ask(view.Stepped(o.steps(), view.OddsAsked(o.open), by)) }
	o.chart.OnEnd = o.toEnd
	o.rules = table.New(ruleColumns())
	o.rules.Empty = "No house rule is on."
	lower := widgets.NewButton("One step down", func() { o.chart.OnStep(-1) })
	higher := widgets.NewButton("One step up", func() { o.chart.OnStep(+1) })
	limit := widgets.NewButton("Walk-away bid", func() { o.ask(0) })
	top := container.NewHBox(widgets.NewLine("At a bid of"), o.entry, lower, higher, limit, o.doubt)
	left := container.New(layout.NewCustomPaddedLayout(theme.Space, 0, theme.Wide, 0), o.figures)
	foot := container.New(&columns2{0.33}, left, o.rules)
	chart := container.New(form.LeastHeight{Height: chartHeight}, container.NewPadded(o.chart))
	body := container.NewVScroll(container.NewBorder(top, foot, nil, nil, chart)) // large text needs more than a small window has
	return section{name: "Odds at any bid", body: body, first: o.chart, render: o.render, headline: o.headline}
}

// chartHeight is the least height at which no words of the chart lie over others, at text scale 1.
const chartHeight = 190

// nothing is the least that can be asked for, one pointer so that a spec equals itself.
var nothing = widgets.Bound(0)

func spec(p view.Purse) widgets.Spec {
	return widgets.Spec{Kind: widgets.Money, Unit: p.Code, Digits: p.Digits, Least: nothing}
}

func ruleColumns() []table.Column {
	var out []table.Column
	for i, c := range view.RuleColumns {
		out = append(out, table.Column{Title: c.Title, Width: c.Width, Right: c.Figures, Meaning: view.Help(c.Title), Grows: i == 0})
	}
	return out
}

func (o *odds) steps() []invoice.Step { return o.open.Valued.Of.Buying.BidSteps }

// ask asks for the odds at a bid, where that is another than is shown.
func (o *odds) ask(bid money.Amount) {
	if o.open.Valued != nil && bid != o.open.Asked {
		o.do(desk.AskOdds(bid))
	}
}

func (o *odds) typed(n widgets.Number) {
	if n.Known && o.open.Valued != nil {
		o.ask(money.Amount(n.Minor(view.NewPurse(o.open.Valued.Answer.Currency).Digits)))
	}
}

// picked asks for the legal bid at or below a place on the axis.
func (o *odds) picked(bid float64) {
	if o.open.Valued != nil {
		at, _ := invoice.Stand(o.steps(), view.NewPurse(o.open.Valued.Answer.Currency).FromMajor(bid))
		o.ask(max(at, o.steps()[0].Step))
	}
}

// toEnd goes to the lowest legal bid or to the walk-away bid.
func (o *odds) toEnd(way int) {
	if way < 0 && o.open.Valued != nil {
		o.ask(o.steps()[0].Step)
		return
	}
	o.ask(0)
}

func (o *odds) render(open desk.Open) {
	o.open = open
	at, known := view.NewOdds(open, view.OddsAsked(open))
	if !known {
		o.chart.SetData(plot.ChancesData{Empty: "No odds are known yet."})
		return
	}
	p := view.NewPurse(open.Valued.Answer.Currency)
	if o.of != open.Valued {
		o.of, o.lines = open.Valued, chanceLines(p, view.Along(open.Valued))
	}
	o.at = at
	o.entry.SetSpec(spec(p))
	o.entry.SetValue(widgets.Exactly(p.Decimal(at.Bid)))
	o.doubt.SetText(at.Doubt)
	o.doubt.SetWarning(at.Doubt != "")
	o.chart.SetData(o.data(at, p))
	o.renderFoot(at)
}

// headline says whether the bid keeps the house rules.
func (o *odds) headline() (words string, warns bool) {
	return o.at.Verdict, !o.at.Holds
}

// chanceLines turns the chances along the bids into lines: of a loss, and of winning where somebody guessed the hammer price.
func chanceLines(p view.Purse, along []valuation.Chances) []plot.ChanceLine {
	loss, win := plot.ChanceLine{Name: "loss", Warns: true}, plot.ChanceLine{Name: "win"}
	for _, a := range along {
		loss.Points = append(loss.Points, plot.CurvePoint{X: p.Major(a.Bid), Y: a.Loss})
		if a.Win != nil {
			win.Points = append(win.Points, plot.CurvePoint{X: p.Major(a.Bid), Y: *a.Win})
		}
	}
	if len(win.Points) == 0 {
		return []plot.ChanceLine{loss}
	}
	return []plot.ChanceLine{loss, win}
}

// data returns what the chart shows of a bid.
func (o *odds) data(at view.Odds, p view.Purse) plot.ChancesData {
	d := plot.ChancesData{X: plot.Axis{Title: "bid, " + p.Code, Format: p.Whole}, Lines: o.lines, At: p.Major(at.Bid), Name: at.Name,
		Steps: view.Around(p, o.steps(), at.Bid), Words: at.Words, Empty: "No odds are known yet."}
	for _, l := range at.Limits {
		d.Posts = append(d.Posts, plot.Post{At: p.Major(l.Bid), Name: l.Name, Strong: l.Strong})
	}
	return d
}

// renderFoot writes the figures and the house rules at a bid.
func (o *odds) renderFoot(at view.Odds) {
	o.figures.Objects = nil
	for _, l := range at.Figures {
		o.figures.Add(container.NewBorder(nil, nil, widgets.NewLine(l[0]), widgets.NewLine(l[1])))
	}
	o.figures.Refresh()
	rows := make([]table.Row, len(at.Rules))
	for i, r := range at.Rules {
		rows[i] = table.Row{Cells: r.Cells, Strong: !r.Holds}
	}
	o.rules.SetRows(rows)
}
