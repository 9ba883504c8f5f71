package view

import (
	"slices"

	"walkline/valuation/learn"
	"walkline/valuation/score"
)

// quantile returns a foretold quantile, 0 where the figure does not have it.
func quantile(f learn.Figure, chance float64) float64 {
	if i := slices.Index(score.Chances, chance); i >= 0 && f.Known() {
		return f.Q[i]
	}
	return 0
}
