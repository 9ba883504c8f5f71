package widgets

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// Zoomed is a picture that can be looked at closely: the wheel zooms about the pointer, a drag moves it, a double click shows it whole.
type Zoomed struct {
	widget.BaseWidget

	whole   image.Image
	picture *canvas.Image
	zoom    float32       // 1: the whole picture is in sight
	middle  fyne.Position // of what is in sight, as shares of the picture
}

const (
	mostZoom = 8
	zoomStep = 1.25
)

// NewZoomed returns a widget without a picture.
func NewZoomed() *Zoomed {
	z := &Zoomed{picture: &canvas.Image{FillMode: canvas.ImageFillStretch}}
	z.ExtendBaseWidget(z)
	z.Fit()
	return z
}

// SetPicture shows a picture, whole; nil: none.
func (z *Zoomed) SetPicture(p image.Image) {
	z.whole = p
	z.Fit()
}

// Fit shows the whole picture.
func (z *Zoomed) Fit() {
	z.zoom, z.middle = 1, fyne.NewPos(.5, .5)
	z.Refresh()
}

// Zoom returns how many times larger the picture is than when all of it is in sight.
func (z *Zoomed) Zoom() float32 { return z.zoom }

// In goes so many steps closer; fewer than 0: away.
func (z *Zoomed) In(steps float32) { z.about(steps, fyne.NewPos(z.Size().Width/2, z.Size().Height/2)) }

// Pan moves what is in sight by a share of it.
func (z *Zoomed) Pan(x, y float32) {
	seen := z.sight()
	z.middle = z.middle.AddXY(x*seen.Width, y*seen.Height)
	z.Refresh()
}

// about zooms so that what is under a point stays there.
func (z *Zoomed) about(steps float32, at fyne.Position) {
	size := z.Size()
	if z.whole == nil || size.Width <= 0 || size.Height <= 0 {
		return
	}
	from := fyne.NewPos(at.X/size.Width-.5, at.Y/size.Height-.5)
	before := z.sight()
	for ; steps > 0; steps-- {
		z.zoom = min(z.zoom*zoomStep, mostZoom)
	}
	for ; steps < 0; steps++ {
		z.zoom = max(z.zoom/zoomStep, 1)
	}
	after := z.sight()
	z.middle = z.middle.AddXY(from.X*(before.Width-after.Width), from.Y*(before.Height-after.Height))
	z.Refresh()
}

// sight is how much of the picture's width and height the widget shows; above 1 there is room beside it.
func (z *Zoomed) sight() fyne.Size {
	size := z.Size()
	if z.whole == nil || size.Width <= 0 || size.Height <= 0 {
		return fyne.NewSize(1, 1)
	}
	wide, high := float32(z.whole.Bounds().Dx()), float32(z.whole.Bounds().Dy())
	fit := min(size.Width/wide, size.Height/high) * z.zoom // points a pixel
	return fyne.NewSize(size.Width/(wide*fit), size.Height/(high*fit))
}

// Scrolled zooms about the pointer.
func (z *Zoomed) Scrolled(e *fyne.ScrollEvent) {
	switch {
	case e.Scrolled.DY > 0:
		z.about(1, e.Position)
	case e.Scrolled.DY < 0:
		z.about(-1, e.Position)
	}
}

// Dragged moves the picture with the pointer.
func (z *Zoomed) Dragged(e *fyne.DragEvent) {
	if size := z.Size(); size.Width > 0 && size.Height > 0 {
		z.Pan(-e.Dragged.DX/size.Width, -e.Dragged.DY/size.Height)
	}
}

// DragEnd does nothing: the picture stays where it is.
func (z *Zoomed) DragEnd() {}

// DoubleTapped shows the whole picture.
func (z *Zoomed) DoubleTapped(*fyne.PointEvent) { z.Fit() }

// place keeps what is in sight on the picture, cuts it out and lays it out.
func (z *Zoomed) place() {
	parts, ok := z.whole.(interface {
		SubImage(image.Rectangle) image.Image
	})
	size := z.Size()
	if !ok || size.Width <= 0 || size.Height <= 0 {
		z.picture.Image = z.whole
		z.picture.Resize(size)
		return
	}
	seen, b := z.sight(), z.whole.Bounds()
	shown := fyne.NewSize(min(seen.Width, 1), min(seen.Height, 1))
	z.middle.X = min(max(z.middle.X, shown.Width/2), 1-shown.Width/2)
	z.middle.Y = min(max(z.middle.Y, shown.Height/2), 1-shown.Height/2)
	left := b.Min.X + int((z.middle.X-shown.Width/2)*float32(b.Dx()))
	top := b.Min.Y + int((z.middle.Y-shown.Height/2)*float32(b.Dy()))
	right, bottom := left+int(shown.Width*float32(b.Dx())+.5), top+int(shown.Height*float32(b.Dy())+.5)
	z.picture.Image = parts.SubImage(image.Rect(left, top, right, bottom))
	room := fyne.NewSize(size.Width*shown.Width/seen.Width, size.Height*shown.Height/seen.Height)
	z.picture.Move(fyne.NewPos((size.Width-room.Width)/2, (size.Height-room.Height)/2))
	z.picture.Resize(room)
}

// CreateRenderer returns the renderer.
func (z *Zoomed) CreateRenderer() fyne.WidgetRenderer { return zoomedRenderer{z} }

type zoomedRenderer struct{ z *Zoomed }

func (r zoomedRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.z.picture} }
func (r zoomedRenderer) MinSize() fyne.Size           { return fyne.NewSize(1, 1) }
func (r zoomedRenderer) Destroy()                     {}
func (r zoomedRenderer) Layout(fyne.Size)             { r.Refresh() }

func (r zoomedRenderer) Refresh() {
	r.z.place()
	r.z.picture.Refresh()
}
