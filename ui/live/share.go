package live

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/theme"
)

// shared lays objects out along one way, each with its part of the room.
type shared struct {
	parts []float32
	down  bool
}

func under(parts []float32, objects ...fyne.CanvasObject) fyne.CanvasObject {
	return container.New(&shared{parts, true}, objects...)
}

func beside(parts []float32, objects ...fyne.CanvasObject) fyne.CanvasObject {
	return container.New(&shared{parts, false}, objects...)
}

// MinSize asks for nothing: the page takes the room that there is.
func (s *shared) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.Size{} }

func (s *shared) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	gap := theme.Wide
	if s.down {
		gap = theme.Half
	}
	gaps := gap * float32(len(objects)-1)
	at := float32(0)
	for i, o := range objects {
		if s.down {
			height := (size.Height - gaps) * s.parts[i]
			o.Move(fyne.NewPos(0, at))
			o.Resize(fyne.NewSize(size.Width, height))
			at += height + gap
			continue
		}
		width := (size.Width - gaps) * s.parts[i]
		o.Move(fyne.NewPos(at, 0))
		o.Resize(fyne.NewSize(width, size.Height))
		at += width + gap
	}
}
