package worksheet

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/rail"
	"walkline/valuation"
	"walkline/valuation/money"
	"walkline/valuation/repair"
)

// lineForm edits one repair line: its name and what is done with it stay in sight, and one of three groups of fields is shown under them.
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

	groups [len(lineGroups)]lineGroup
	rail   *rail.Rail
}

// lineGroup is one of the groups of fields.
type lineGroup struct {
	form *form.Of[repair.Line]
	body *fyne.Container
}

var lineGroups = [...]string{"Work", "Hours", "Parts"}

const (
	groupWork = iota
	groupHours
	groupParts
)

func newLineForm(e form.Edit, do func(desk.Action), own func(*valuation.Case, string) *repair.Line) *lineForm {
	f := &lineForm{edit: e, do: do, own: own, body: container.NewStack()}
	f.clear()
	return f
}

// clear shows that no line is selected.
func (f *lineForm) clear() {
	f.shape, f.form = "", nil
	f.body.Objects = []fyne.CanvasObject{container.NewVScroll(form.Small(
		"Select a line to see why it is there, and to change its hours, parts and prices. " +
			"Lines marked starter hold starter values, from memory. Change one and it is yours."))}
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
	f.body.Objects = []fyne.CanvasObject{container.NewVScroll(container.NewVBox(form.LongHeading("Donor vehicle", l.Why),
		widgets.NewNote(widgets.Care, l.Caution), f.donor.Rows,
		container.NewHBox(widgets.NewButton("Propose what its rest brings", func() { f.do(desk.PlanDonor()) })),
		container.NewHBox(widgets.NewButton("Leave the donor vehicle out", func() { f.do(desk.LeaveDonor()) }))))}
	f.body.Refresh()
}

// first returns the first field of what is shown, nil where nothing is.
func (f *lineForm) first() fyne.Focusable {
	switch {
	case f.donor != nil:
		return f.donor.First()
	case f.form != nil:
		return f.groups[f.rail.Current()].form.First()
	}
	return nil
}

// lineShape names the fields that a line needs.
func lineShape(l repair.Line) string {
	return l.ID + form.PartsShape(l.Parts)
}

// change hands an edit of the line on.
func (f *lineForm) change(id string) form.EditOf[repair.Line] {
	return func(label string, change func(*repair.Line)) {
		f.edit(label, func(c *valuation.Case) { change(f.own(c, id)) })
	}
}

func (f *lineForm) build(r view.RepairRow) {
	id := r.Line.ID
	f.form = form.NewOf(f.change(id), func(repair.Line) money.Currency { return form.CurrencyOf(f.now) })
	shown := groupWork
	if f.rail != nil {
		shown = f.rail.Current() // of the line before
	}
	var sections []rail.Section
	for i, name := range lineGroups {
		f.groups[i] = lineGroup{form.Apart(f.form).Stacks(), container.NewVBox()}
		f.groups[i].body.Add(f.groups[i].form.Rows)
		sections = append(sections, rail.Section{Name: name, Body: container.NewScroll(f.groups[i].body)})
	}
	f.fill(r)
	f.rail = rail.Across(sections, func(int) {})
	f.rail.Go(shown)
	remove := widgets.NewButton("Remove this line", func() { f.remove(r.Line) })
	head := container.NewVBox(form.LongHeading(r.Line.Job, ""), container.NewHBox(remove), f.rail.Buttons)
	f.body.Objects = []fyne.CanvasObject{form.Under(head, f.rail.Room, nil)}
	f.body.Refresh()
}

// remove takes a line out; it can be restored.
func (f *lineForm) remove(l repair.Line) {
	f.edit("remove "+l.Job, func(c *valuation.Case) { f.own(c, l.ID).Removed = true })
}

// fill lays the fields of a line out in their groups.
func (f *lineForm) fill(r view.RepairRow) {
	line := form.Line{Quoted: func() string { return string(f.now.ValuedOn) }}
	work, hours, parts := f.groups[groupWork], f.groups[groupHours], f.groups[groupParts]
	line.Words(work.form)
	work.body.Add(form.Small(r.Line.Why))
	if r.Line.Caution != "" {
		work.body.Add(widgets.NewNote(widgets.Care, r.Line.Caution))
	}
	line.Work(hours.form)
	if f.now.Repair.Donor != nil && len(r.Line.Parts) > 0 {
		f.parts = form.New(f.edit)
		form.FromDonor(f.parts, r.Line.ID)
		parts.body.Add(f.parts.Rows)
	}
	form.Parts{Line: line, Add: parts.body.Add,
		Rows: func() *form.Of[repair.Line] {
			rows := form.Apart(parts.form).Stacks()
			parts.body.Add(rows.Rows)
			if f.groups[groupParts].form == parts.form {
				f.groups[groupParts].form = rows // the first part has the first field
			}
			return rows
		},
		Button: func(words string, change func(*repair.Line)) {
			parts.body.Add(container.NewHBox(widgets.NewButton(words, func() { f.change(r.Line.ID)(strings.ToLower(words), change) })))
		}}.Build(r.Line.Parts)
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
