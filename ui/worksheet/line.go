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
	line := form.LineOf[valuation.Case]{
		Now:    func(c valuation.Case) repair.Line { return f.current(c, id) },
		At:     func(c *valuation.Case) *repair.Line { return f.own(c, id) },
		Quoted: func(c valuation.Case) string { return string(c.ValuedOn) },
	}
	f.body.Objects = []fyne.CanvasObject{form.Heading(r.Line.Job, r.Line.Why)}
	if r.Line.Caution != "" {
		f.body.Add(widgets.NewNote(widgets.Care, r.Line.Caution))
	}
	line.Words(f.form)
	line.Work(f.form)
	f.body.Add(f.form.Rows)
	for i, p := range r.Line.Parts {
		f.body.Add(form.Label("Part: " + p.Name + ". The cheapest that can be had is taken."))
		rows := form.New(f.edit)
		for k, o := range p.Options {
			line.Option(rows, i, k, o.Source)
		}
		f.form.Also(rows.Render)
		f.body.Add(rows.Rows)
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
