package worksheet

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation"
	"walkline/valuation/money"
	"walkline/valuation/repair"
)

// lineForm edits one repair line.
type lineForm struct {
	body  *fyne.Container
	edit  form.Edit
	own   func(c *valuation.Case, id string) *repair.Line // the line among the user's, put there first where need be
	form  *form.Of[repair.Line]
	shape string // of the line that the fields were made for
	line  repair.Line
	do    func(desk.Action)
	parts *form.Form     // whether its parts come off the donor vehicle; nil: there is none
	donor *form.Form     // of the donor vehicle, while its line is shown
	now   valuation.Case // that the line is of
}

func newLineForm(e form.Edit, do func(desk.Action), own func(*valuation.Case, string) *repair.Line) *lineForm {
	f := &lineForm{edit: e, do: do, own: own, body: container.NewVBox()}
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
	f.line, f.now = r.Line, c
	if s := lineShape(r.Line) + map[bool]string{true: " donor"}[c.Repair.Donor != nil]; s != f.shape {
		f.shape, f.form, f.parts, f.donor = s, nil, nil, nil
		if r.Line.ID == repair.DonorLine {
			f.buildDonor(r.Line)
		} else {
			f.build(r)
		}
	}
	switch {
	case f.donor != nil:
		f.donor.Render(c)
		return
	case f.parts != nil:
		f.parts.Render(c)
	}
	f.form.Render(f.current(c, r.Line.ID))
}

// buildDonor lays out the donor vehicle that the lot is planned with.
func (f *lineForm) buildDonor(l repair.Line) {
	f.donor = form.New(f.edit)
	form.Donor(f.donor)
	f.body.Objects = []fyne.CanvasObject{form.LongHeading("Donor vehicle", l.Why), widgets.NewNote(widgets.Care, l.Caution), f.donor.Rows,
		container.NewHBox(widget.NewButton("Propose what its rest brings", func() { f.do(desk.PlanDonor()) })),
		container.NewHBox(widget.NewButton("Leave the donor vehicle out", func() { f.do(desk.LeaveDonor()) }))}
	f.body.Refresh()
}

// first returns the first field of what is shown, nil where nothing is.
func (f *lineForm) first() fyne.Focusable {
	switch {
	case f.donor != nil:
		return f.donor.First()
	case f.form != nil:
		return f.form.First()
	}
	return nil
}

// lineShape names the fields that a line needs.
func lineShape(l repair.Line) string {
	return l.ID + form.PartsShape(l.Parts)
}

func (f *lineForm) build(r view.RepairRow) {
	id := r.Line.ID
	edit := func(label string, change func(*repair.Line)) {
		f.edit(label, func(c *valuation.Case) { change(f.own(c, id)) })
	}
	f.form = form.NewOf(edit, func(repair.Line) money.Currency { return form.CurrencyOf(f.now) })
	line := form.Line{Quoted: func() string { return string(f.now.ValuedOn) }}
	f.body.Objects = []fyne.CanvasObject{form.LongHeading(r.Line.Job, r.Line.Why)}
	if r.Line.Caution != "" {
		f.body.Add(widgets.NewNote(widgets.Care, r.Line.Caution))
	}
	line.Words(f.form)
	line.Work(f.form)
	f.body.Add(f.form.Rows)
	if f.now.Repair.Donor != nil && len(r.Line.Parts) > 0 {
		f.parts = form.New(f.edit)
		form.FromDonor(f.parts, id)
		f.body.Add(f.parts.Rows)
	}
	form.Parts{Line: line, Rows: f.rows, Add: f.body.Add, Button: func(words string, change func(*repair.Line)) {
		f.body.Add(container.NewHBox(widget.NewButton(words, func() { edit(strings.ToLower(words), change) })))
	}}.Build(r.Line.Parts)
	strike := widget.NewButton("Remove this line", func() {
		f.edit("strike out "+r.Line.Job, func(c *valuation.Case) { f.own(c, id).Removed = true })
	})
	f.body.Add(container.NewHBox(strike))
	f.body.Refresh()
}

// rows adds a form below, written with the line's own.
func (f *lineForm) rows() *form.Of[repair.Line] {
	below := form.Apart(f.form)
	f.body.Add(below.Rows)
	return below
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
