package bench

import (
	"fmt"
	"maps"
	"slices"

	"walkline/ui/damage"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation"
	"walkline/valuation/donor"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// assemblies is the catalogue of what a vehicle is parted out into.
var assemblies = kind[donor.Assembly]{
	name: "Assemblies", title: "Assemblies sold for parts", noun: "assembly", under: "assemblies.",
	help: "What is taken off a vehicle and sold as one piece. Each counts if the damage leaves it sound. Off a donor, only what the lot " +
		"doesn't need.",
	columns: view.AssemblyColumns,
	starter: func(k *valuation.Knowledge) []donor.Assembly { return k.Parts.Assemblies },
	own:     func(o *valuation.Own) *[]donor.Assembly { return &o.Assemblies },
	id:      func(a *donor.Assembly) *string { return &a.ID },
	called:  func(a donor.Assembly) string { return a.Name },
	cells:   view.AssemblyRow,
	blank:   donor.Assembly{Name: "New assembly", Share: prob.Three{Low: 0.01, Likely: 0.02, High: 0.03}, Chance: 0.5, Hours: 1},
	shape:   func(a donor.Assembly) string { return fmt.Sprint(slices.Sorted(maps.Keys(a.Near))) },
	build:   buildAssembly,
}

// spoils are how great damage in an area must be to spoil an assembly: none does, where it only leaves a doubt.
var spoils = append([]string{donor.Marks}, lot.Extents...)

func buildAssembly(e *editor[donor.Assembly]) {
	type assembly = donor.Assembly
	f := e.rows()
	narrow := func(t *widgets.ThreeEntry) { t.SetFigures(5); t.SetRoom(0) }
	f.Text("What is sold", func(a *assembly) *string { return &a.Name })
	narrow(f.Three("Share of the clean resale price", form.Percents, func(a *assembly) any { return &a.Share }))
	narrow(f.Three("Or a price of its own", form.Amounts, func(a *assembly) any { return &a.Price }))
	f.Plain("Sells when sound", form.Percents, func(a *assembly) *float64 { return &a.Chance }).SetRoom(0)
	f.Plain("Hours to take it off", widgets.Spec{Unit: "h", Least: widgets.Bound(0), Most: widgets.Bound(200)},
		func(a *assembly) *float64 { return &a.Hours }).SetRoom(0)
	f.Pick("Reached from damage to", append([]string{""}, lot.Depths...), append([]string{"any depth"}, view.AllWords(lot.Depths)...),
		func(a *assembly) *string { return &a.Depth })
	f.Codes("Kind of vehicle", lot.Kinds, func(a *assembly) *[]string { return &a.Kinds })
	f.Codes("Powertrain", lot.Powertrains, func(a *assembly) *[]string { return &a.Powertrains })
	f.Codes("Gone where missing", lot.MissingKeys, func(a *assembly) *[]string { return &a.Missing })
	f.Codes("Spoiled by airbags", lot.AirbagPositions, func(a *assembly) *[]string { return &a.Bags })
	f.Codes("Spoiled by a cause", lot.Causes, func(a *assembly) *[]string { return &a.Causes })
	f.Tick("", "Sells as good only where it runs", func(a *assembly) *bool { return &a.Runs })
	f.Tick("", "Left out unless the law there allows its sale", func(a *assembly) *bool { return &a.Restricted })
	f.Text("Caution", func(a *assembly) *string { return &a.Caution })
	buildNear(e)
}

// buildNear adds the areas whose damage spoils the assembly, with a field for one more.
func buildNear(e *editor[donor.Assembly]) {
	e.body.Add(form.LongHeading("What damage spoils it", "The least extent in each area. Marks: it only leaves a doubt, however great it is."))
	f := e.rows()
	for _, area := range slices.Sorted(maps.Keys(e.entry.Near)) {
		f.Keyed(damage.Area(area), spoils, func(a *donor.Assembly) map[string]string { return a.Near }, area)
		e.button("No longer spoiled from: "+damage.Area(area), func(a *donor.Assembly) { delete(a.Near, area) })
	}
	var areas []widgets.Choice
	for _, area := range lot.Areas {
		if _, has := e.entry.Near[area]; !has {
			areas = append(areas, widgets.Choice{ID: area, Name: damage.Area(area)})
		}
	}
	e.suggestion("Add an area: type any word of it", areas, func(c widgets.Choice) {
		e.edit("spoiled from "+c.Name, func(a *donor.Assembly) {
			if a.Near == nil {
				a.Near = map[string]string{}
			}
			a.Near[c.ID] = "functional"
		})
	})
}
