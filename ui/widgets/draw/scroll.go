package draw

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// Scroll hands the wheel of the mouse to the innermost pane that scrolls and holds an object.
func Scroll(o fyne.CanvasObject, e *fyne.ScrollEvent) {
	c := CanvasOf(o)
	if c == nil {
		return
	}
	for _, root := range append([]fyne.CanvasObject{c.Content()}, c.Overlays().List()...) {
		if root != nil && scrolled(root, o, e) == outside {
			continue
		}
		return
	}
}

// How far the search for a pane has come.
const (
	outside = iota // the object is not in here
	inside         // it is, and no pane has scrolled yet
	done
)

func scrolled(in, o fyne.CanvasObject, e *fyne.ScrollEvent) int {
	if in == o {
		return inside
	}
	for _, part := range parts(in) {
		if part == nil || !part.Visible() {
			continue
		}
		found := scrolled(part, o, e)
		if s, ok := in.(*container.Scroll); ok && found == inside {
			s.Scrolled(e)
			return done
		}
		if found != outside {
			return found
		}
	}
	return outside
}

// Clamp scrolls every pane inside an object back to where its content is: what has become shorter would leave it blank.
func Clamp(o fyne.CanvasObject) {
	if o == nil || !o.Visible() {
		return
	}
	if s, ok := o.(*container.Scroll); ok && (s.Offset.Y > 0 || s.Offset.X > 0) {
		least := s.Content.MinSize()
		if s.Offset.Y > max(least.Height-s.Size().Height, 0) || s.Offset.X > max(least.Width-s.Size().Width, 0) {
			s.Content.Resize(least.Max(s.Size()))
			s.Refresh()
		}
	}
	for _, part := range parts(o) {
		Clamp(part)
	}
}
