package valuation

import (
	"fmt"
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

// settling returns the lines of known work by the risks that they put right.
func (w *work) settling() map[string][]repair.Line {
	by, jobs := map[string][]repair.Line{}, w.index()
	if !w.c.Repair.UseCatalogue {
		jobs = repair.NewIndex(w.k.Jobs)
	}
	for _, l := range w.planned((*repair.Planner).Settling) {
		for _, risk := range jobs.Settles(l) {
			by[risk] = append(by[risk], l)
		}
	}
	return by
}
