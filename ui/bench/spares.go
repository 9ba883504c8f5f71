package bench

import (
	"slices"

	"walkline/ui/form"
	"walkline/ui/widgets"
	"walkline/valuation/repair"
)

// buildSpares adds the jobs that a job makes needless.
func buildSpares(e *editor[repair.Job]) {
	e.body.Add(form.Heading("What it makes needless",
		"Work that is not done as well: a panel that is replaced is not repaired, one that is painted is not blended."))
	words := map[string]string{}
	var choices []widgets.Choice
	for _, j := range e.catalogue.list("") {
		words[j.Item.ID] = j.Item.Job
		choices = append(choices, widgets.Choice{ID: j.Item.ID, Name: j.Item.Job})
	}
	for i, id := range e.entry.Spares {
		name := words[id]
		if name == "" {
			name = id
		}
		e.button("No longer needless: "+name, func(j *repair.Job) { j.Spares = slices.Delete(j.Spares, i, i+1) })
	}
	add := widgets.NewSuggest("Add one: type a part of the words", func(c widgets.Choice) {
		e.edit("makes needless "+c.Name, func(j *repair.Job) { j.Spares = append(j.Spares, c.ID) })
	})
	add.SetChoices(choices)
	e.body.Add(add)
}
