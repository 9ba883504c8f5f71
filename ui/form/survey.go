package form

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/damage"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// surveyOf returns the survey of a case, a blank one where there is none yet.
func surveyOf(c *valuation.Case) *lot.Survey {
	if c.Survey == nil {
		c.Survey = new(lot.Survey)
	}
	return c.Survey
}

// Surveyed returns an edit that leaves no survey behind where nothing of it is known.
func Surveyed(e Edit) Edit {
	return func(label string, change func(*valuation.Case)) {
		e(label, func(c *valuation.Case) {
			change(c)
			c.Survey = c.Survey.Known()
		})
	}
}

// Maybe adds a field for one of several codes of a list of the survey, or for "not known".
func (f *Of[T]) Maybe(label, list string, codes []string, at func(*T) *string) {
	all := append([]string{""}, codes...)
	f.Pick(label, all, damage.AllSaid(list, all), at)
}

// Vehicle adds what kind of vehicle it is. A motorcycle turns the catalogue off, which does not speak of one.
func Vehicle(f *Form) {
	kinds := append([]string{""}, lot.Kinds...)
	f.picked("Kind of vehicle", kinds, damage.AllSaid("kind", kinds), func(c valuation.Case) string { return surveyOf(&c).Kind },
		func(c *valuation.Case, kind string) {
			was := c.Survey != nil && c.Survey.Kind == "motorcycle"
			surveyOf(c).Kind = kind
			if is := kind == "motorcycle"; is != was {
				c.Repair.UseCatalogue, c.Hidden.UseCatalogue = !is, !is
			}
		})
	f.Maybe("Powertrain", "powertrain", lot.Powertrains, func(c *valuation.Case) *string { return &surveyOf(c).Powertrain })
	f.Maybe("Driven wheels", "driven", lot.DrivenAxles, func(c *valuation.Case) *string { return &surveyOf(c).Driven })
	doors := append([]string{""}, lot.DoorCounts...)
	f.picked("Doors", doors, damage.AllSaid("doors", doors), func(c valuation.Case) string {
		if n := surveyOf(&c).Doors; n > 0 {
			return strconv.Itoa(n)
		}
		return ""
	}, func(c *valuation.Case, n string) { surveyOf(c).Doors, _ = strconv.Atoi(n) }) // "" is 0: not known
	f.Maybe("Paint", "paint", lot.Paints, func(c *valuation.Case) *string { return &surveyOf(c).Paint })
	f.Maybe("Its parts are", "parts_level", lot.PartsLevels, func(c *valuation.Case) *string { return &surveyOf(c).PartsLevel })
	f.Maybe("Its roads were", "region", lot.Regions, func(c *valuation.Case) *string { return &surveyOf(c).Region })
}

// perLine is how many ticks stand in a line of the narrow list beside the plan.
const perLine = 2

// Topic adds the fields of one of damage.Topics to a narrow column, and returns what holds them.
func Topic(f *Form, topic string) fyne.CanvasObject {
	switch topic {
	case "Missing parts":
		return ticks(f, topic, "missing", lot.MissingKeys, func(c *valuation.Case) *[]string { return &surveyOf(c).Missing })
	case "Water":
		return waterFields(f)
	case "Hail":
		return hailFields(f)
	case "Fire and smoke":
		return fireFields(f)
	}
	return ticks(f, topic, "cause", lot.Causes, func(c *valuation.Case) *[]string { return &surveyOf(c).Causes })
}

// ticks adds a tick for each code of a list of the survey, under a line of help.
func ticks(f *Form, label, list string, codes []string, at func(*valuation.Case) *[]string) fyne.CanvasObject {
	grid := f.ticks(label, codes, damage.AllSaid(list, codes), perLine, at)
	if help := view.Help(label); help != "" {
		return container.NewVBox(Small(help), grid)
	}
	return grid
}

// leading adds the field on which the rest of a topic hangs: not known takes the topic away.
func leading[V any](f *Form, label, list string, codes []string, at func(*lot.Survey) **V, code func(*V) *string) {
	all := append([]string{""}, codes...)
	f.picked(label, all, damage.AllSaid(list, all), func(c valuation.Case) string {
		if v := *at(surveyOf(&c)); v != nil {
			return *code(v)
		}
		return ""
	}, func(c *valuation.Case, word string) {
		v := at(surveyOf(c))
		if word == "" {
			*v = nil
			return
		}
		if *v == nil {
			*v = new(V)
		}
		*code(*v) = word
	})
}

// below adds fields that are shown while something of the topic is known, and returns what holds the whole topic.
func below(f *Form, known func(*lot.Survey) bool, fill func(*Form) []fyne.CanvasObject) fyne.CanvasObject {
	rest := Apart(f)
	box := container.NewVBox(append([]fyne.CanvasObject{rest.Rows}, fill(rest)...)...)
	box.Hide()
	whole := container.NewVBox(f.Rows, box)
	f.Also(func(c valuation.Case) {
		if shown := known(surveyOf(&c)); shown != box.Visible() {
			box.Hidden = !shown
			whole.Refresh()
		}
	})
	return whole
}

// part returns what a pointer points to, a blank one where there is nothing: its fields are hidden then.
func part[V any](p *V) *V {
	if p == nil {
		return new(V)
	}
	return p
}

func waterFields(f *Form) fyne.CanvasObject {
	at := func(c *valuation.Case) *lot.Water { return part(surveyOf(c).Water) }
	leading(f, "Water stood", "height", lot.WaterHeights, func(s *lot.Survey) **lot.Water { return &s.Water },
		func(w *lot.Water) *string { return &w.Height })
	return below(f, func(s *lot.Survey) bool { return s.Water != nil }, func(f *Form) []fyne.CanvasObject {
		f.Maybe("Kind of water", "water", lot.WaterKinds, func(c *valuation.Case) *string { return &at(c).Kind })
		f.Number("Under water", widgets.Spec{Unit: "h", Optional: true, Least: widgets.Bound(0), Most: widgets.Bound(mostSoak)},
			func(c *valuation.Case) any { return &at(c).Hours }).SetRoom(0)
		return nil
	})
}

// mostSoak is the most hours under water that can be entered: a year.
const mostSoak = 8760

func fireFields(f *Form) fyne.CanvasObject {
	at := func(c *valuation.Case) *lot.Fire { return part(surveyOf(c).Fire) }
	leading(f, "It went to", "reach", lot.FireReaches, func(s *lot.Survey) **lot.Fire { return &s.Fire },
		func(x *lot.Fire) *string { return &x.Reach })
	return below(f, func(s *lot.Survey) bool { return s.Fire != nil }, func(f *Form) []fyne.CanvasObject {
		return []fyne.CanvasObject{ticks(f, "Where it was", "place", lot.FirePlaces,
			func(c *valuation.Case) *[]string { return &at(c).Where })}
	})
}
