package widgets

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/test"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
	"walkline/ui/widgets/seen"
	"walkline/valuation/prob"
)

// retype empties a field and types into it, as a person would.
func retype(w fyne.Window, f *field, typed string) {
	w.Canvas().Focus(f)
	f.put("")
	test.Type(f, typed)
}

func TestNumberEntryReadsAndSaysWhatItUnderstood(t *testing.T) {
	var got []float64
	e := NewNumberEntry(Spec{Kind: Money, Unit: "USD", Digits: 2}, func(n Number) { got = append(got, n.Float()) })
	w := seen.Open(t, fyne.NewSize(500, 60), e)
	retype(w, e.field, "1.2k")
	if !slices.Equal(got, []float64{1, 1.2, 1200}) {
		t.Errorf("changes: %v", got)
	}
	if said(&e.say) != "= USD 1,200" {
		t.Errorf("beside the field: %q", said(&e.say))
	}
	w.Canvas().Unfocus()
	if e.field.Text != "1,200" || said(&e.say) != "" {
		t.Errorf("left: %q, beside it %q", e.field.Text, said(&e.say))
	}
}

func TestNumberEntryKeepsInvalidTextToItself(t *testing.T) {
	calls := 0
	e := NewNumberEntry(Spec{Kind: Whole, Unit: "mi"}, func(Number) { calls++ })
	w := seen.Open(t, fyne.NewSize(500, 60), e)
	e.SetValue(Known(52000))
	retype(w, e.field, "x")
	w.Canvas().Unfocus()
	if calls != 0 {
		t.Errorf("an invalid text was told %d times", calls)
	}
	if want := `! "x" is not a number`; said(&e.say) != want || e.field.Text != "x" {
		t.Errorf("beside the field %q, in it %q", said(&e.say), e.field.Text)
	}
	if !slices.Equal(e.Facts(), []string{`"x" is not a number`}) {
		t.Errorf("facts: %q", e.Facts())
	}
	e.SetValue(Known(52000))
	if e.field.Text != "x" {
		t.Error("showing the same value again wiped what was typed")
	}
	seen.Press(e.field, fyne.KeyEscape)
	if e.field.Text != "52,000" || e.Fault() != "" {
		t.Errorf("after Escape: %q, %q", e.field.Text, e.Fault())
	}
}

// What a wrong text begins with is not kept: an odometer of 84.000 is not 84, nor is a price.
func TestTheBeginningOfAWrongTextIsNotKept(t *testing.T) {
	var miles []Number
	e := NewNumberEntry(Spec{Kind: Whole, Unit: "mi", Optional: true}, func(n Number) { miles = append(miles, n) })
	w := seen.Open(t, fyne.NewSize(500, 60), e)
	retype(w, e.field, "84.000")
	if last := miles[len(miles)-1]; last.Known || e.Value().Known || !strings.Contains(e.Fault(), "84,000 or 84") {
		t.Errorf("it keeps %+v, fault %q", miles, e.Fault())
	}
	retype(w, e.field, "84000")
	w.Canvas().Unfocus()
	retype(w, e.field, "9.500")
	if got := e.Value().Int(); got != 84000 || e.field.Text != "9.500" {
		t.Errorf("it keeps %d under %q", got, e.field.Text)
	}
	retype(w, e.field, "52000")
	retype(w, e.field, "7.100") // typed over, without leaving the field
	if got := e.Value().Int(); got != 52000 {
		t.Errorf("it keeps %d", got)
	}
	var price []prob.Three
	three := NewThreeEntry(Spec{Kind: Money, Unit: "USD"}, func(v prob.Three) { price = append(price, v) })
	three.SetValue(prob.Certain(500))
	w = seen.Open(t, fyne.NewSize(700, 60), three)
	retype(w, three.fields[1], "7x")
	if three.Value() != prob.Certain(500) || three.fields[1].Text != "7x" {
		t.Errorf("it keeps %+v under %q, told %+v", three.Value(), three.fields[1].Text, price)
	}
}

