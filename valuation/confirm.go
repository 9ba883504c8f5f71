package valuation

import (
	"slices"

	"walkline/valuation/hidden"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// ConfirmedPrefix begins the id of a repair line that was a hidden risk.
const ConfirmedPrefix = "seen_"

// againSuffix sets a second line for the same risk apart.
const againSuffix = "_again"

// Confirm turns a hidden risk of the case into a repair line that is certain to be needed, and strikes the risk out, so
// that it is not counted twice. It reports whether the case has such a risk. Money that the risk costs becomes work
// bought in; its days go, for the line's own hours take their time.
func Confirm(c *Case, k Knowledge, risk string) bool {
	w := work{c: *c, k: k}
	risks := w.raise()
	at := slices.IndexFunc(risks, func(r hidden.Risk) bool { return r.ID == risk })
	if at < 0 {
		return false
	}
	r := Copy(risks[at])
	sure := 1.0
	line := repair.Line{ID: c.freeID(ConfirmedPrefix + r.ID), Job: "Repair: " + r.Name, Area: w.place(r.ID), Operation: "repair",
		Chance: &sure, Hours: r.Hours,
		Outside: r.Cost, Loading: r.Loading, Why: "Seen: it was a hidden risk.", Caution: r.Caution, Edited: true}
	if line.Hours == nil {
		line.Hours = map[string]prob.Three{}
	}
	c.Repair.Lines = append(slices.Clone(c.Repair.Lines), line)
	r.Removed = true
	c.Hidden.Risks = append(slices.DeleteFunc(slices.Clone(c.Hidden.Risks), func(o hidden.Risk) bool { return o.ID == r.ID }), r)
	return true
}

// place returns the area of the survey that brings the risk up, empty for one of the user's own.
func (w *work) place(risk string) string {
	for _, e := range w.k.Risks.Risks {
		for _, t := range e.Triggers {
			if cells, met := t.Match(w.c.seen(), w.c.seen().All(w.c.Damage)); e.ID == risk && met && len(cells) > 0 {
				return cells[0].Area
			}
		}
	}
	return ""
}

// freeID returns an id that no repair line of the case has.
func (c Case) freeID(id string) string {
	for slices.ContainsFunc(c.Repair.Lines, func(l repair.Line) bool { return l.ID == id }) {
		id += againSuffix
	}
	return id
}
