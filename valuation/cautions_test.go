package valuation_test

import (
	"slices"
	"testing"

	"walkline/valuation"
)

// No sentence of a caution stands twice, and none is lost. Words invented.
func TestNoCautionStandsTwice(t *testing.T) {
	var a valuation.Answer
	for _, caution := range []string{"Mind the dust (Orle et al. 2006). Wear a mask.", "",
		"Mind the dust (Orle et al. 2006). Wear a mask. Air the room.",
		"Air the room. Stand clear."} {
		a.Repair.Lines = append(a.Repair.Lines, valuation.LineFigure{Caution: caution})
	}
	a.Hidden.Risks = []valuation.RiskFigure{{Caution: "Stand clear."}, {Caution: "Wear a mask. Keep the papers."}}
	want := []string{"Mind the dust (Orle et al. 2006). Wear a mask.", "Air the room.", "Stand clear.", "Keep the papers."}
	if got := a.Cautions(); !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}
