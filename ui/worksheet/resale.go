package worksheet

import (
	"fmt"
	"reflect"
	"slices"
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
	"walkline/ui/widgets/plot"
	"walkline/ui/widgets/table"
	"walkline/valuation"
	"walkline/valuation/resale"
)

// price is the section of the resale price: beliefs, the chart, the comparables.
type price struct {
	page    *Page
	table   *table.Table
	chart   *plot.Scatter
	against *widgets.Select
	brought *widget.Check
	found   *widget.Label
	doubts  *fyne.Container
	said    []view.Doubt      // as doubts shows them
	rows    *view.ResaleTable // as the table shows them
	dots    []view.Dot        // as the chart shows them
	shape   *shape
	typing  *typing
	column  int // that the table is sorted by; -1: the order of the import
	falling bool
}

// What the chart shows.
const (
	byMileage = "price against mileage"
	byYear    = "price against model year"
	byChance  = "what it may bring"
)

func newResale(p *Page) *section {
	r := &price{page: p, column: -1, found: widget.NewLabel(""), chart: plot.NewScatter(),
		doubts: container.New(layout.NewCustomPaddedVBoxLayout(theme.Half))}
	r.found.Wrapping = fyne.TextWrapWord
	beliefs := form.New(p.edit)
	first := resaleBeliefs(beliefs)
	causes, season := form.New(p.edit), form.New(p.edit)
	form.Discounts(causes)
	form.Season(season)
	r.table = table.New(columns(view.ResaleColumns, true))
	r.table.Empty = "No comparables yet. Import a table, or enter low, likely and high above."
	r.table.OnTick = func(row int, counts bool) { r.tick(row, counts) }
	r.table.OnSelected = r.pointOut
	r.table.OnSort = func(column int, falling bool) { r.column, r.falling = column, falling; r.render() }
	r.chart.OnSelected = r.goToRow
	r.brought = widget.NewCheck("adjusted to this lot", func(bool) { r.renderChart() })
	r.brought.Checked = true
	r.shape = newShape()
	r.against = widgets.NewSelect([]string{byMileage, byYear, byChance}, func(string) { r.renderChart() })
	r.against.Selected = byMileage
	load := widgets.NewButton("Import comparables…", func() { p.do(desk.Want(desk.ImportComparables)) })
	load.Importance = widget.HighImportance
	r.typing = newTyping(r)
	add := widgets.NewButton("Type a row", func() { r.typing.open(newRow) })
	left := container.NewVBox(form.Heading("What it should sell for", "Finished, with its title as it will be sold."),
		container.NewHBox(load, add), r.found, beliefs.Rows, r.doubts,
		form.Heading("By the cause of the title's brand", "In place of the branded-title discount; the worst one leads. All three empty: "+
			"the starter value."), causes.Rows,
		form.Heading("Season", "How prices of the month lie against the year's mean."), season.Rows)
	chart := container.NewBorder(container.NewBorder(nil, nil, nil, r.brought, r.against), nil, nil, nil,
		container.NewStack(r.chart, r.shape.chart))
	top := widgets.NewPair(left, chart, 0.2)
	r.table.OnOpen, r.table.Menu = r.typing.open, r.typing.menu
	r.table.OnDelete = func(row int) { r.typing.drop(r.rows.Position(row)) }
	body := widgets.NewVSplit("worksheet.resale", top, form.Under(nil, r.table, r.typing.line.Row), 0.58)
	return &section{body: body, forms: []*form.Form{beliefs, causes, season}, show: func(p *Page) { r.render() }, first: first}
}

// resaleBeliefs adds the fields of what the buyer holds about the market and returns the first.
func resaleBeliefs(f *form.Form) fyne.Focusable {
	narrow := func(e *widgets.ThreeEntry) { e.SetRoom(60) }
	first := f.Three("My guess: low, likely, high", form.Amounts, func(c *valuation.Case) any { return &c.Resale.Guess })
	narrow(first)
	narrow(f.Three("Branded-title discount", form.Percents, func(c *valuation.Case) any { return &c.Resale.BrandDiscount }))
	narrow(f.Three("Sold price, % of asking", widgets.Spec{Kind: widgets.Percent, Least: widgets.Bound(0.01), Most: widgets.Bound(2)},
		func(c *valuation.Case) any { return &c.Resale.AskedToSold }))
	f.Choice("Title when sold", []string{"rebuilt", "clear", "salvage"}, func(c *valuation.Case) *string {
		if c.Resale.Subject.Brand == "" {
			c.Resale.Subject.Brand = "rebuilt"
		}
		return &c.Resale.Subject.Brand
	})
	form.Growing(f)
	form.Mileage(f)
	f.Choice("Upkeep when sold", resale.Upkeeps, upkeep)
	return first.Focus()
}

