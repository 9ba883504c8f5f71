package view

import (
	"cmp"
	"strings"

	"walkline/ui/damage"
	"walkline/valuation/lot"
)

// ListSays returns what a run list says of a lot beside its facts, in words, in the money of its case where it names no other; nothing
// where it says nothing.
func ListSays(l *lot.Listed, currency string) []string {
	if !l.Said() {
		return nil
	}
	var says []string
	if len(l.Areas) > 0 {
		words := make([]string, len(l.Areas))
		for i, area := range l.Areas {
			words[i] = damage.Area(area)
		}
		says = append(says, "damage at "+strings.Join(words, ", "))
	}
	p := NewPurse(cmp.Or(l.Currency, currency))
	for _, x := range []struct {
		name   string
		figure *float64
	}{{"value before ", l.ValueBefore}, {"repair estimate ", l.RepairEstimate}} {
		if x.figure != nil {
			says = append(says, x.name+p.Show(p.FromMajor(*x.figure)))
		}
	}
	if l.Note != "" {
		says = append(says, l.Note)
	}
	return says
}
