package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
)

// Pair shows two objects side by side, the first scrolling, at its least width and a share of what is left. Where they have
// no room beside each other, as with large text, the second goes under the first and both scroll.
type Pair struct {
	widget.BaseWidget
	first, second fyne.CanvasObject
	share         float32
	column        *fyne.Container
	scroll        *container.Scroll
	stacked       bool
}

// NewPair returns the pair; share is of the spare width, for the first.
func NewPair(first, second fyne.CanvasObject, share float32) *Pair {
	p := &Pair{first: first, second: second, share: share, column: container.New(layout.NewCustomPaddedVBoxLayout(theme.Space)),
		scroll: container.NewVScroll(first)}
	p.ExtendBaseWidget(p)
	return p
}

// Parts returns what is on show side by side.
func (p *Pair) Parts() []fyne.CanvasObject { return (&pairRenderer{p}).Objects() }

// CreateRenderer returns the renderer.
func (p *Pair) CreateRenderer() fyne.WidgetRenderer { return &pairRenderer{p} }

type pairRenderer struct{ p *Pair }

func (r *pairRenderer) Destroy() {}
func (r *pairRenderer) Refresh() { r.p.scroll.Refresh(); r.p.second.Refresh() }

// Objects are the scroll, and beside it the second unless it is inside.
func (r *pairRenderer) Objects() []fyne.CanvasObject {
	if r.p.stacked {
		return []fyne.CanvasObject{r.p.scroll}
	}
	return []fyne.CanvasObject{r.p.scroll, r.p.second}
}

// MinSize asks for room for the wider of the two: they can always be stacked.
func (r *pairRenderer) MinSize() fyne.Size {
	return fyne.NewSize(max(r.p.first.MinSize().Width, r.p.second.MinSize().Width), r.p.scroll.MinSize().Height)
}

// Layout puts the second beside the first or under it.
func (r *pairRenderer) Layout(size fyne.Size) {
	p := r.p
	left := p.first.MinSize().Width
	spare := size.Width - left - theme.Wide - p.second.MinSize().Width
	if stack := spare < 0; stack != p.stacked {
		p.stack(stack)
	}
	if p.stacked {
		p.scroll.Resize(size)
		return
	}
	left += spare * p.share
	p.scroll.Resize(fyne.NewSize(left, size.Height))
	p.second.Move(fyne.NewPos(left+theme.Wide, 0))
	p.second.Resize(fyne.NewSize(size.Width-left-theme.Wide, size.Height))
}

// stack moves the second under the first, or out again.
func (p *Pair) stack(on bool) {
	p.stacked = on
	p.column.Objects = nil
	p.scroll.Content = p.first
	if on {
		p.column.Objects = []fyne.CanvasObject{p.first, p.second}
		p.scroll.Content = p.column
	}
	p.scroll.Refresh()
}
