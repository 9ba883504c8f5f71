package hindsight

import (
	"walkline/valuation/hammer"
	"walkline/valuation/score"
)

// HammerKey is the key of the record of what lots went for.
const HammerKey = "hammer"

// Hammered holds what lots went for, won by whomever, against what was foretold of each by the results before it. It has no score: results
// may be in several currencies. Shape: results in the order of their days.
func Hammered(results []hammer.Result) FigureRecord {
	s := hammer.NewStudy(results)
	return FigureRecord{Key: HammerKey, Name: "Hammer price", N: s.N, Coverage: []score.Coverage{s.Coverage}, PIT: s.Tenths, Uneven: s.Uneven,
		Unscored: s.N}
}
