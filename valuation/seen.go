package valuation

import (
	"strings"

	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/repair"
)

// seen returns the lot with what the survey says of it.
func (c Case) seen() lot.Lot { return c.Lot.With(c.Survey) }

// feared returns the lot as its risks see it: with what its title says of its loss.
func (c Case) feared() lot.Lot { return c.told().With(c.Survey) }

// causes returns the hidden damage that brings work along, at the chances after the findings, and what was hidden and has been
// seen since: its line is the user's, and what it brings is certain with it.
func (w *work) causes() []repair.Cause {
	var all []repair.Cause
	for i, r := range w.risks {
		if len(r.Brings) > 0 {
			all = append(all, repair.Cause{ID: r.ID, Name: r.Name, Chance: w.chances[i], Brings: brought(r.Brings)})
		}
	}
	for _, e := range w.k.Risks.Risks {
		for _, l := range w.c.Repair.Lines {
			if len(e.Brings) > 0 && !l.Removed && strings.TrimSuffix(l.ID, againSuffix) == ConfirmedPrefix+e.ID {
				all = append(all, repair.Cause{ID: l.ID, Name: e.Name, Chance: 1, Brings: brought(e.Brings)})
			}
		}
	}
	return all
}

func brought(works []hidden.Work) []repair.Brought {
	all := make([]repair.Brought, len(works))
	for i, x := range works {
		all[i] = repair.Brought{ID: x.ID, Chance: x.Chance}
	}
	return all
}
