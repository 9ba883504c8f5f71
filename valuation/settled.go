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
	by, of := map[string][]repair.Line{}, map[string][]string{}
	for _, j := range w.k.Jobs.Jobs {
		if len(j.Settles) > 0 {
			of[j.ID] = append(of[j.ID], j.Settles...)
			of[repair.PlainWords(j.Job)] = append(of[repair.PlainWords(j.Job)], j.Settles...)
		}
	}
	for _, r := range w.k.Risks.Risks {
		of[r.ID] = append(of[r.ID], r.ID)
		of[repair.PlainWords(r.Name)] = append(of[repair.PlainWords(r.Name)], r.ID)
	}
	if len(of) == 0 {
		return nil
	}
	for _, l := range w.plan() {
		settles := slices.Concat(of[l.ID], of[repair.PlainWords(l.Job)])
		slices.Sort(settles)
		for _, risk := range slices.Compact(settles) {
			by[risk] = append(by[risk], l)
		}
	}
	return by
}
