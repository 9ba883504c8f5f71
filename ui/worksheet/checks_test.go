package worksheet

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/valuation"
	"walkline/valuation/checks"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// looked is a lot with three looks: the second is worth most, the third tells of what costs nothing.
func looked() (valuation.Case, valuation.Knowledge) {
	c := plainCase()
	c.Hidden.Risks = nil
	for _, r := range []struct {
		id, finding string
		cost        float64
	}{{"mount", "hood_gap", 300}, {"rail", "rail_wave", 1500}, {"trim", "trim_loose", 0}} {
		c.Hidden.Risks = append(c.Hidden.Risks, hidden.Risk{ID: r.id, Name: "Bad " + r.id, Chance: hidden.Beta{A: 1, B: 2},
			Cost:     prob.Certain(r.cost),
			Findings: []hidden.Evidence{{Finding: r.finding, IfPresent: .8, IfAbsent: .1}}})
	}
	c.Market.HammerGuess = &prob.Three{Low: 8000, Likely: 9500, High: 12000}
	k := valuation.Knowledge{Risks: hidden.Catalogue{Findings: []hidden.Finding{
		{ID: "hood_gap", Text: "Is the gap uneven?", Minutes: 1, Where: "front"},
		{ID: "trim_loose", Text: "Is trim loose?", Minutes: 1, Where: "front"},
		{ID: "rail_wave", Text: "Is there a wave?", Look: "Look low.", Tools: "flashlight", Minutes: 2, Where: "underneath"}}}}
	return c, k
}

// order returns the questions among the texts of the page, as they stand.
func (b *bench) order(questions ...string) []string {
	var found []string
	for _, text := range seen.Texts(b.page.Object()) {
		for _, q := range questions {
			if strings.HasPrefix(text, q) {
				found = append(found, q)
			}
		}
	}
	return found
}

func press(t *testing.T, b *bench, words string) {
	t.Helper()
	for _, button := range seen.All[*widgets.Button](b.page.Object()) {
		if button.Text == words {
			test.Tap(button)
			return
		}
	}
	t.Fatalf("no button %q", words)
}

func atChecks(t *testing.T, c valuation.Case, k valuation.Knowledge) *bench {
	t.Helper()
	b := atKnowing(t, "Checks", c, k)
	if len(b.State.Open.Faults) > 0 || b.State.Open.Valued == nil {
		t.Fatal(b.State.Open.Faults, b.State.Open.Problem)
	}
	return b
}

func TestLooksStandByWorthAndKeepTheirPlaces(t *testing.T) {
	c, k := looked()
	b := atChecks(t, c, k)
	questions := []string{"Is the gap uneven?", "Is there a wave?", "Is trim loose?"}
	if got := b.order(questions...); !slices.Equal(got, []string{"Is there a wave?", "Is the gap uneven?", "Is trim loose?"}) {
		t.Errorf("%q", got)
	}
	b.wants(t, "worth USD", "can't change the bid", "Best 10 minutes: 2 looks, 3 min, together worth USD", "(your guess)", "Tool: flashlight.")
	before := *b.State.Open.Valued.Answer.WalkAway
	seen.All[*widgets.Reply](b.page.Object())[0].Choose("yes")
	if b.State.Open.Case.Findings["rail_wave"] != "yes" || *b.State.Open.Valued.Answer.WalkAway >= before {
		t.Errorf("answered %v, walk-away %d, before %d", b.State.Open.Case.Findings, *b.State.Open.Valued.Answer.WalkAway, before)
	}
	if got := b.order(questions...); got[0] != "Is there a wave?" {
		t.Errorf("an answer moved the rows: %q", got)
	}
	press(t, b, "Put in order again")
	if got := b.order(questions...); got[2] != "Is there a wave?" {
		t.Errorf("put in order again: %q", got)
	}
}

func TestOneWalkRound(t *testing.T) {
	c, k := looked()
	b := atChecks(t, c, k)
	for _, s := range seen.All[*widgets.Select](b.page.Object()) {
		s.SetSelected(byWalk)
	}
	if got := b.order("Front, 2 min", "Is the gap uneven?", "Is trim loose?", "Underneath, 2 min", "Is there a wave?"); !slices.Equal(got,
		[]string{"Front, 2 min", "Is the gap uneven?", "Is trim loose?", "Underneath, 2 min", "Is there a wave?"}) {
		t.Errorf("%q", got)
	}
}

