package desk

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"walkline/valuation"
)

// ProposeWays puts starter values for both ways out into the open lot, where it says nothing of them yet. Parts that the law may forbid to
// sell count only where that is allowed. One step of the lot.
func ProposeWays(allowed bool) Action {
	return keeps("starter values for the ways out", func(ctx context.Context, d *Desk, s State, a Action) State {
		if s.Open == nil {
			return s
		}
		p, err := valuation.ProposeWays(s.Open.Case, d.Knowledge(), allowed)
		if err != nil {
			return s.troubled("propose the ways out", err)
		}
		edit := EditLot(a.words, func(c *valuation.Case) { c.WaysOut = p.WaysOut })
		return ifKept(edit.do(ctx, d, s, edit), proposedWords(s.Open.Case.WaysOut, p))
	})
}

// proposedWords says what was proposed beside the ways that there were, and what could not be.
func proposedWords(before valuation.WaysOut, p valuation.Proposed) string {
	said := []string{"Starter values, from memory: replace them with yours."}
	if len(p.Parts) > 0 {
		said = append(said, fmt.Sprintf("For parts: %d assemblies that the survey leaves sound.", len(p.Parts)))
	}
	if before.AsItStands.Money == nil && p.WaysOut.AsItStands.Money != nil {
		said = append(said, "As it stands: a share of what the lot is worth to its next buyer, and no more than your guess of the hammer "+
			"price leaves.")
	}
	return strings.Join(slices.Concat(said, p.Notes, p.Missing), " ")
}
