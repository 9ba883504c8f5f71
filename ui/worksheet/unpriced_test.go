package worksheet

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"walkline/ui/desk"
	"walkline/ui/widgets"
	"walkline/ui/widgets/plan"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
	"walkline/valuation"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// bentFront is a job, a risk and a look that a hit at the front calls for; every figure is made up.
func bentFront() valuation.Knowledge {
	front := []lot.Sign{{Areas: []string{"12"}}}
	return valuation.Knowledge{
		Jobs: repair.Catalogue{Currency: "USD", Jobs: []repair.Job{{Line: repair.Line{ID: "hood", Job: "Replace the hood", Area: "12",
			Hours: map[string]prob.Three{"body": prob.Certain(2)}, Materials: prob.Certain(150)}, Calls: front}}},
		Risks: hidden.Catalogue{Currency: "USD", Risks: []hidden.Entry{{Risk: hidden.Risk{ID: "rail", Name: "Rail end bent",
			Caution: "Structure is the maker's to say.", Chance: hidden.Beta{A: 1, B: 3}, Cost: prob.Certain(400),
			Findings: []hidden.Evidence{{Finding: "gap", IfPresent: .8, IfAbsent: .1}}}, Triggers: front}},
			Findings: []hidden.Finding{{ID: "gap", Text: "Is the hood gap uneven?", Minutes: 1}}},
	}
}

// As soon as damage is marked, its work, its risks and its looks are there, with or without a resale price; there is no bid and no worth
// of a look without one, and the first price brings both.
func TestALotWithoutAPriceShowsWorkRisksAndLooks(t *testing.T) {
	c := plainCase()
	c.Resale.Guess, c.Hidden.Risks = nil, nil
	b := atKnowing(t, "Damage", c, bentFront())
	p := seen.All[*plan.Plan](b.page.Object())[0]
	p.Select("12")
	test.Type(p, "2")
	b.page.Go(slices.Index(Sections, "Repair"))
	lists := seen.All[*table.Table](b.page.Object())
	for i, want := range []string{"Replace the hood", "Rail end bent"} {
		if got := strings.Join(lists[i].Facts(), "; "); !strings.Contains(got, want) {
			t.Errorf("table %d says %q, want %q", i, got, want)
		}
	}
	b.wants(t, "Known work USD", "Hours expected by trade: body 2.0")
	b.page.Go(slices.Index(Sections, "Checks"))
	b.wants(t, "Is the hood gap uneven?", "is known once the lot has a resale price", "Structure is the maker's to say.")
	if b.State.Open.Valued != nil || b.State.Open.Outline.Answer.WalkAway != nil {
		t.Errorf("without a price there is the valuation %v and the bid %v", b.State.Open.Valued, b.State.Open.Outline.Answer.WalkAway)
	}
	b.edit("the guess", func(c *valuation.Case) { c.Resale.Guess = &prob.Three{Low: 11000, Likely: 13000, High: 15000} })
	if o := b.State.Open; o.Valued == nil || o.Outline != nil || o.Valued.Answer.WalkAway == nil {
		t.Fatalf("with a price the outline stands still: %+v", o.Outline)
	}
	b.edit("no guess", func(c *valuation.Case) { c.Resale.Guess, c.Damage = nil, nil })
	b.page.Go(slices.Index(Sections, "Repair"))
	if got := lists[0].Facts(); len(got) > 0 && strings.Contains(got[0], "hood") {
		t.Errorf("the damage is gone and so is the price; the work says %q", got)
	}
}

// Beside a bid on a rebuild alone stands one press that proposes the ways out, as one step.
func TestTheWaysOutAreProposedBesideTheBid(t *testing.T) {
	b := at(t, "Damage", plainCase())
	b.wants(t, "Only a rebuild is priced.")
	side := b.page.verdict.body
	for _, button := range seen.All[*widgets.Button](side) {
		if button.Text == "Propose starter values" {
			test.Tap(button)
		}
	}
	if want := "starter values for the ways out"; len(b.Steps) == 0 || b.Steps[len(b.Steps)-1] != want {
		t.Fatalf("the press did %q, want %q", b.Steps, want)
	}
	if b.Do(desk.Undo()); b.State.Open.Case.WaysOut.ForParts.Money != nil || b.State.Open.Case.WaysOut.AsItStands.Money != nil {
		t.Error("undone, values are left")
	}
}
