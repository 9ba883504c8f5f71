package worksheet

import (
	"strings"

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
	return l.ID + form.PartsShape(l.Parts)
}

func (f *lineForm) build(r view.RepairRow) {
	f.form = form.New(f.edit)
	id := r.Line.ID
	line := form.LineOf[valuation.Case]{
		Now:    func(c valuation.Case) repair.Line { return f.current(c, id) },
		At:     func(c *valuation.Case) *repair.Line { return f.own(c, id) },
		Quoted: func(c valuation.Case) string { return string(c.ValuedOn) },
	}
	f.body.Objects = []fyne.CanvasObject{form.LongHeading(r.Line.Job, r.Line.Why)}
	if r.Line.Caution != "" {
		f.body.Add(widgets.NewNote(widgets.Care, r.Line.Caution))
	}
	line.Words(f.form)
	line.Work(f.form)
	f.body.Add(f.form.Rows)
	form.PartsOf[valuation.Case]{Line: line, Rows: f.rows, Add: f.body.Add, Button: func(words string, change func(*valuation.Case)) {
		f.body.Add(container.NewHBox(widget.NewButton(words, func() { f.edit(strings.ToLower(words), change) })))
	}}.Build(r.Line.Parts)
	strike := widget.NewButton("Strike this line out", func() {
		f.edit("strike out "+r.Line.Job, func(c *valuation.Case) { f.own(c, id).Removed = true })
	})
	f.body.Add(container.NewHBox(strike))
	f.body.Refresh()
}

// rows adds a form below, written with the line's own.
func (f *lineForm) rows() *form.Form {
	rows := form.New(f.edit)
	f.form.Also(rows.Render)
	f.body.Add(rows.Rows)
	return rows
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
