package worksheet

import (
	"slices"
	"testing"

	"walkline/ui/desk"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/valuation"
	"walkline/valuation/prob"
	"walkline/valuation/repair"

	"fyne.io/fyne/v2"
)

// A yard's word is typed beside the estimate: it counts once price and yard are there, stands in the place of the estimate, leaves it as it
// was, and goes when its price is taken away.
func TestAQuoteStandsBesideTheEstimate(t *testing.T) {
	c := plainCase()
	c.Repair.Lines = []repair.Line{{ID: "hood", Job: "Replace the hood", Area: "12", Operation: "replace", Edited: true,
		Parts: []repair.Part{{Name: "hood", Options: []repair.Option{{Source: "used", Price: prob.Three{Low: 60, Likely: 110, High: 190}}}}}}}
	b := at(t, "Repair", c)
	b.page.work.choose(0)
	b.page.work.line.rail.Go(groupParts)
	said := func() *repair.Quote { return b.State.Open.Case.Repair.Lines[0].Parts[0].Options[0].Quote }
	var yard *widgets.TextEntry
	for _, e := range seen.All[*widgets.TextEntry](b.page.Object()) {
		if e.PlaceHolder == "who was asked" {
			yard = e
		}
	}
	if yard == nil {
		t.Fatal("there is no field for a quote")
	}
	retype(b.window, b.priceSaid(t).Focus(), "180")
	if said() != nil {
		t.Errorf("a price that nobody said counts: %+v", said())
	}
	b.wants(t, "not counted yet: enter who said it")
	retype(b.window, yard, "Harrow Flats parts")
	if q := said(); q == nil || *q != (repair.Quote{Yard: "Harrow Flats parts", Day: "2026-11-20", Price: 180}) {
		t.Fatalf("the quote is %+v", q)
	}
	b.wants(t, "Harrow Flats parts said USD 180 today")
	if o := b.State.Open.Case.Repair.Lines[0].Parts[0].Options[0]; o.Price != (prob.Three{Low: 60, Likely: 110, High: 190}) ||
		o.Asked() != prob.Certain(180) {
		t.Errorf("the source is %+v", o)
	}
	if list := valuation.Shopping([]valuation.Case{b.State.Open.Case}, valuation.Knowledge{}); len(list) != 1 || list[0].Said == nil ||
		*list[0].Said != *said() {
		t.Errorf("the shopping list says %+v", list)
	}
	if cost := b.State.Open.Valued.Answer.Repair.Mean; cost != 180 {
		t.Errorf("the repair is reckoned at %v", cost)
	}
	retype(b.window, b.priceSaid(t).Focus(), "")
	seen.Press(b.priceSaid(t).Focus(), fyne.KeyBackspace)
	if said() != nil {
		t.Errorf("taken away, the quote is %+v", said())
	}
	if b.Do(desk.Undo()); said() == nil {
		t.Error("undo does not bring the quote back")
	}
	b.wants(t, "said USD 180 today")
}

// priceSaid returns the field of the price that was said: the last number of the line's side.
func (b *bench) priceSaid(t *testing.T) *widgets.NumberEntry {
	t.Helper()
	all := seen.All[*widgets.NumberEntry](b.page.work.line.body)
	if len(all) == 0 {
		t.Fatal("no numbers beside the table")
	}
	return all[len(all)-1]
}

// A part that is in hand takes one action, says so as the reason of the bid that moved, and is on no shopping list; undone, all is as
// before.
func TestAPartInHandTakesOneAction(t *testing.T) {
	c := plainCase()
	c.Repair.Lines = []repair.Line{{ID: "hood", Job: "Replace the hood", Area: "12", Operation: "replace", Edited: true,
		Parts: []repair.Part{{Name: "hood", Options: []repair.Option{{Source: "used", Price: prob.Certain(1110), Freight: prob.Certain(90)}}}}}}
	b := at(t, "Repair", c)
	b.page.work.choose(0)
	b.page.work.line.rail.Go(groupParts)
	was := *b.State.Open.Valued.Answer.WalkAway
	press(t, b, "In hand: hood")
	o := b.State.Open
	if p := o.Case.Repair.Lines[0].Parts[0]; !p.InHand() || o.Valued.Answer.Repair.Mean != 0 {
		t.Fatalf("the part is %+v, the repair %v", p, o.Valued.Answer.Repair.Mean)
	}
	if is := *o.Valued.Answer.WalkAway; is <= was || !slices.Contains(b.Steps, "in hand: hood") {
		t.Errorf("the bid went from %v to %v by the step %q", was, is, b.Steps)
	}
	if list := valuation.Shopping([]valuation.Case{o.Case}, valuation.Knowledge{}); len(list) != 0 {
		t.Errorf("the shopping list has %+v", list)
	}
	press(t, b, "Not in hand: hood")
	if o := b.State.Open; *o.Valued.Answer.WalkAway != was || o.Case.Repair.Lines[0].Parts[0].InHand() {
		t.Error("it did not go back")
	}
}
