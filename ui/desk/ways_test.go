package desk_test

import (
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/donor"
	"walkline/valuation/prob"
)

// What is proposed is one step of the lot, says what it is, leaves what is there, and is taken back whole.
func TestWaysOutAreProposedAndTakenBack(t *testing.T) {
	u := newUser(t)
	u.Know.Parts = donor.Catalogue{Format: donor.Format, Terms: donor.Terms{Scrap: prob.Certain(200), Runs: donor.Running{Unknown: 1}},
		Assemblies: []donor.Assembly{{ID: "door", Name: "door", Price: prob.Certain(300), Chance: 1, Hours: 2}}}
	u.start()
	c := sound("14")
	c.Market.HammerGuess = nil
	id := u.add(c)[0]
	s := u.well(desk.OpenLot(id), desk.ProposeWays(false))
	w := s.Open.Case.WaysOut
	if w.ForParts.Money == nil || !w.ForParts.Starter || w.AsItStands.Money == nil {
		t.Errorf("proposed %+v", w)
	}
	if !strings.Contains(s.Notice, "Starter values, from memory") || !strings.Contains(s.Notice, "As it stands: a share of what") {
		t.Errorf("it says %q", s.Notice)
	}
	s = u.well(desk.EditLot("parts", func(c *valuation.Case) { c.WaysOut.ForParts.Money = &prob.Three{Low: 1, Likely: 2, High: 3} }),
		desk.ProposeWays(false))
	if m := s.Open.Case.WaysOut.ForParts.Money; *m != (prob.Three{Low: 1, Likely: 2, High: 3}) {
		t.Errorf("what was there became %v", m)
	}
	if s = u.well(desk.Undo(), desk.Undo()); s.Open.Case.WaysOut.ForParts.Money != nil {
		t.Errorf("after undo %+v", s.Open.Case.WaysOut.ForParts)
	}
}
