package draw

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
)

// Parted is a widget that holds others, which may be brought into sight.
type Parted interface{ Parts() []fyne.CanvasObject }

// Reveal scrolls whatever an object lies in until the object is in sight. What takes the keyboard calls it: the toolkit moves the
// keyboard to fields that are out of sight, and leaves them there.
func Reveal(o fyne.CanvasObject) {
	c := CanvasOf(o)
	if c == nil {
		return
	}
	for _, root := range append(slices.Clone(c.Overlays().List()), c.Content()) {
		if root != nil && reveal(root, o) {
			return
		}
	}
}

// reveal reports whether o lies inside another object, and scrolls on the way back from it.
func reveal(inside, o fyne.CanvasObject) bool {
	if inside == o {
		return true
	}
	for _, part := range parts(inside) {
		if part == nil || !part.Visible() || !reveal(part, o) {
			continue
		}
		if s, ok := inside.(*container.Scroll); ok {
			Bring(s, o)
		}
		return true
	}
	return false
}

func parts(o fyne.CanvasObject) []fyne.CanvasObject {
	switch o := o.(type) {
	case *fyne.Container:
		return o.Objects
	case *container.Scroll:
		return []fyne.CanvasObject{o.Content}
	case *container.Split:
		return []fyne.CanvasObject{o.Leading, o.Trailing}
	case *widget.PopUp:
		return []fyne.CanvasObject{o.Content}
	case Parted:
		return o.Parts()
	}
	return nil
}

// Bring scrolls s up or down until an object of its content is in sight, with some room around it.
func Bring(s *container.Scroll, o fyne.CanvasObject) {
	place := fyne.CurrentApp().Driver().AbsolutePositionForObject
	top := place(o).Y - place(s.Content).Y
	bottom, sight := top+o.Size().Height, s.Size().Height
	switch {
	case top < s.Offset.Y && bottom+theme.Wide <= sight:
		s.ScrollToTop() // with the heading over it
	case top < s.Offset.Y:
		s.ScrollToOffset(fyne.NewPos(s.Offset.X, max(top-theme.Wide, 0)))
	case bottom > s.Offset.Y+sight:
		s.ScrollToOffset(fyne.NewPos(s.Offset.X, bottom-sight+theme.Wide))
	}
}
