package form

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/damage"
	"walkline/ui/widgets"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// The words of a panel that has the dents of the rest, and of one that has none.
const (
	asTheRest = "as above"
	noDents   = "no dents"
)

func hailFields(f *Form) fyne.CanvasObject {
	at := func(c *valuation.Case) *lot.Hail { return part(surveyOf(c).Hail) }
	leading(f, "Dents a panel", "count", lot.HailCounts, func(s *lot.Survey) **lot.Hail { return &s.Hail },
		func(h *lot.Hail) *string { return &h.Count })
	return below(f, func(s *lot.Survey) bool { return s.Hail != nil }, func(f *Form) []fyne.CanvasObject {
		f.Maybe("Dent size", "size", lot.HailSizes, func(c *valuation.Case) *string { return &at(c).Size })
		for _, panel := range lot.HailPanels {
			panelFields(f, panel, at)
		}
		f.Tick("Glass", "or lamps broken", func(c *valuation.Case) *bool { return &at(c).Glass })
		f.Tick("Dents", "stay in", func(c *valuation.Case) *bool { return &at(c).Left })
		below := Percents
		below.Most = widgets.Bound(0.99)
		off := f.Three("Take off", below, func(c *valuation.Case) any { return &at(c).Discount })
		off.SetFigures(4)
		off.SetRoom(0)
		return nil
	})
}

// panelFields adds how many dents a panel has and how large they are, where it differs from the rest.
func panelFields(f *Form, panel string, at func(*valuation.Case) *lot.Hail) {
	label := Sentence(damage.Said("panel", panel))
	counts, sizes := append([]string{"", noDents}, lot.HailCounts...), append([]string{""}, lot.HailSizes...)
	count, showCount := f.selection(label, counts, replaced(damage.AllSaid("panel", counts)), func(c valuation.Case) string {
		if h := at(&c); slices.Contains(h.Hit(), panel) {
			return h.Each[panel].Count
		}
		return noDents
	}, func(c *valuation.Case, word string) { setCount(c, panel, word) })
	size, showSize := f.selection(label+", size", sizes, replaced(damage.AllSaid("panel", sizes)),
		func(c valuation.Case) string { return at(&c).Each[panel].Size },
		func(c *valuation.Case, word string) {
			d := at(c).Each[panel]
			d.Size = word
			setDents(at(c), panel, d)
		})
	f.Row(label, container.NewGridWithColumns(2, count, size), func(c valuation.Case) {
		showCount(c)
		showSize(c)
	})
}

// replaced returns words with those for no code said as a panel's.
func replaced(words []string) []string {
	words[0] = asTheRest
	return words
}

// setCount says how many dents a panel has; a lot none of whose panels has any was not hit by hail.
func setCount(c *valuation.Case, panel, word string) {
	h := surveyOf(c).Hail
	if h == nil {
		return
	}
	hit := slices.DeleteFunc(slices.Clone(lot.HailPanels), func(p string) bool {
		return p == panel && word == noDents || p != panel && !slices.Contains(h.Hit(), p)
	})
	d := h.Each[panel]
	switch h.Panels = hit; {
	case len(hit) == 0:
		c.Survey.Hail = nil
		return
	case len(hit) == len(lot.HailPanels):
		h.Panels = nil
	}
	if d.Count = word; word == noDents {
		d = lot.Dents{}
	}
	setDents(h, panel, d)
}

// setDents keeps what a panel has apart from the rest, nothing where it differs in nothing.
func setDents(h *lot.Hail, panel string, d lot.Dents) {
	delete(h.Each, panel)
	switch {
	case d == lot.Dents{}:
		if len(h.Each) == 0 {
			h.Each = nil
		}
	case h.Each == nil:
		h.Each = map[string]lot.Dents{panel: d}
	default:
		h.Each[panel] = d
	}
}
