package main

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
	"walkline/valuation/repair"
)

// TestALineIsReachedByKeyboardAndGetsAPart walks to a line, goes to its fields by Enter, and gives it a part with a source.
func TestALineIsReachedByKeyboardAndGetsAPart(t *testing.T) {
	s, id := worksheet(t, "27", '3')
	s.wants(t, "Hours expected by trade: body ")
	lines := seen.All[*table.Table](s.screen.Content())[0]
	s.screen.Canvas().Focus(lines)
	seen.Press(lines, fyne.KeyDown, fyne.KeyReturn)
	if s.screen.Canvas().Focused() == fyne.Focusable(lines) {
		t.Fatal("Enter does not go to the line's fields")
	}
	own := func() repair.Line {
		c := s.kept(t, id)
		return c.Repair.Lines[len(c.Repair.Lines)-1]
	}
	s.tap(t, "Parts")
	s.tap(t, "Add a part")
	parts := own().Parts
	if len(parts) == 0 || parts[len(parts)-1].Options[0].Source != "used" || parts[len(parts)-1].Fallback == nil {
		t.Fatalf("the line has the parts %+v", parts)
	}
	s.tap(t, "Remove this part")
	if got := own().Parts; len(got) != len(parts)-1 {
		t.Errorf("%d parts are left of %d", len(got), len(parts))
	}
}

// At 1280 x 720 a dozen lines of work are in sight at once.
func TestADozenLinesAreInSight(t *testing.T) {
	s, _ := worksheet(t, "27", '3')
	lines := seen.All[*table.Table](s.screen.Content())[0]
	bottom := fyne.CurrentApp().Driver().AbsolutePositionForObject(lines).Y + lines.Size().Height
	whole := map[float32]bool{}
	seen.Walk(lines, func(o fyne.CanvasObject) {
		if words, ok := o.(*canvas.Text); ok && words.Text != "" {
			if y := fyne.CurrentApp().Driver().AbsolutePositionForObject(o).Y; y+words.MinSize().Height <= bottom {
				whole[y] = true
			}
		}
	})
	if rows := len(whole) - 1; rows < 12 { // the headings stand on a line of their own
		t.Errorf("%d lines of work are in sight", rows)
	}
}