// upkeep is where the word for the finished vehicle lies; what an older file said as a number is put in words.
func upkeep(c *valuation.Case) *string {
	s := &c.Resale.Subject
	if s.Upkeep == "" {
		s.Upkeep = resale.Upkeeps[2]
		if s.Condition != nil {
			s.Upkeep, s.Condition = resale.UpkeepOf(*s.Condition), nil
		}
	}
	return &s.Upkeep
}

func (r *price) render() {
	r.rows = view.Comparables(r.page.open)
	if r.column >= 0 {
		r.rows.Sort(r.column, r.falling)
	}
	r.table.SetSource(r.rows.Len(), func(i int) table.Row {
		c := r.rows.Row(i)
		return table.Row{Cells: c.Cells, Ticked: c.Counts, Muted: !c.Counts}
	})
	said := strings.TrimSpace(view.ResaleWords(r.page.open) + "\n" + view.MovesMost(r.page.open))
	r.found.SetText(said)
	r.found.Hidden = said == "" // an empty line would push what is to be done first out of sight
	r.renderDoubts()
	r.renderChart()
	r.typing.render()
}

// renderDoubts shows each warning with what it means, and a way to the row that it speaks of.
func (r *price) renderDoubts() {
	doubts := view.ResaleDoubts(r.page.open)
	if reflect.DeepEqual(doubts, r.said) {
		return
	}
	r.said = doubts
	r.doubts.RemoveAll()
	for _, d := range doubts {
		r.doubts.Add(widgets.NewNote(widgets.Care, d.Text+" "+d.Meaning))
		if len(d.Rows) > 0 {
			r.doubts.Add(container.NewHBox(widgets.NewButton("Go to "+view.Count(len(d.Rows), "such row"), r.walk(d.Rows))))
		}
	}
}

// walk returns what goes to the next of some rows, by their positions in the case, each time it is called.
func (r *price) walk(rows []int) func() {
	next := 0
	return func() {
		at := r.rows.Shown(rows[next%len(rows)])
		next++
		if at < 0 {
			return
		}
		r.table.SelectRow(at)
		r.pointOut(at)
	}
}

func (r *price) renderChart() {
	chances := r.against.Selected == byChance
	show(r.shape.chart, chances)
	show(r.chart, !chances)
	show(r.brought, !chances)
	if chances {
		r.shape.render(r.page.open)
		return
	}
	s := view.ByMileage(r.page.open, r.brought.Checked)
	if r.against.Selected == byYear {
		s = view.ByYear(r.page.open, r.brought.Checked)
	}
	r.dots = s.Dots
	r.chart.SetData(scatterOf(s))
}

// pointOut marks a row's point in the chart.
func (r *price) pointOut(row int) {
	position := r.rows.Position(row)
	at := slices.IndexFunc(r.dots, func(d view.Dot) bool { return d.Row == position })
	r.chart.Select(at)
	r.typing.goTo(row)
}

// goToRow goes to the row of a point.
func (r *price) goToRow(point int) {
	r.table.SelectRow(r.rows.Shown(r.dots[point].Row))
}

// scatterOf turns a view's chart into the widget's.
func scatterOf(s view.Scatter) plot.ScatterData {
	d := plot.ScatterData{X: plot.Axis{Title: s.XLabel}, Y: plot.Axis{Title: s.YLabel}, Empty: "No comparables yet.", Words: s.DotWords}
	if s.Years {
		d.X.Format = func(x float64) string { return fmt.Sprintf("%.0f", x) }
	}
	for _, p := range s.Dots {
		d.Points = append(d.Points, plot.ScatterPoint{X: p.X, Y: p.Price, Weight: p.Weight, Used: p.Used, Branded: p.Branded})
	}
	for _, b := range s.Band {
		d.Band = append(d.Band, plot.BandPoint{X: b.X, Low: b.P10, Middle: b.P50, High: b.P90})
	}
	if s.Subject != nil && s.P50 > 0 {
		d.Subject = &plot.Subject{BandPoint: plot.BandPoint{X: *s.Subject, Low: s.P10, Middle: s.P50, High: s.P90}, Words: s.Words}
	}
	return d
}

// tick takes a comparable in or leaves it out.
func (r *price) tick(row int, counts bool) {
	row = r.rows.Position(row)
	words := "leave a comparable out"
	if counts {
		words = "count a comparable"
	}
	r.page.edit(words, func(c *valuation.Case) { c.Resale.Rows[row].Excluded = !counts })
}