func TestNumberEntrySetValueIsSilent(t *testing.T) {
	e := NewNumberEntry(Spec{Kind: Percent}, func(Number) { t.Error("told") })
	seen.Open(t, fyne.NewSize(500, 60), e)
	e.SetValue(Known(0.3))
	if e.field.Text != "30" || e.unit.Text.Text != "%" {
		t.Errorf("shows %q %q", e.field.Text, e.unit.Text.Text)
	}
}

func TestNumberEntryLeavesTypingAloneWhenItMeansTheValue(t *testing.T) {
	e := NewNumberEntry(Spec{}, nil)
	w := seen.Open(t, fyne.NewSize(500, 60), e)
	e.OnChanged = func(n Number) { e.SetValue(n) } // a page renders what it was told
	retype(w, e.field, "1200.50")
	if e.field.Text != "1200.50" {
		t.Errorf("typing became %q", e.field.Text)
	}
}

func TestNumberEntryOptionalIsUnknownWhenEmptied(t *testing.T) {
	var last Number
	e := NewNumberEntry(Spec{Kind: Whole, Unit: "mi", Optional: true}, func(n Number) { last = n })
	w := seen.Open(t, fyne.NewSize(500, 60), e)
	retype(w, e.field, "5")
	seen.Press(e.field, fyne.KeyBackspace)
	if last.Known || e.Value().Known || !slices.Equal(e.Facts(), []string{"not known"}) {
		t.Errorf("last %v, facts %q", last, e.Facts())
	}
}

func TestNumberEntryEnterSubmits(t *testing.T) {
	var sent []int
	e := NewNumberEntry(Spec{Kind: Whole}, nil)
	e.OnSubmitted = func(n Number) { sent = append(sent, n.Int()) }
	w := seen.Open(t, fyne.NewSize(500, 60), e)
	retype(w, e.field, "7x")
	seen.Press(e.field, fyne.KeyReturn)
	seen.Press(e.field, fyne.KeyBackspace, fyne.KeyReturn)
	if !slices.Equal(sent, []int{7}) {
		t.Errorf("sent %v", sent)
	}
}

func TestThreeEntry(t *testing.T) {
	var got []prob.Three
	e := NewThreeEntry(Spec{Unit: "h", Least: Bound(0)}, func(v prob.Three) { got = append(got, v) })
	w := seen.Open(t, fyne.NewSize(600, 60), e)
	e.SetValue(prob.Three{Low: 2, Likely: 4, High: 8})
	if e.fields[0].Text != "2" || e.fields[1].Text != "4" || e.fields[2].Text != "8" {
		t.Fatalf("shows %q %q %q", e.fields[0].Text, e.fields[1].Text, e.fields[2].Text)
	}
	retype(w, e.fields[0], "5")
	if len(got) != 0 || said(&e.say) != "! low is above likely" {
		t.Errorf("told %v, beside it %q", got, said(&e.say))
	}
	retype(w, e.fields[0], "3")
	retype(w, e.fields[2], "12")
	want := prob.Three{Low: 3, Likely: 4, High: 12}
	if len(got) == 0 || got[len(got)-1] != want || e.Value() != want {
		t.Errorf("told %v", got)
	}
	if !slices.Equal(e.Facts(), []string{"low 3 h, likely 4 h, high 12 h"}) {
		t.Errorf("facts %q", e.Facts())
	}
}

