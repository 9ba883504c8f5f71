package widgets_test

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
)

func TestAReplyIsChosenByKeyAndPointer(t *testing.T) {
	var told []string
	r := widgets.NewReply([]string{"yes", "no", "not checked"}, func(a string) { told = append(told, a) })
	reached := 0
	r.OnReached = func() { reached++ }
	after := widgets.NewReply([]string{"yes", "no"}, nil)
	w := seen.Open(t, fyne.NewSize(500, 200), container.NewVBox(r, after))
	if r.Selected() != "not checked" || len(told) > 0 {
		t.Errorf("begins with %q, told %q", r.Selected(), told)
	}
	w.Canvas().Focus(r)
	test.Type(r, "yn")
	r.TypedKey(&fyne.KeyEvent{Name: fyne.KeyLeft})
	r.TypedKey(&fyne.KeyEvent{Name: fyne.KeyLeft}) // there is nothing further left
	test.Type(r, " ")
	r.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDelete})
	test.Tap(r) // in its middle
	if want := []string{"yes", "no", "yes", "no", "not checked"}; !slices.Equal(told[:5], want) || reached == 0 {
		t.Errorf("told %q, reached %d", told, reached)
	}
	test.TapAt(r, fyne.NewPos(4, 8))
	if r.Selected() != "yes" {
		t.Errorf("tapped at the left: %q", r.Selected())
	}
	r.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	if w.Canvas().Focused() != after {
		t.Error("down does not go to the next question")
	}
	n := len(told)
	r.Set("no")
	r.Set("maybe")
	if r.Selected() != "no" || len(told) != n {
		t.Errorf("set from code: %q, told %q", r.Selected(), told[n:])
	}
}
