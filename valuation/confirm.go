package valuation

import (
	"slices"
	"strings"

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
	r, raised := w.risk(risk)
	if !raised {
		return false
	}
	sure := 1.0
	line := repair.Line{ID: c.freeID(ConfirmedPrefix + r.ID), Job: "Repair: " + r.Name, Area: w.place(r.ID), Operation: "repair",
		Chance: &sure, Hours: r.Hours,
		Outside: r.Cost, Loading: r.Loading, Why: "Seen: it was a hidden risk.", Caution: r.Caution, Edited: true}
	if line.Hours == nil {
		line.Hours = map[string]prob.Three{}
	}
	c.Repair.Lines = append(slices.Clone(c.Repair.Lines), line)
	c.strike(r)
	return true
}

// StrikeRisk takes a hidden risk out of the case; the catalogue doesn't add it again. It reports whether the case has such a risk.
func StrikeRisk(c *Case, k Knowledge, risk string) bool {
	r, raised := (&work{c: *c, k: k}).risk(risk)
	if raised {
		c.strike(r)
	}
	return raised
}

// RestoreRisks brings back what [StrikeRisk] took out: as the catalogue has it where the survey brings it up, else as it was. A risk that
// became a line, see [Confirm], stays out while the line stands.
func RestoreRisks(c *Case, k Knowledge) {
	for _, id := range c.Struck() {
		at := slices.IndexFunc(c.Hidden.Risks, func(r hidden.Risk) bool { return r.ID == id })
		without := *c
		without.Hidden.Risks = slices.Delete(slices.Clone(c.Hidden.Risks), at, at+1)
		if _, raised := (&work{c: without, k: k}).risk(id); raised {
			*c = without
			continue
		}
		c.Hidden.Risks = slices.Clone(c.Hidden.Risks)
		c.Hidden.Risks[at].Removed = false
	}
}

// Struck returns the ids of the hidden risks that were taken out and that no line stands for.
func (c Case) Struck() []string {
	var ids []string
	for _, r := range c.Hidden.Risks {
		isLine := func(l repair.Line) bool {
			return !l.Removed && strings.TrimSuffix(l.ID, againSuffix) == ConfirmedPrefix+r.ID
		}
		if r.Removed && !slices.ContainsFunc(c.Repair.Lines, isLine) {
			ids = append(ids, r.ID)
		}
	}
	return ids
}

// risk returns a copy of a hidden risk that the case raises.
func (w *work) risk(id string) (hidden.Risk, bool) {
	risks := w.raise()
	at := slices.IndexFunc(risks, func(r hidden.Risk) bool { return r.ID == id })
	if at < 0 {
		return hidden.Risk{}, false
	}
	return Copy(risks[at]), true
}

// strike keeps a risk as one that was struck out.
func (c *Case) strike(r hidden.Risk) {
	r.Removed = true
	c.Hidden.Risks = append(slices.DeleteFunc(slices.Clone(c.Hidden.Risks), func(o hidden.Risk) bool { return o.ID == r.ID }), r)
}

// place returns the area of the survey that brings the risk up, empty for one of the user's own.
func (w *work) place(risk string) string {
	seen := w.c.seen()
	for _, e := range w.k.Risks.Risks {
		for _, t := range e.Triggers {
			if cells, met := t.Match(&seen, seen.All(w.c.Damage)); e.ID == risk && met && len(cells) > 0 {
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
