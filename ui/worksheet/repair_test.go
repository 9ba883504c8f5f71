package worksheet

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/desk"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
	"walkline/valuation"
	"walkline/valuation/hidden"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// twoLines is a plain case with two lines of the user's; the names and hours are made up.
func twoLines() valuation.Case {
	c := plainCase()
	for _, name := range []string{"Straighten the apron",
		"Replace the left rear window regulator and its motor, with the inner shell trimmed"} {
		c.Repair.Lines = append(c.Repair.Lines, repair.Line{ID: name, Job: name, Area: "12", Operation: "repair", Edited: true,
			Hours: map[string]prob.Three{"body": prob.Certain(1)}})
	}
	return c
}

func TestALineJustAddedIsTheOneThatEnterOpens(t *testing.T) {
	b := at(t, "Repair", twoLines())
	lines := seen.All[*table.Table](b.page.Object())[0]
	b.page.work.addBlank()
	if at := lines.Selected(); at < 0 || b.page.work.rows[at].Line.Job != "New work" {
		t.Errorf("row %d is marked, beside it stands the line just added", at)
	}
	b.edit("undo", func(c *valuation.Case) { c.Repair.Lines = c.Repair.Lines[:2] })
	if lines.Selected() >= 0 {
		t.Error("a row is marked, beside it stands that none is")
	}
}

func TestAHiddenRiskIsRemovedByKeyAndComesBack(t *testing.T) {
	c := twoLines()
	c.Hidden.Risks = []hidden.Risk{{ID: "mine", Name: "Rail end bent", Chance: hidden.Beta{A: 1, B: 1}, Cost: prob.Certain(1000)}}
	b := at(t, "Repair", c)
	risks := seen.All[*table.Table](b.page.Object())[1]
	there := func() bool { return strings.Contains(risks.Facts()[0], "Rail end bent") }
	if !there() {
		t.Fatalf("%q", risks.Facts())
	}
	for _, remove := range []func(){func() { seen.Press(risks, fyne.KeyHome, fyne.KeyDelete) }, func() { risks.Menu(0)[0].Action() }} {
		if remove(); there() || b.Steps[len(b.Steps)-1] != "remove Rail end bent" {
			t.Errorf("%q did %q", risks.Facts(), b.Steps)
		}
		b.Do(desk.Undo())
		if !there() {
			t.Error("undo did not bring it back")
		}
	}
	seen.Press(risks, fyne.KeyHome, fyne.KeyDelete)
	b.page.work.restore.OnTapped()
	if !there() || b.page.work.restore.Visible() {
		t.Errorf("restored, %q", risks.Facts())
	}
}

func TestALongNameOfALineTakesNoRoomFromTheTable(t *testing.T) {
	b := at(t, "Repair", twoLines())
	var least [2]float32
	for i := range least {
		b.page.work.choose(i)
		least[i] = b.page.work.line.body.MinSize().Width
	}
	if least[0] != least[1] {
		t.Errorf("the line's side is at least %v wide, %v for the long name", least[0], least[1])
	}
}

// What a yard said, however long, takes no room from the table.
func TestAQuoteTakesNoRoomFromTheTable(t *testing.T) {
	c := twoLines()
	q := &repair.Quote{Yard: "Harrow Flats parts and salvage, second gate behind the mill", Phone: "555-0142", Day: "2026-11-20", Price: 180}
	for i, said := range []*repair.Quote{nil, q} {
		c.Repair.Lines[i].Parts = []repair.Part{{Name: "hood", Options: []repair.Option{{Source: "used", Price: prob.Certain(110), Quote: said}}}}
	}
	b := at(t, "Repair", c)
	var least [2]float32
	for i := range least {
		b.page.work.choose(i)
		least[i] = b.page.work.line.groups[groupParts].body.MinSize().Width
	}
	if least[0] != least[1] {
		t.Errorf("the line's side is at least %v wide, %v with a quote", least[0], least[1])
	}
}

