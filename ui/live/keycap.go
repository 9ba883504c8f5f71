package live

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
)

// keycap shows a key with what it does, and does it when tapped.
type keycap struct {
	widget.BaseWidget
	cap, words *big
	tapped     func()
}

func newKeycap(cap, words string, tapped func()) *keycap {
	k := &keycap{cap: newBig(nameSize), words: newBig(keySize), tapped: tapped}
	k.cap.strong = true
	k.cap.set(cap)
	k.words.set(words)
	k.ExtendBaseWidget(k)
	return k
}

// Tapped does what the key does.
func (k *keycap) Tapped(*fyne.PointEvent) { k.tapped() }

// Cursor says that the key can be tapped.
func (k *keycap) Cursor() desktop.Cursor { return desktop.PointerCursor }

// CreateRenderer returns the renderer.
func (k *keycap) CreateRenderer() fyne.WidgetRenderer {
	edge := canvas.NewRectangle(color.Transparent)
	edge.StrokeColor, edge.StrokeWidth, edge.CornerRadius = theme.Color(theme.ColorLiveForeground), 1.5, theme.Half
	return &keycapRenderer{keycap: k, edge: edge}
}

type keycapRenderer struct {
	keycap *keycap
	edge   *canvas.Rectangle
}

func (r *keycapRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.edge, r.keycap.cap, r.keycap.words}
}

func (r *keycapRenderer) MinSize() fyne.Size { return fyne.NewSize(60, 24) }
func (r *keycapRenderer) Destroy()           {}
func (r *keycapRenderer) Refresh()           { r.edge.Refresh() }

func (r *keycapRenderer) Layout(size fyne.Size) {
	side := min(size.Height, 40*theme.Scale())
	top := (size.Height - side) / 2
	r.edge.Move(fyne.NewPos(0, top))
	r.edge.Resize(fyne.NewSquareSize(side))
	inset := side / 6
	r.keycap.cap.Move(fyne.NewPos((side-r.capWidth())/2, top+inset))
	r.keycap.cap.Resize(fyne.NewSize(side, side-2*inset))
	r.keycap.words.Move(fyne.NewPos(side+theme.Space, top))
	r.keycap.words.Resize(fyne.NewSize(size.Width-side-2*theme.Space, side))
}

// capWidth is the width of the letter on the key.
func (r *keycapRenderer) capWidth() float32 {
	return fyne.MeasureText(r.keycap.cap.words, r.keycap.cap.most*theme.Scale(), fyne.TextStyle{Bold: true}).Width
}
