package record

import (
	"testing"

	"fyne.io/fyne/v2"

	"walkline/ui/widgets/plot"
	"walkline/ui/widgets/seen"
	"walkline/valuation/learn"
)

// By hand: 12 h at 40 become 15 at 1.25, 120 more.
func TestAFactorSaysWhatItMeansInMoneyWithAPicture(t *testing.T) {
	s := some()
	s.Record.Currency, s.Record.Usual = "USD", map[string]learn.Usual{"hours/body": {Hours: 12, Money: 480}}
	s.Reach.Undo, s.Record.Waiting = "Materials accepted", 2
	p, a := shown(t, s, "Factors")
	seen.Press(p.First(), fyne.KeyDown)
	says(t, p, "on an average lot 12.0 h become 15.0, which is USD 120 more", "Not counted yet: 2 ended builds with open questions.")
	if all := seen.All[*plot.Scatter](p.Object()); len(all) == 0 {
		t.Error("no picture of the buys")
	}
	tap(t, p, "Undo: Materials accepted")
	if len(a.did) == 0 {
		t.Error("nothing is undone")
	}
}