func TestThreeEntryTakesTheLikelyValueAlone(t *testing.T) {
	var last prob.Three
	e := NewThreeEntry(Spec{Unit: "h"}, func(v prob.Three) { last = v })
	w := seen.Open(t, fyne.NewSize(600, 60), e)
	for _, f := range e.fields {
		f.put("")
	}
	retype(w, e.fields[1], "5")
	if last != prob.Certain(5) || said(&e.say) != "= 5 h, certain" {
		t.Errorf("told %v, beside it %q", last, said(&e.say))
	}
	w.Canvas().Unfocus()
	if e.fields[0].Text != "5" || e.fields[2].Text != "5" {
		t.Errorf("left as %q %q %q", e.fields[0].Text, e.fields[1].Text, e.fields[2].Text)
	}
}

func TestEntriesWalkByTab(t *testing.T) {
	a, b := NewNumberEntry(Spec{}, nil), NewThreeEntry(Spec{}, nil)
	w := seen.Open(t, fyne.NewSize(600, 120), container.NewVBox(a, b))
	w.Canvas().Focus(a.Focus())
	for _, want := range b.fields {
		w.Canvas().FocusNext()
		if w.Canvas().Focused() != want {
			t.Fatalf("the keyboard went to %v", w.Canvas().Focused())
		}
	}
}

func TestReasonsFitBesideTheField(t *testing.T) {
	e := NewNumberEntry(Spec{}, nil)
	seen.Open(t, fyne.NewSize(600, 60), e)
	for _, r := range refusals() {
		e.say.fault(r.want)
		if width := e.say.words.MinSize().Width; width+theme.Space > sayRoom {
			t.Errorf("%q takes %v of %v", r.want, width, sayRoom)
		}
		if r.want == "" || r.spec.Kind != Plain {
			continue
		}
		e.say.fault("likely: " + r.want)
		if width := e.say.words.MinSize().Width; width+theme.Space > threeRoom {
			t.Errorf("%q of three takes %v of %v", r.want, width, threeRoom)
		}
	}
}

func TestEntriesLook(t *testing.T) {
	seen.Picture(t, "entries", fyne.NewSize(620, 260), func() fyne.CanvasObject {
		a := NewNumberEntry(Spec{Kind: Money, Unit: "USD", Digits: 2}, nil)
		a.field.SetText("1.2k")
		b := NewNumberEntry(Spec{Kind: Whole, Unit: "mi"}, nil)
		b.field.SetText("12,5")
		c := NewThreeEntry(Spec{Unit: "h"}, nil)
		c.SetValue(prob.Three{Low: 2, Likely: 4.5, High: 8})
		d := NewThreeEntry(Spec{Unit: "h"}, nil)
		d.SetValue(prob.Three{Low: 2, Likely: 4.5, High: 8})
		d.fields[0].SetText("6")
		return container.NewVBox(a, b, c, d)
	})
}

// TestUndoTakesBackWhatWasNotTakenFirst types rubbish and asks for undo: the field goes back to its number, and the window is not asked.
func TestUndoTakesBackWhatWasNotTakenFirst(t *testing.T) {
	e := NewNumberEntry(Spec{Kind: Whole, Unit: "mi"}, func(Number) {})
	w := seen.Open(t, fyne.NewSize(500, 60), e)
	asked := 0
	w.Canvas().AddShortcut(&fyne.ShortcutUndo{}, func(fyne.Shortcut) { asked++ })
	e.SetValue(Known(52000))
	retype(w, e.field, "x")
	e.field.TypedShortcut(&fyne.ShortcutUndo{})
	if e.field.Text != "52,000" || asked != 0 {
		t.Errorf("the field says %q, the window was asked %d times", e.field.Text, asked)
	}
	if e.field.TypedShortcut(&fyne.ShortcutUndo{}); asked != 1 {
		t.Errorf("the window was asked %d times", asked)
	}
}

