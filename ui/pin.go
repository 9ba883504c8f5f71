package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
)

// pin keeps the bid of the lot in hand in sight on every page: beside the places, or below them where the text is large. A press leads to
// what the bid still needs, or to where it comes from.
type pin struct {
	press *widgets.Button
	moved *widget.Label
	bar   *fyne.Container
	shown view.Pin
}

func newPin(do func(desk.Action), lead func(desk.Place)) *pin {
	p := &pin{moved: widget.NewLabel("")}
	p.press = widgets.NewButton("", func() {
		if p.shown.Seek != "" {
			do(desk.Seek(p.shown.Seek))
			return
		}
		lead(desk.Why)
	})
	p.moved.Truncation = fyne.TextTruncateEllipsis
	p.bar = container.NewBorder(nil, nil, p.press, nil, p.moved)
	p.bar.Hide()
	return p
}

// render writes the bid of the moment; without a lot in hand there is none.
func (p *pin) render(s desk.State) {
	if s.InHand() == nil {
		p.bar.Hide()
		return
	}
	now := view.PinOf(s)
	if now != p.shown {
		p.shown = now
		p.press.Importance = widget.MediumImportance
		if now.Refused {
			p.press.Importance = widget.WarningImportance
		}
		p.press.SetText(now.Figure)
		p.moved.SetText(now.Moved)
	}
	p.bar.Show()
}

// head lays the strip of places and the pin beside each other, or below each other where the text is large.
type head struct{}

// besideScale is the largest text scale at which places and pin share a line. Starter value: looked at in the pictures at 1280 points.
const besideScale = 1.15

func (head) MinSize(objects []fyne.CanvasObject) fyne.Size {
	strip, pin := objects[0].MinSize(), objects[1].MinSize()
	if theme.Scale() <= besideScale {
		return fyne.NewSize(strip.Width+theme.Wide+pin.Width, strip.Height)
	}
	if !objects[1].Visible() {
		return strip
	}
	return fyne.NewSize(max(strip.Width, pin.Width), strip.Height+theme.Half+pin.Height)
}

func (head) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	strip, pin := objects[0], objects[1]
	least := strip.MinSize()
	strip.Move(fyne.NewPos(0, 0))
	if theme.Scale() <= besideScale {
		strip.Resize(fyne.NewSize(least.Width, size.Height))
		pin.Move(fyne.NewPos(least.Width+theme.Wide, 0))
		pin.Resize(fyne.NewSize(size.Width-least.Width-theme.Wide, size.Height))
		return
	}
	strip.Resize(fyne.NewSize(size.Width, least.Height))
	pin.Move(fyne.NewPos(0, least.Height+theme.Half))
	pin.Resize(fyne.NewSize(size.Width, pin.MinSize().Height))
}
