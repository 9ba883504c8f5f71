package widgets

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"walkline/ui/task"
	"walkline/ui/theme"
	"walkline/ui/widgets/seen"
)

// completing opens a window with an entry that completes sales, and another field.
func completing(t *testing.T, each bool) (*TextEntry, fyne.Window) {
	e := NewTextEntry()
	e.Complete("Sale")
	if each {
		e.CompleteEach("Sale")
	}
	l := NewLayer(container.NewVBox(e, NewNumberEntry(Spec{}, nil)), task.Inline{})
	l.OnComplete = func(subject string) []Choice {
		if subject != "Sale" {
			t.Errorf("asked for %q", subject)
		}
		return []Choice{{"Harrow Flats", "Harrow Flats", ""}, {"Tern Landing", "Tern Landing", ""}, {"Harrow Mill", "Harrow Mill", ""}}
	}
	w := seen.Open(t, fyne.NewSize(500, 400), l)
	w.Canvas().Focus(e)
	return e, w
}

func TestEntryCompletesByKeyboard(t *testing.T) {
	e, _ := completing(t, false)
	var told string
	e.OnChanged = func(s string) { told = s }
	test.Type(e, "har")
	if !slices.Equal(e.Offers(), []string{"Harrow Flats", "Harrow Mill"}) {
		t.Fatalf("offers %q", e.Offers())
	}
	seen.Press(e, fyne.KeyDown, fyne.KeyDown, fyne.KeyUp, fyne.KeyDown, fyne.KeyReturn)
	if e.Text != "Harrow Mill" || told != e.Text || e.Offers() != nil {
		t.Errorf("took %q, told %q, offers %q", e.Text, told, e.Offers())
	}
	e.SetText("")
	seen.Press(e, fyne.KeyDown)
	if len(e.Offers()) != 3 {
		t.Errorf("Down in an empty entry offers %q", e.Offers())
	}
}

// What is typed stays free: Enter without a marked word hands it on as it is, and Escape closes the list before it means anything else.
func TestEntryCompletesNothingUnasked(t *testing.T) {
	e, w := completing(t, false)
	submitted, escaped := "", false
	e.OnSubmitted, e.OnEscape = func(s string) { submitted = s }, func() { escaped = true }
	test.Type(e, "har")
	seen.Press(e, fyne.KeyReturn)
	if submitted != "har" {
		t.Errorf("Enter handed %q on", submitted)
	}
	seen.Press(e, fyne.KeyEscape)
	if e.Offers() != nil || escaped {
		t.Errorf("Escape: offers %q, meant more %v", e.Offers(), escaped)
	}
	seen.Press(e, fyne.KeyEscape)
	if !escaped {
		t.Error("a second Escape means nothing")
	}
	seen.Press(e, fyne.KeyBackspace)
	if len(e.Offers()) != 2 {
		t.Errorf("after a letter less: %q", e.Offers())
	}
	w.Canvas().FocusNext()
	if e.Offers() != nil {
		t.Error("left open behind the keyboard")
	}
	e.SetText("ha")
	if e.Offers() != nil {
		t.Error("a text that was set offers words")
	}
}

func TestEntryCompletesByPointer(t *testing.T) {
	e, w := completing(t, false)
	test.Type(e, "har")
	at := e.completes.list.Position().AddXY(30, theme.Half+1.5*suggestStep())
	test.MoveMouse(w.Canvas(), at)
	test.TapCanvas(w.Canvas(), at)
	if e.Text != "Harrow Mill" || w.Canvas().Focused() != e || e.Offers() != nil {
		t.Errorf("took %q, focused %T, offers %q", e.Text, w.Canvas().Focused(), e.Offers())
	}
}

func TestEntryCompletesTheLastOfSeveral(t *testing.T) {
	e, _ := completing(t, true)
	test.Type(e, "Tern Landing, t")
	if got := e.Offers(); got != nil && slices.Contains(got, "Tern Landing") {
		t.Errorf("offers what is there: %q", got)
	}
	seen.Press(e, fyne.KeyBackspace)
	test.Type(e, "mill")
	seen.Press(e, fyne.KeyDown, fyne.KeyReturn)
	if e.Text != "Tern Landing, Harrow Mill" {
		t.Errorf("took %q", e.Text)
	}
}
