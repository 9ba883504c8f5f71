package builds

import (
	"slices"

	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation/build"
)

// noPart is what the field says for a bill that is for no part of the plan.
const noPart = "none of the plan's parts"

// addParts adds the field that names the part of the plan that a bill is for. Choosing one fills in the line of work.
func addParts(p *Page, f *form.Of[build.Receipt]) {
	var parts []view.PartChoice
	pick := widgets.NewSelect([]string{noPart}, nil)
	pick.OnChanged = func(string) {
		if at := pick.SelectedIndex() - 1; at >= 0 && at < len(parts) {
			c := parts[at]
			f.Change("part", func(r *build.Receipt) { r.Kind, r.Line, r.What = "part", c.Line, c.Name })
		}
	}
	f.Row("Part", pick, func(r build.Receipt) {
		parts = view.PartChoices(p.open(), r.Line)
		words := []string{noPart}
		for _, c := range parts {
			words = append(words, c.Words)
		}
		pick.SetOptions(words)
		pick.SetSelectedIndex(1 + slices.IndexFunc(parts, func(c view.PartChoice) bool {
			return r.Kind == "part" && c.Line == r.Line && build.SamePart(c.Name, r.What)
		}))
	})
}
