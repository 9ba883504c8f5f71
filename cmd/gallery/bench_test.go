package main

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/valuation"
	"walkline/valuation/prob"
)

func TestTheBenchSetsWhatANewLotBeginsWith(t *testing.T) {
	s := opened(t, task.Inline{})
	s.press(fyne.KeyK)
	s.wants(t, "House rules", "Starter values, from memory")
	s.retyped("2,750")
	s.wants(t, "Yours.")
	s.window.NewLot()
	const id = 1
	if got := s.kept(t, id).Rules.MinProfit; got == nil || *got != 275000 {
		t.Errorf("a new lot's least profit is %v", got)
	}
	s.press(fyne.Key5)
	s.wants(t, "The terms of this lot are the Bench's.")
	others := 9
	s.window.Do(desk.EditLot("rivals", func(c *valuation.Case) { c.Market.Rivals = &others }))
	s.wants(t, "not the Bench's in: who else bids.")
	s.tap(t, "Take the Bench's terms")
	if got, _ := s.kept(t, id).Market.Others(); got != 4 {
		t.Errorf("with the Bench's terms %d rivals", got)
	}
	s.press(fyne.KeyK)
	s.undo()
	s.wants(t, "Undone: Least expected profit.")
}

// retyped puts words in the place of what the field with the keyboard says.
func (s *stage) retyped(words string) {
	field := s.screen.Canvas().Focused()
	field.(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
	for _, r := range words {
		field.TypedRune(r)
	}
}

// A part of the words and the keyboard alone add a job and a risk of the catalogue to a lot.
func TestCatalogueFieldsAreTypedAhead(t *testing.T) {
	s, id := worksheet(t, side, '3')
	for _, x := range []struct{ hint, typed string }{{"Add a job", "latch hood"}, {"Add a risk", "radiator crack"}} {
		field := s.suggests(t, x.hint)
		s.screen.Canvas().Focus(field)
		test.Type(field, x.typed)
		if !field.Open() || len(field.Facts()) == 0 {
			t.Fatalf("%q suggests %q", x.typed, field.Facts())
		}
		seen.Press(field, fyne.KeyReturn)
	}
	c := s.kept(t, id)
	line, risk := c.Repair.Lines[len(c.Repair.Lines)-1], c.Hidden.Risks[len(c.Hidden.Risks)-1]
	if line.ID != "hood_latch" || risk.ID != "radiator_leak" {
		t.Errorf("added %q and %q", line.Job, risk.ID)
	}
	s.wants(t, "Radiator or tank cracked behind the condenser")
}

// suggests returns the field for type-ahead whose hint has some words.
func (s *stage) suggests(t *testing.T, hint string) *widgets.Suggest {
	t.Helper()
	for _, f := range seen.All[*widgets.Suggest](s.screen.Content()) {
		if strings.Contains(f.PlaceHolder, hint) {
			return f
		}
	}
	t.Fatalf("no field hints %q", hint)
	return nil
}

// A change to a job on the Bench reaches the lots that it is called for, and not what is a lot's own.
func TestTheBenchsJobReachesTheLots(t *testing.T) {
	s, id := worksheet(t, side, '3')
	before := s.answer(t, id)
	s.window.Do(desk.EditOwn("bought in", func(o *valuation.Own) {
		for _, j := range s.know.Jobs.Jobs {
			j.Outside = prob.Certain(400)
			o.Jobs = append(o.Jobs, j)
		}
	}))
	if after := s.answer(t, id); after.WalkAway != nil && *after.WalkAway >= *before.WalkAway {
		t.Errorf("the walk-away bid was %v and is %v", *before.WalkAway, *after.WalkAway)
	}
}
