package worksheet

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// lineForm edits one repair line.
type lineForm struct {
	body  *fyne.Container
	edit  form.Edit
	own   func(c *valuation.Case, id string) *repair.Line // the line among the user's, put there first where need be
	form  *form.Form
	shape string // of the line that the fields were made for
	line  repair.Line
}

func newLineForm(e form.Edit, own func(*valuation.Case, string) *repair.Line) *lineForm {
	f := &lineForm{edit: e, own: own, body: container.NewVBox()}
	f.clear()
	return f
}

// clear shows that no line is selected.
func (f *lineForm) clear() {
	f.shape = ""
	f.body.Objects = []fyne.CanvasObject{form.Small("Select a line to see why it is there, and to change its hours, parts and prices.")}
	f.body.Refresh()
}

func (f *lineForm) render(c valuation.Case, r view.RepairRow) {
	f.line = r.Line
	if s := lineShape(r.Line); s != f.shape {
		f.shape = s
		f.build(r)
	}
	f.form.Render(c)
}

// lineShape names the fields that a line needs.
func lineShape(l repair.Line) string {
	s := l.ID
	for _, p := range l.Parts {
		s += fmt.Sprint("|", p.Name, len(p.Options), p.Fallback != nil)
	}
	return s
}

func (f *lineForm) build(r view.RepairRow) {
	f.form = form.New(f.edit)
	id := r.Line.ID
	f.body.Objects = []fyne.CanvasObject{form.Heading(r.Line.Job, r.Line.Why)}
	if r.Line.Caution != "" {
		f.body.Add(widgets.NewNote(widgets.Care, r.Line.Caution))
	}
	f.words(id)
	f.work(id)
	f.body.Add(f.form.Rows)
	for i := range r.Line.Parts {
		f.part(id, i, r.Line.Parts[i])
	}
	strike := widget.NewButton("Strike this line out", func() {
		f.edit("strike out "+r.Line.Job, func(c *valuation.Case) { f.own(c, id).Removed = true })
	})
	f.body.Add(container.NewHBox(strike))
	f.body.Refresh()
}

// current returns the line as it is shown, from the user's lines where it stands there.
func (f *lineForm) current(c valuation.Case, id string) repair.Line {
	for _, l := range c.Repair.Lines {
		if l.ID == id {
			return l
		}
	}
	return f.line
}

func (f *lineForm) words(id string) {
	f.form.Text("Work", func(c valuation.Case) string { return f.current(c, id).Job }, func(c *valuation.Case, s string) { f.own(c, id).Job = s })
	f.form.Choice("Area", lot.Areas, func(c valuation.Case) string { return f.current(c, id).Area }, func(c *valuation.Case, s string) { f.own(c, id).Area = s })
	f.form.Number("Chance needed", form.Percents, func(c valuation.Case) widgets.Number { return widgets.Known(repair.Or(f.current(c, id).Chance, 1)) },
		func(c *valuation.Case, n widgets.Number) { x := n.Float(); f.own(c, id).Chance = &x })
}

// work adds hours by trade, materials and work bought in.
func (f *lineForm) work(id string) {
	hours := widgets.Spec{Unit: "h", Least: widgets.Bound(0)}
	for _, trade := range lot.Trades {
		f.narrow(f.form.Three(form.Sentence(trade), hours, func(c valuation.Case) prob.Three { return f.current(c, id).Hours[trade] },
			func(c *valuation.Case, t prob.Three) { setHours(f.own(c, id), trade, t) }))
	}
	f.narrow(f.form.Three("Materials", form.Amounts, func(c valuation.Case) prob.Three { return f.current(c, id).Materials },
		func(c *valuation.Case, t prob.Three) { f.own(c, id).Materials = t }))
	f.narrow(f.form.Three("Bought-in work", form.Amounts, func(c valuation.Case) prob.Three { return f.current(c, id).Outside },
		func(c *valuation.Case, t prob.Three) { f.own(c, id).Outside = t }))
}

// narrow fits a three-point field into the side of the table.
func (f *lineForm) narrow(e *widgets.ThreeEntry) {
	e.SetFigures(5)
	e.SetRoom(0)
}

func setHours(l *repair.Line, trade string, t prob.Three) {
	if l.Hours == nil {
		l.Hours = map[string]prob.Three{}
	}
	l.Hours[trade] = t
	if t.Zero() {
		delete(l.Hours, trade)
	}
}

// part adds the options of one part.
func (f *lineForm) part(id string, i int, p repair.Part) {
	f.body.Add(form.Label("Part: " + p.Name + ". The cheapest that can be had is taken."))
	rows := form.New(f.edit)
	option := func(c valuation.Case, k int) repair.Option {
		if parts := f.current(c, id).Parts; i < len(parts) && k < len(parts[i].Options) {
			return parts[i].Options[k]
		}
		return repair.Option{}
	}
	for k, o := range p.Options {
		at := func(c *valuation.Case) *repair.Option { return &f.own(c, id).Parts[i].Options[k] }
		f.narrow(rows.Three(form.Sentence(view.SourceWords(o.Source)), form.Amounts, func(c valuation.Case) prob.Three { return option(c, k).Price },
			func(c *valuation.Case, t prob.Three) { at(c).Price = t; at(c).Quoted = string(c.ValuedOn) }))
		e := rows.Number("can be had", form.Percents, func(c valuation.Case) widgets.Number { return widgets.Known(repair.Or(option(c, k).Chance, 1)) },
			func(c *valuation.Case, n widgets.Number) { x := n.Float(); at(c).Chance = &x })
		e.SetRoom(0)
		f.narrow(rows.Three("days to come", form.Days, func(c valuation.Case) prob.Three { return option(c, k).LeadDays },
			func(c *valuation.Case, t prob.Three) { at(c).LeadDays = t }))
	}
	f.form.Also(rows.Render)
	f.body.Add(rows.Rows)
}
