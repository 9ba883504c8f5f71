package bench

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation"
	"walkline/valuation/donor"
)

// newParting returns the section of what holds for every vehicle that is parted out.
func newParting(p *Page) *section {
	e := &editor[donor.Terms]{page: p, body: container.NewVBox()}
	put := func(label string, t *donor.Terms) {
		p.do(desk.EditOwn("parting out: "+label, func(o *valuation.Own) { o.Parting = t }))
	}
	e.put = func(label string, t donor.Terms) { put(label, &t) }
	mark, faults := newWhose("Put the starter values back", func() { put("starter values", nil) }), container.NewVBox()
	head := container.NewVBox(form.Heading("Parting out",
		"What holds for every lot and donor vehicle that is sold in parts, beside its assemblies."),
		mark.body, faults)
	buildParting(e)
	show := func(s desk.State) {
		if s.Know == nil {
			return
		}
		if e.entry = s.Know.Parts.Terms; s.Own.Parting != nil {
			e.entry = *s.Own.Parting // with a fault they are not in force, and are shown to be mended
		}
		mark.set(s.Own.Parting != nil)
		faults.Objects = nil
		for _, words := range view.EntryFaults(s.OwnFaults, "parting.") {
			faults.Add(widgets.NewNote(widgets.Care, words))
		}
		faults.Refresh()
		for _, f := range e.forms {
			f.Render(e.entry)
		}
	}
	return &section{name: "Parting out", body: form.Under(head, container.NewVScroll(e.body), nil), show: show,
		first: func() fyne.Focusable { return e.forms[0].First() }}
}

func buildParting(e *editor[donor.Terms]) {
	type terms = donor.Terms
	f := e.rows()
	f.Plain("Selling takes of what parts bring", form.Percents, func(t *terms) *float64 { return &t.Selling }).SetRoom(0)
	f.Plain("The market's own scatter", form.Percents, func(t *terms) *float64 { return &t.Common }).SetRoom(0)
	f.Three("Hours besides the assemblies", widgets.Spec{Unit: "h", Least: widgets.Bound(0)}, func(t *terms) any { return &t.Overhead })
	f.Three("Days until most is money", widgets.Spec{Unit: "days", Least: widgets.Bound(0)}, func(t *terms) any { return &t.Days })
	f.Three("The rest brings as scrap", form.Amounts, func(t *terms) any { return &t.Scrap })
	runs(e, "Chance that an engine or transmission is good", "For a lot lost to more than a collision, or to something else.",
		func(t *terms) *donor.Running { return &t.Runs })
	runs(e, "The same after a collision only", "A collision leaves more of them good than a mechanical loss.",
		func(t *terms) *donor.Running { return &t.AfterHit })
}

// runs adds the chances by how the vehicle runs.
func runs(e *editor[donor.Terms], title, words string, at func(*donor.Terms) *donor.Running) {
	e.body.Add(form.Heading(title, words))
	f := e.rows()
	for _, of := range []struct {
		label string
		at    func(*donor.Running) *float64
	}{{"It drives", func(r *donor.Running) *float64 { return &r.Drives }}, {"It starts", func(r *donor.Running) *float64 { return &r.Starts }},
		{"It turns over", func(r *donor.Running) *float64 { return &r.TurnsOver }},
		{"It is dead", func(r *donor.Running) *float64 { return &r.Dead }},
		{"Nobody can say", func(r *donor.Running) *float64 { return &r.Unknown }}} {
		f.Plain(of.label, form.Percents, func(t *donor.Terms) *float64 { return of.at(at(t)) }).SetRoom(0)
	}
}