func TestACertainFindingBecomesARepairLine(t *testing.T) {
	c, k := looked()
	b := atChecks(t, c, k)
	seen.All[*widgets.Reply](b.page.Object())[0].Choose("yes")
	b.wants(t, "Certain: Bad rail")
	press(t, b, "Repair line")
	if n := len(b.State.Open.Case.Repair.Lines); n != 1 || b.State.Open.Case.Repair.Lines[0].Job != "Repair: Bad rail" {
		t.Errorf("%+v", b.State.Open.Case.Repair.Lines)
	}
	if got := b.Steps[len(b.Steps)-1]; got != "repair line for Bad rail" {
		t.Errorf("undo would take back %q", got)
	}
	if got := b.order("Is there a wave?"); len(got) != 0 {
		t.Error("the look at what is known is still asked for")
	}
}

func TestStopsAndWhatDoesNotAgreeStandOnTop(t *testing.T) {
	c, k := looked()
	c.Lot.Title.Document = "junk"
	c.Lot.Airbags = []string{"front"}
	b := atChecks(t, c, k)
	b.wants(t, "Stop: The title reads \"junk\"", "Take care: A front airbag is entered as deployed",
		"no look changes the bid until it is cleared")
}

func TestListsAreTicked(t *testing.T) {
	c, k := looked()
	k.Packs = []checks.Pack{{ID: "US-XX", Name: "Harrow", Documents: []checks.Row{{Text: "The blue form.",
		Source: checks.Source{Status: "from memory"}}},
		PrivateSales: &checks.Limit{Most: 3, Months: 12, Row: checks.Row{Text: "Three a year.",
			Source: checks.Source{Status: "from memory"}}}}}
	c.Lot.Title = lot.Title{RegisterIn: "US-XX"}
	b := atChecks(t, c, k)
	b.wants(t, "Keep from the day of purchase", "The blue form.", "Harrow: From memory: ask the agency.", "Bring to the sale",
		"others are not known")
	ticks := seen.All[*tick](b.page.Object())
	ticks[0].SetChecked(true)
	if len(b.State.Open.Case.Findings) != 1 || b.State.Open.Case.Findings["bring_paper"] != "no" {
		t.Errorf("%v", b.State.Open.Case.Findings)
	}
	ticks[0].SetChecked(false)
	if len(b.State.Open.Case.Findings) != 0 {
		t.Errorf("%v", b.State.Open.Case.Findings)
	}
	numbers := seen.All[*widgets.NumberEntry](b.page.Object())
	retype(b.window, numbers[len(numbers)-1].Focus(), "3")
	if n := b.State.Open.Standing.Stated; n == nil || *n != 3 {
		t.Errorf("sold %v", n)
	}
	b.wants(t, "You say 3", "With this one it would be 4, which is more.")
}

func TestTheGuessOfTheHammerPriceIsEntered(t *testing.T) {
	c, k := looked()
	c.Market.HammerGuess = nil
	b := atChecks(t, c, k)
	b.wants(t, "You have no guess of the hammer price")
	three := seen.All[*widgets.ThreeEntry](b.page.Object())[0]
	three.OnChanged(prob.Three{Low: 8000, Likely: 9000, High: 10000})
	if g := b.State.Open.Case.Market.HammerGuess; g == nil || g.Likely != 9000 {
		t.Errorf("%v", g)
	}
	b.wants(t, "most likely at 9,000 (your guess)")
}

func TestTheRowInHandIsBroughtIntoSight(t *testing.T) {
	c, k := looked()
	b := atChecks(t, c, k)
	room := b.page.sections[5].body.(*container.Scroll)
	ticks := seen.All[*tick](b.page.Object())
	b.window.Canvas().Focus(ticks[len(ticks)-1])
	if room.Offset.Y == 0 {
		t.Error("the last box has the keyboard and is out of sight")
	}
	b.window.Canvas().Focus(seen.All[*widgets.Reply](b.page.Object())[0])
	top := fyne.CurrentApp().Driver().AbsolutePositionForObject(seen.All[*widgets.Reply](b.page.Object())[0]).Y
	if low := fyne.CurrentApp().Driver().AbsolutePositionForObject(room).Y; top < low {
		t.Errorf("the first look stands at %g, above the page's %g", top, low)
	}
	test.Type(b.window.Canvas().Focused(), "y")
	if b.State.Open.Case.Findings["rail_wave"] != "yes" {
		t.Errorf("%v", b.State.Open.Case.Findings)
	}
}

// Another caution in the place of one is shown, and the verdict says how many there are.
func TestCautionsAreThoseOfTheLot(t *testing.T) {
	c, k := looked()
	c.Hidden.Risks[0].Caution = "Restraints hold charges."
	b := atChecks(t, c, k)
	b.wants(t, "Take care: Restraints hold charges.", "1 caution stands under Checks.")
	b.edit("another", func(c *valuation.Case) { c.Hidden.Risks[0].Caution = "Batteries reignite." })
	b.wants(t, "Take care: Batteries reignite.")
}