// TestATablePastedIntoAFieldGoesToTheWindow pastes one number, which the field takes, and rows of cells, which it does not.
func TestATablePastedIntoAFieldGoesToTheWindow(t *testing.T) {
	e := NewNumberEntry(Spec{Kind: Whole, Unit: "mi"}, func(Number) {})
	w := seen.Open(t, fyne.NewSize(500, 60), e)
	asked := 0
	w.Canvas().AddShortcut(&fyne.ShortcutPaste{}, func(fyne.Shortcut) { asked++ })
	w.Canvas().Focus(e.field)
	board := fyne.CurrentApp().Clipboard()
	for text, want := range map[string]int{"52000\n": 0, "price\tyear\n9000\t2017\n": 1} {
		board.SetContent(text)
		asked = 0
		e.field.put("")
		e.field.TypedShortcut(&fyne.ShortcutPaste{Clipboard: board})
		if asked != want || (e.field.Text == "") != (want == 1) {
			t.Errorf("%q: the window was asked %d times, the field says %q", text, asked, e.field.Text)
		}
	}
}

// said is what stands beside a field, or under it where something is wrong.
func said(s *say) string {
	if s.wrong {
		return s.under.String()
	}
	return s.words.Text.Text
}

// Unknown is never zero: where nothing may be known the fields stand empty, and emptying them takes the judgement away.
func TestThreeEntryStandsEmptyWhileNothingIsKnown(t *testing.T) {
	var got []prob.Three
	e := NewThreeEntry(Spec{}, func(v prob.Three) { got = append(got, v) })
	w := seen.Open(t, fyne.NewSize(500, 60), e)
	if e.fields[1].Text != "0" {
		t.Errorf("a zero that is known says %q", e.fields[1].Text)
	}
	e.SetBlank()
	if e.fields[0].Text+e.fields[1].Text+e.fields[2].Text != "" || e.Fault() != "" || !slices.Equal(e.Facts(), []string{"not known"}) {
		t.Errorf("%q, fault %q, facts %q", e.fields[1].Text, e.Fault(), e.Facts())
	}
	e.SetValue(prob.Three{Low: 1, Likely: 2, High: 3})
	for _, f := range e.fields {
		w.Canvas().Focus(f)
		seen.Press(f, fyne.KeyBackspace)
	}
	w.Canvas().Unfocus()
	if len(got) == 0 || !got[len(got)-1].Zero() || e.fields[1].Text != "" {
		t.Errorf("emptied: %v, %q", got, e.fields[1].Text)
	}
}

// Escape in a field of a dialog leads out of the dialog; on a page it leaves the page alone.
func TestEscapeInAFieldLeadsOutOfADialog(t *testing.T) {
	escaped, page, asked := 0, NewTextEntry(), NewTextEntry()
	w := seen.Open(t, fyne.NewSize(500, 200), page)
	w.Canvas().SetOnTypedKey(func(e *fyne.KeyEvent) { escaped++ })
	w.Canvas().Focus(page)
	if seen.Press(page, fyne.KeyEscape); escaped != 0 {
		t.Error("Escape left the page")
	}
	d := dialog.NewCustom("Put rows right", "Back", asked, w)
	d.Show()
	w.Canvas().Focus(asked)
	if seen.Press(asked, fyne.KeyA, fyne.KeyEscape); escaped != 1 {
		t.Errorf("Escape came through %d times of 1", escaped)
	}
}

// What takes the keyboard on the first screen of a page is shown with the heading over it.
func TestTheFirstFieldComesIntoSightWithItsHeading(t *testing.T) {
	first, body := NewTextEntry(), container.NewVBox(NewCaption("Vehicle"), NewCaption("As the list says."))
	body.Add(first)
	for range 20 {
		body.Add(NewTextEntry())
	}
	pane := container.NewVScroll(body)
	seen.Open(t, fyne.NewSize(400, 300), pane)
	pane.ScrollToBottom()
	if draw.Bring(pane, first); pane.Offset.Y != 0 {
		t.Errorf("the page stands at %v", pane.Offset.Y)
	}
	pane.ScrollToBottom()
	if draw.Bring(pane, body.Objects[15]); pane.Offset.Y == 0 {
		t.Error("a field further down went out of sight")
	}
}
