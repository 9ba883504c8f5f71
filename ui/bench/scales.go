package bench

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// ScalesSection is the name of the section of what the vehicle does to the cost of all work and of all hidden damage.
const ScalesSection = "Costs by vehicle"

// newScales returns the section of the scales over whole catalogues.
func newScales(p *Page) *section {
	e := &editor[valuation.Own]{page: p, body: container.NewVBox()}
	e.put = func(label string, x valuation.Own) {
		p.do(desk.EditOwn("costs by vehicle: "+label, func(o *valuation.Own) { o.JobScales, o.RiskScales = x.JobScales, x.RiskScales }))
	}
	mark := newWhose("Put the starter values back", func() { e.put("starter values", valuation.Own{}) })
	faults := container.NewVBox()
	head := container.NewVBox(form.Heading("Costs by vehicle",
		"How the kind of vehicle, its parts and its roads change the starter costs of work and hidden damage. Until you add your own, the "+
			"starter ones count."), mark.body, faults)
	show := func(s desk.State) {
		if s.Know == nil {
			return
		}
		e.entry = valuation.Own{Currency: s.Own.Currency, JobScales: s.Know.Jobs.Scales, RiskScales: s.Know.Risks.Scales}
		if len(s.Own.JobScales) > 0 {
			e.entry.JobScales = s.Own.JobScales // with a fault they are not in force, and are shown to be mended
		}
		if len(s.Own.RiskScales) > 0 {
			e.entry.RiskScales = s.Own.RiskScales
		}
		mark.set(len(s.Own.JobScales)+len(s.Own.RiskScales) > 0)
		faults.Objects = nil
		for _, words := range append(view.EntryFaults(s.OwnFaults, "job_scales"), view.EntryFaults(s.OwnFaults, "risk_scales")...) {
			faults.Add(widgets.NewNote(widgets.Care, words))
		}
		faults.Refresh()
		if shape := fmt.Sprint(len(e.entry.JobScales), len(e.entry.RiskScales)); shape != e.shape {
			e.shape, e.body.Objects, e.forms = shape, nil, nil
			buildScales(e, "All work", func(o *valuation.Own) *[]lot.Scale { return &o.JobScales })
			buildScales(e, "All hidden damage", func(o *valuation.Own) *[]lot.Scale { return &o.RiskScales })
			e.body.Refresh()
		}
		for _, f := range e.forms {
			f.Render(e.entry)
		}
	}
	return &section{name: ScalesSection, body: form.Under(head, container.NewVScroll(e.body), nil), show: show,
		first: func() fyne.Focusable {
			if len(e.forms) == 0 {
				return nil
			}
			return e.forms[0].First()
		}}
}
