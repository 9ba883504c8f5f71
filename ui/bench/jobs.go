package bench

import (
	"fmt"

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
	help: "A job is added to a lot when one of its reasons applies, or by hand. Hours are one person's clock hours. Money leaves out your " +
		"labor.",
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
	var brings []string
	for _, b := range j.Brings {
		brings = append(brings, b.ID)
	}
	return fmt.Sprint(len(j.Calls), len(j.Never), len(j.Moves), len(j.Scales), brings, j.Spares, j.Covers, j.Settles, form.PartsShape(j.Parts))
}

func buildJob(e *editor[repair.Job]) {
	ofLine := func(j *repair.Job) *repair.Line { return &j.Line }
	f := e.rows()
	var line form.Line
	line.Words(form.Within(f, ofLine))
	f.Text("What is done", func(j *repair.Job) *string { return &j.Operation })
	line.Work(form.Within(f, ofLine))
	loading := widgets.Spec{Optional: true, Least: widgets.Bound(0), Most: widgets.Bound(0.9)}
	f.Number("Leans on the lot's luck, 0 to 0.9", loading, func(j *repair.Job) any { return &j.Loading }).SetRoom(0)
	f.Text("Why", func(j *repair.Job) *string { return &j.Why })
	f.Text("Caution", func(j *repair.Job) *string { return &j.Caution })
	form.Parts{Line: line, Rows: func() *form.Of[repair.Line] { return form.Within(e.rows(), ofLine) }, Add: e.body.Add,
		Button: func(words string, change func(*repair.Line)) {
			e.button(words, func(j *repair.Job) { change(&j.Line) })
		}}.Build(e.entry.Parts)
	buildSigns(e, signs{"What calls for it", reasonHelp, "reason"}, func(j *repair.Job) *[]lot.Sign { return &j.Calls })
	buildNever(e, func(j *repair.Job) *[]lot.Sign { return &j.Never })
	buildMoves(e, func(j *repair.Job) *[]lot.Move { return &j.Moves })
	buildScales(e, "What changes its cost", func(j *repair.Job) *[]lot.Scale { return &j.Scales })
	buildBrings(e, func(j *repair.Job) *[]repair.Brought { return &j.Brings }, func(b *repair.Brought) *string { return &b.ID },
		func(b *repair.Brought) **float64 { return &b.Chance })
	buildLinks(e, links{"What it makes needless",
		"Work that is not done as well: a panel that is replaced is not repaired, one that is painted is not blended.",
		"No longer needless", "makes needless "}, e.jobs(), func(j *repair.Job) *[]string { return &j.Spares })
	buildLinks(e, links{"What it does with its own",
		"Work that this job makes unnecessary: a complete door comes with its glass. What that work brings along is dropped too.",
		"No longer done with it", "does "}, e.jobs(), func(j *repair.Job) *[]string { return &j.Covers })
	buildLinks(e, links{"What hidden damage it puts right", "It is not counted beside this work: what is replaced is not hidden any more.",
		"No longer put right", "puts right "}, e.risks(), func(j *repair.Job) *[]string { return &j.Settles })
}

// reasonHelp is said over the reasons of jobs and of risks.
const reasonHelp = "Any one reason is enough. Within a reason, every filled-in field must apply."
