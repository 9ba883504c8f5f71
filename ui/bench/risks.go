package bench

import (
	"fmt"
	"slices"

	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// risks is the catalogue of damage that may be hidden.
var risks = kind[hidden.Entry]{
	name: "Hidden risks", title: "Hidden risks", noun: "risk", under: "risks.",
	help:    "Damage that may be there unseen. Its chance reads as: seen in so many of so many cases; findings move it.",
	columns: view.RiskEntryColumns,
	starter: func(k *valuation.Knowledge) []hidden.Entry { return k.Risks.Risks },
	own:     func(o *valuation.Own) *[]hidden.Entry { return &o.Risks },
	id:      func(r *hidden.Entry) *string { return &r.ID },
	called:  func(r hidden.Entry) string { return r.Name + " " + r.Why },
	cells:   view.RiskEntryRow,
	blank:   hidden.Entry{Risk: hidden.Risk{Name: "New risk", Chance: hidden.Beta{A: 1, B: 4}}},
	shape:   riskShape,
	build:   buildRisk,
}

// riskShape names the fields that a risk needs.
func riskShape(r hidden.Entry) string {
	var ids []string
	for _, f := range r.Findings {
		ids = append(ids, f.Finding)
	}
	for _, b := range r.Brings {
		ids = append(ids, b.ID)
	}
	return fmt.Sprint(len(r.Triggers), len(r.Never), len(r.Moves), len(r.Scales), len(r.Brings), ids)
}

// counts is the kind of a field for how often something was seen.
var counts = widgets.Spec{Unit: "cases", Least: widgets.Bound(0), Most: widgets.Bound(1000)}

func buildRisk(e *editor[hidden.Entry]) {
	type entry = hidden.Entry
	f := e.rows()
	narrow := func(t *widgets.ThreeEntry) { t.SetFigures(5); t.SetRoom(0) }
	f.Text("Hidden damage", func(r *entry) *string { return &r.Name })
	f.Plain("It was there in", counts, func(r *entry) *float64 { return &r.Chance.A }).SetRoom(0)
	f.Plain("It was not there in", counts, func(r *entry) *float64 { return &r.Chance.B }).SetRoom(0)
	narrow(f.Three("Cost if there", form.Amounts, func(r *entry) any { return &r.Cost }))
	form.Hours(f, func(r *entry) *map[string]prob.Three { return &r.Hours })
	narrow(f.Three("Days that it adds", form.Days, func(r *entry) any { return &r.Days }))
	loading := widgets.Spec{Optional: true, Least: widgets.Bound(0), Most: widgets.Bound(0.9)}
	f.Number("Leans on the lot's luck, 0 to 0.9", loading, func(r *entry) any { return &r.Loading }).SetRoom(0)
	f.Text("Why", func(r *entry) *string { return &r.Why })
	f.Text("Caution", func(r *entry) *string { return &r.Caution })
	buildSigns(e, signs{"What brings it up", reasonHelp, "reason"}, func(r *entry) *[]lot.Sign { return &r.Triggers })
	buildNever(e, func(r *entry) *[]lot.Sign { return &r.Never })
	buildMoves(e, func(r *entry) *[]lot.Move { return &r.Moves })
	buildScales(e, "What changes its cost", func(r *entry) *[]lot.Scale { return &r.Scales })
	buildBrings(e, func(r *entry) *[]hidden.Work { return &r.Brings }, func(b *hidden.Work) *string { return &b.ID },
		func(b *hidden.Work) **float64 { return &b.Chance })
	buildEvidence(e)
}

// buildEvidence adds the findings that tell of a risk.
func buildEvidence(e *editor[hidden.Entry]) {
	type entry = hidden.Entry
	e.body.Add(form.LongHeading("What tells of it", "How often the answer is yes when the damage is there, and when it is not."))
	texts := map[string]string{}
	var choices []widgets.Choice
	if know := e.page.state.Know; know != nil {
		for _, f := range know.Risks.Findings {
			texts[f.ID] = f.Text
			choices = append(choices, widgets.Choice{ID: f.ID, Name: f.Text})
		}
	}
	for i, x := range e.entry.Findings {
		name := x.Finding
		if texts[name] != "" {
			name = texts[name]
		}
		e.body.Add(form.Small(name))
		f := e.rows()
		at := func(r *entry) *hidden.Evidence {
			if i < len(r.Findings) {
				return &r.Findings[i]
			}
			return &hidden.Evidence{}
		}
		f.Plain("Yes, if it is there", form.Percents, func(r *entry) *float64 { return &at(r).IfPresent }).SetRoom(0)
		f.Plain("Yes, if it is not", form.Percents, func(r *entry) *float64 { return &at(r).IfAbsent }).SetRoom(0)
		e.button("Remove this finding", func(r *entry) { r.Findings = slices.Delete(r.Findings, i, i+1) })
	}
	add := widgets.NewSuggest("Add a finding: type a part of the words", func(c widgets.Choice) {
		e.edit("finding", func(r *entry) {
			r.Findings = append(r.Findings, hidden.Evidence{Finding: c.ID, IfPresent: 0.5, IfAbsent: 0.1})
		})
	})
	add.SetChoices(choices)
	e.body.Add(add)
}

// findings is the catalogue of what can be looked at.
var findings = kind[hidden.Finding]{
	name: "Things to look at", title: "Things to look at", noun: "look", under: "findings.",
	help:    "What a person can look at in a yard within minutes; the answers move the chances of hidden risks.",
	columns: view.FindingColumns,
	starter: func(k *valuation.Knowledge) []hidden.Finding { return k.Risks.Findings },
	own:     func(o *valuation.Own) *[]hidden.Finding { return &o.Findings },
	id:      func(f *hidden.Finding) *string { return &f.ID },
	called:  func(f hidden.Finding) string { return f.Text + " " + f.Look + " " + f.Tools + " " + f.Where },
	cells:   view.FindingRow,
	blank:   hidden.Finding{Text: "New question?", Minutes: 1, Tools: "none"},
	shape:   func(hidden.Finding) string { return "" },
	build:   buildFinding,
}

func buildFinding(e *editor[hidden.Finding]) {
	type finding = hidden.Finding
	f := e.rows()
	f.Text("Question", func(x *finding) *string { return &x.Text })
	f.Text("How to look", func(x *finding) *string { return &x.Look })
	f.Text("Tools", func(x *finding) *string { return &x.Tools })
	f.Plain("Takes", widgets.Spec{Unit: "minutes", Least: widgets.Bound(0), Most: widgets.Bound(600)},
		func(x *finding) *float64 { return &x.Minutes }).SetRoom(0)
	f.Number("Fee", form.Optional, func(x *finding) any { return &x.Fee }).SetRoom(0)
	f.Text("Where", func(x *finding) *string { return &x.Where })
	f.Words("Needs", "keys, battery, crank, run", func(x *finding) *[]string { return &x.Needs })
}
