package widgets

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"walkline/ui/widgets/seen"
	"walkline/valuation/prob"
)

// What is wrong stands under its field, whole, however narrow the page: nothing of it is cut at the page's edge.
func TestWhatIsWrongStandsUnderTheFieldWhole(t *testing.T) {
	number := NewNumberEntry(Spec{Least: Bound(0)}, nil)
	three := NewThreeEntry(Spec{}, func(prob.Three) {})
	for _, e := range []struct {
		entry fyne.CanvasObject
		focus fyne.Focusable
		fault func() string
	}{{number, number.Focus(), number.Fault}, {three, three.Focus(), three.Fault}} {
		below := NewCaption("the next field")
		page := container.NewVBox(e.entry, below)
		w := seen.Open(t, fyne.NewSize(230, 300), page)
		before := below.Position().Y
		test.Type(e.focus, "twelve hundred and a half")
		w.Resize(fyne.NewSize(231, 300))
		said := strings.Join(strings.Fields(strings.Join(seen.Texts(e.entry), " ")), " ")
		if fault := e.fault(); fault == "" || !strings.Contains(said, fault) {
			t.Errorf("%T: %q is said of %q", e.entry, said, fault)
		}
		if below.Position().Y <= before {
			t.Errorf("%T: the next field stays at %v, over what is wrong", e.entry, before)
		}
	}
}
