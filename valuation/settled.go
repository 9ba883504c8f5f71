package valuation

import (
	"fmt"
	"slices"
	"strings"

	"walkline/valuation/hidden"
	"walkline/valuation/repair"
)

// hurt returns the hidden damage of the case, with what was learned, and without what the known work puts right: nothing counts twice.
func (w *work) hurt() []hidden.Risk {
	risks := factoredRisks(w.raise(), w.c.Hidden.Risks, w.c.learned())
	by := w.settling()
	var out []hidden.Risk
	for _, r := range risks {
		left, names := 1.0, []string{}
		for _, l := range by[r.ID] {
			left *= 1 - repair.Or(l.Chance, 1)
			names = append(names, l.Job)
		}
		if left == 0 {
			w.struck = append(w.struck, fmt.Sprintf("Hidden damage %q is taken out: the known work %q puts it right.", r.Name,
				strings.Join(names, ", ")))
			continue
		}
		if left < 1 {
			n := r.Chance.A + r.Chance.B
			r.Chance.A *= left
			r.Chance.B = n - r.Chance.A
			r.Why = strings.TrimSpace(r.Why + " (less where known work puts it right: " + strings.Join(names, "; ") + ")")
		}
		out = append(out, r)
	}
	return out
}

// settling returns the lines of known work by the risks that they put right: a line with the id or the name of a job of the catalogue is
// that job's, whoever entered it; one with the id or the name of the risk itself puts that right.
func (w *work) settling() map[string][]repair.Line {
	by, jobs, named := map[string][]repair.Line{}, w.index(), map[string][]string{}
	if !w.c.Repair.UseCatalogue {
		jobs = repair.NewIndex(w.k.Jobs)
	}
	risks := w.k.Risks.Risks
	if len(w.c.Repair.Lines) == 0 { // no job of the catalogue is called as a risk is
		risks = nil
	}
	for _, r := range risks {
		named[r.ID] = append(named[r.ID], r.ID)
		named[repair.PlainWords(r.Name)] = append(named[repair.PlainWords(r.Name)], r.ID)
	}
	for _, l := range w.planned((*repair.Planner).Settling) {
		settles := slices.Concat(jobs.Settles(l), named[l.ID], named[jobs.Plain(l.Job)])
		slices.Sort(settles)
		for _, risk := range slices.Compact(settles) {
			by[risk] = append(by[risk], l)
		}
	}
	return by
}
