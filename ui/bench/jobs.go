package bench

import (
	"fmt"
	"slices"

	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/repair"
)

// jobs is the catalogue of repair jobs.
var jobs = kind[repair.Job]{
	name: "Repair jobs", title: "Repair jobs", noun: "job", under: "jobs.",
	help: "Each job comes into a lot when one of its reasons is met, or by hand. Hours are clock hours of one person; money is without " +
		"your labor.",
	columns: view.JobColumns,
	starter: func(k *valuation.Knowledge) []repair.Job { return k.Jobs.Jobs },
	own:     func(o *valuation.Own) *[]repair.Job { return &o.Jobs },
	id:      func(j *repair.Job) *string { return &j.ID },
	called: func(j repair.Job) string {
		return j.Job + " " + view.SignWords(lot.Sign{Areas: []string{j.Area}}) + " " + j.Operation
	},
	cells: view.JobRow,
	blank: repair.Job{Line: repair.Line{Job: "New job", Area: "12", Operation: "repair"}},
	shape: jobShape,
	build: buildJob,
}

// jobShape names the fields that a job needs.
func jobShape(j repair.Job) string {
	return fmt.Sprint(len(j.Calls), j.Brings, j.Spares, form.PartsShape(j.Parts))
}

func buildJob(e *editor[repair.Job]) {
	ofLine := func(j *repair.Job) *repair.Line { return &j.Line }
	f := e.rows()
	var line form.Line
	line.Words(form.Within(f, ofLine))
	f.Text("What is done", func(j *repair.Job) *string { return &j.Operation })
	line.Work(form.Within(f, ofLine))
	f.Text("Why", func(j *repair.Job) *string { return &j.Why })
	f.Text("Caution", func(j *repair.Job) *string { return &j.Caution })
	form.Parts{Line: line, Rows: func() *form.Of[repair.Line] { return form.Within(e.rows(), ofLine) }, Add: e.body.Add,
		Button: func(words string, change func(*repair.Line)) {
			e.button(words, func(j *repair.Job) { change(&j.Line) })
		}}.Build(e.entry.Parts)
	e.body.Add(form.Heading("What calls for it", "Any one reason is enough. Of a reason, every field that is not empty must be met."))
	for i := range e.entry.Calls {
		buildSign(e, i, func(j *repair.Job) *[]lot.Sign { return &j.Calls })
	}
	e.button("Add a reason", func(j *repair.Job) { j.Calls = append(j.Calls, lot.Sign{}) })
	buildBrings(e)
	buildSpares(e)
}

// buildSign adds the fields of one reason.
func buildSign[T any](e *editor[T], i int, signs func(*T) *[]lot.Sign) {
	e.body.Add(form.Label(fmt.Sprintf("Reason %d", i+1)))
	form.Sign(form.Within(e.rows(), func(x *T) *lot.Sign {
		if all := *signs(x); i < len(all) {
			return &all[i]
		}
		return &lot.Sign{}
	}))
	e.button("Remove this reason", func(x *T) { *signs(x) = slices.Delete(*signs(x), i, i+1) })
}

// buildBrings adds the jobs that a job always brings along.
func buildBrings(e *editor[repair.Job]) {
	e.body.Add(form.Heading("What it brings along", "Work that comes with it, counted once for all jobs that bring it."))
	f := e.rows()
	all := e.catalogue.list("")
	name := func(id string) string {
		for _, j := range all {
			if j.Item.ID == id {
				return j.Item.Job
			}
		}
		return id
	}
	for i, b := range e.entry.Brings {
		f.Number(name(b.ID), form.Percents, func(j *repair.Job) any {
			if i < len(j.Brings) {
				return form.Certainly{At: &j.Brings[i].Chance}
			}
			return form.Certainly{At: new(*float64)}
		}).SetRoom(0)
		e.button("Take out: "+name(b.ID), func(j *repair.Job) { j.Brings = slices.Delete(j.Brings, i, i+1) })
	}
	add := widgets.NewSuggest("Add one: type a part of the words", func(c widgets.Choice) {
		e.edit("brings "+c.Name, func(j *repair.Job) { j.Brings = append(j.Brings, repair.Brought{ID: c.ID}) })
	})
	var choices []widgets.Choice
	for _, j := range all {
		choices = append(choices, widgets.Choice{ID: j.Item.ID, Name: j.Item.Job})
	}
	add.SetChoices(choices)
	e.body.Add(add)
}
