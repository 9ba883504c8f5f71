package bench

import (
	"slices"

	"walkline/ui/form"
	"walkline/ui/widgets"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// links are the words of a list of other entries that an entry names.
type links struct{ title, help, drop, add string }

// named returns what entries are called by their ids, and the choices for type-ahead.
func (e *editor[T]) jobs() []widgets.Choice {
	var all []widgets.Choice
	if know := e.page.state.Know; know != nil {
		for _, j := range know.Jobs.Jobs {
			all = append(all, widgets.Choice{ID: j.ID, Name: j.Job})
		}
	}
	return all
}

func (e *editor[T]) risks() []widgets.Choice {
	var all []widgets.Choice
	if know := e.page.state.Know; know != nil {
		for _, r := range know.Risks.Risks {
			all = append(all, widgets.Choice{ID: r.ID, Name: r.Name})
		}
	}
	return all
}

// nameOf returns what the entry of an id is called, the id where there is none.
func nameOf(all []widgets.Choice, id string) string {
	if at := slices.IndexFunc(all, func(c widgets.Choice) bool { return c.ID == id }); at >= 0 {
		return all[at].Name
	}
	return id
}

// suggestion adds a field that finds one of the choices.
func (e *editor[T]) suggestion(words string, choices []widgets.Choice, take func(widgets.Choice)) {
	add := widgets.NewSuggest(words, take)
	add.SetChoices(choices)
	e.body.Add(add)
}

// dropping adds what an entry names, with a button that takes it out.
func (e *editor[T]) dropping(name, words string, change func(*T)) {
	label := widget.NewLabel(name)
	label.Wrapping = fyne.TextWrapWord
	b := widgets.NewButton(words, func() { e.edit(words+": "+name, change) })
	b.Importance = widget.LowImportance
	e.body.Add(container.NewBorder(nil, nil, nil, b, label))
}

// buildLinks adds the entries that an entry names by their ids.
func buildLinks[T any](e *editor[T], words links, choices []widgets.Choice, at func(*T) *[]string) {
	e.body.Add(form.LongHeading(words.title, words.help))
	for i, id := range *at(&e.entry) {
		e.dropping(nameOf(choices, id), words.drop, func(x *T) { *at(x) = slices.Delete(*at(x), i, i+1) })
	}
	e.suggestion("Add one: type any word of it", choices, func(c widgets.Choice) {
		e.edit(words.add+c.Name, func(x *T) { *at(x) = append(*at(x), c.ID) })
	})
}

// buildBrings adds the jobs that an entry brings along: B is how its catalogue writes one.
func buildBrings[T, B any](e *editor[T], at func(*T) *[]B, id func(*B) *string, chance func(*B) **float64) {
	e.body.Add(form.LongHeading("What it brings along", "Work that comes with it, counted once however many jobs bring it."))
	all := e.jobs()
	for i := range *at(&e.entry) {
		name := nameOf(all, *id(item(*at(&e.entry), i)))
		e.rows().Number(name, form.Percents, func(x *T) any { return form.Certainly{At: chance(item(*at(x), i))} }).SetRoom(0)
		e.button("Take it out", func(x *T) { *at(x) = slices.Delete(*at(x), i, i+1) })
	}
	e.suggestion("Add one: type any word of it", all, func(c widgets.Choice) {
		e.edit("brings "+c.Name, func(x *T) {
			var b B
			*id(&b) = c.ID
			*at(x) = append(*at(x), b)
		})
	})
}
