package view

import (
	"slices"
	"testing"

	"walkline/valuation/hindsight"
	"walkline/valuation/score"
)

func TestNoOutcomeIsNoVerdictOnARange(t *testing.T) {
	f := hindsight.FigureRecord{Coverage: []score.Coverage{score.NewCoverage(0.8, 0, 0), score.NewCoverage(0.8, 4, 5)}}
	rows := Coverage(f)
	if want := []string{"80 %", "", "", "", "no outcome"}; !slices.Equal(rows[0], want) {
		t.Errorf("without an outcome: %q, not %q", rows[0], want)
	}
	if got := rows[1]; got[1] != "4 of 5" || got[4] != "as stated" {
		t.Errorf("4 of 5: %q", got)
	}
}