// A donor vehicle is planned with by one button: its line is shown with its fields, another line's tick takes its parts off it, and it is
// left out again by one step.
func TestADonorIsPlannedWith(t *testing.T) {
	c := twoLines()
	for i := range c.Repair.Lines {
		c.Repair.Lines[i].Parts = []repair.Part{{Name: "hood", Options: []repair.Option{{Source: "used", Price: prob.Certain(110)}}}}
	}
	b := at(t, "Repair", c)
	if b.page.work.planDonor(); b.State.Open.Case.Repair.Donor != nil || !strings.Contains(b.State.Notice, "no price of a donor") {
		t.Fatalf("without a catalogue: %+v, %q", b.State.Open.Case.Repair.Donor, b.State.Notice)
	}
	b = atKnowing(t, "Repair", c, valuation.Knowledge{Jobs: repair.Catalogue{Jobs: []repair.Job{{Line: repair.Line{ID: repair.DonorJob,
		Parts: []repair.Part{{Options: []repair.Option{{Source: repair.DonorSource, Price: prob.Certain(2900)}}}}}}}}})
	b.page.work.planDonor()
	lines := seen.All[*table.Table](b.page.Object())[0]
	if d := b.State.Open.Case.Repair.Donor; d == nil || len(d.Feeds) != 2 || b.page.work.rows[lines.Selected()].Line.ID != repair.DonorLine {
		t.Fatalf("%+v", d)
	}
	b.wants(t, "Donor is hit at", "Leave the donor out", "Starter values, from memory")
	if words := b.State.Notice; !strings.Contains(words, "at a starter price, not yours: USD 2,900") ||
		!strings.Contains(words, "the walk-away bid goes from USD") || !strings.Contains(words, "It does not pay") {
		t.Errorf("what the donor does is not said: %q", words)
	}
	if facts := strings.Join(lines.Facts(), "\n"); strings.Count(facts, "2,900") != 1 {
		t.Errorf("the donor is not paid once: %s", facts)
	}
	b.page.work.chosen = c.Repair.Lines[0].ID
	b.show(b.State)
	b.page.work.line.rail.Go(groupParts)
	b.tick(t, "ask it first")
	if d := b.State.Open.Case.Repair.Donor; len(d.Feeds) != 1 || d.Fed(c.Repair.Lines[0].ID) {
		t.Errorf("the first line's parts come off it still: %v", d.Feeds)
	}
	if b.Do(desk.Undo()); len(b.State.Open.Case.Repair.Donor.Feeds) != 2 {
		t.Errorf("taken back: %v", b.State.Open.Case.Repair.Donor.Feeds)
	}
	if b.Do(desk.LeaveDonor()); b.State.Open.Case.Repair.Donor != nil || !b.page.work.donor.Visible() {
		t.Error("the donor stays")
	}
}

// A line's side says in full what is done with the line and what its boxes hold, whatever the height: nothing of it scrolls away.
func TestTheLinesSideShowsRemoveAndItsGroups(t *testing.T) {
	b := at(t, "Repair", twoLines())
	b.page.work.choose(0)
	body := b.page.work.line.body
	for _, want := range []string{"Remove this line", "Work", "Hours", "Parts"} {
		if !seen.Says(body, want) {
			t.Errorf("the side does not say %q", want)
		}
	}
	b.page.work.line.rail.Go(groupHours)
	for _, want := range []string{"low", "likely", "high"} {
		if !seen.Says(body, want) {
			t.Errorf("no box is named %q", want)
		}
	}
	scrolls := seen.All[*container.Scroll](body)
	if len(scrolls) != 1 {
		t.Fatalf("%d panes scroll", len(scrolls))
	}
	for _, button := range seen.All[*widgets.Button](scrolls[0]) {
		if button.Text == "Remove this line" {
			t.Error("the button scrolls with the fields")
		}
	}
}
