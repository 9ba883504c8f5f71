package valuation

import (
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/repair"
)

// How likely a fact is bad where it is not known: that there are no keys, and each of the four ways in which a vehicle stands.
// Starter values, from memory: replace them with yours by entering the fact.
const (
	keysMissing = 0.3
	eachState   = 0.25
)

// guess is a lot as it may be, with its chance.
type guess struct {
	lot    lot.Lot
	chance float64
}

// guesses returns the lots that this one may be where a fact is not known, the others being as they are.
func guesses(l lot.Lot) []guess {
	var out []guess
	if l.Keys == nil {
		none := false
		without := l
		without.Keys = &none
		out = append(out, guess{without, keysMissing})
	}
	if l.Condition == "unknown" {
		for _, state := range lot.Conditions {
			if state != l.Condition {
				as := l
				as.Condition = state
				out = append(out, guess{as, eachState})
			}
		}
	}
	return out
}

// unsure adds to planned lines those that a fact which is not known may call for, at the chance that it does: what is not known is never
// read as its best.
func unsure(lines []repair.Line, l lot.Lot, plan func(lot.Lot) []repair.Line) []repair.Line {
	at := map[string]int{}
	for i, x := range lines {
		at[x.ID] = i
	}
	known := len(lines)
	for _, g := range guesses(l) {
		for _, x := range plan(g.lot) {
			chance := g.chance * repair.Or(x.Chance, 1)
			if i, there := at[x.ID]; !there {
				x.Chance = &chance
				at[x.ID], lines = len(lines), append(lines, x)
			} else if i >= known {
				sum := min(1, *lines[i].Chance+chance)
				lines[i].Chance = &sum
			}
		}
	}
	return lines
}

// unsureRisks is unsure for hidden damage.
func unsureRisks(risks []hidden.Risk, l lot.Lot, raise func(lot.Lot) []hidden.Risk) []hidden.Risk {
	at := map[string]int{}
	for i, x := range risks {
		at[x.ID] = i
	}
	known := len(risks)
	for _, g := range guesses(l) {
		for _, x := range raise(g.lot) {
			n, more := x.Chance.A+x.Chance.B, g.chance*x.Chance.A
			if i, there := at[x.ID]; !there {
				x.Chance = hidden.Beta{A: more, B: n - more}
				at[x.ID], risks = len(risks), append(risks, x)
			} else if i >= known {
				risks[i].Chance = hidden.Beta{A: risks[i].Chance.A + more, B: risks[i].Chance.B - more}
			}
		}
	}
	return risks
}
