package widgets

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

// Thumbnail is a small picture with a word under it. A click opens it, and so do Enter and space.
type Thumbnail struct {
	widget.BaseWidget
	OnOpen func()

	words   string
	img     image.Image
	focused bool
}

var (
	_ fyne.Focusable     = (*Thumbnail)(nil)
	_ desktop.Cursorable = (*Thumbnail)(nil)
)

// thumbnailWidth and thumbnailHeight are the room of the picture, in points.
const (
	thumbnailWidth  float32 = 112
	thumbnailHeight float32 = 84
)

// NewThumbnail returns a thumbnail that waits for its picture.
func NewThumbnail(words string, open func()) *Thumbnail {
	t := &Thumbnail{words: words, OnOpen: open}
	t.ExtendBaseWidget(t)
	return t
}

// SetImage shows the picture.
func (t *Thumbnail) SetImage(img image.Image) {
	t.img = img
	t.Refresh()
}

// SetTrouble says that the picture cannot be shown; the large view says why.
func (t *Thumbnail) SetTrouble() {
	t.words = "! not readable"
	t.Refresh()
}

// Tapped opens the picture.
func (t *Thumbnail) Tapped(*fyne.PointEvent) {
	draw.FocusOn(t)
	t.open()
}

func (t *Thumbnail) open() {
	if t.OnOpen != nil {
		t.OnOpen()
	}
}

// TypedKey opens the picture with Enter or space.
func (t *Thumbnail) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		t.open()
	}
}

// TypedRune does nothing: a picture takes no text.
func (t *Thumbnail) TypedRune(rune) {}

// FocusGained shows the focus ring.
func (t *Thumbnail) FocusGained() { t.focused = true; t.Refresh() }

// FocusLost hides the focus ring.
func (t *Thumbnail) FocusLost() { t.focused = false; t.Refresh() }

// Cursor is a hand: the picture can be opened.
func (t *Thumbnail) Cursor() desktop.Cursor { return desktop.PointerCursor }

// CreateRenderer returns the renderer.
func (t *Thumbnail) CreateRenderer() fyne.WidgetRenderer {
	r := &thumbnailRenderer{of: t, ground: canvas.NewRectangle(theme.Color(theme.ColorPlanFill)),
		picture: &canvas.Image{FillMode: canvas.ImageFillContain},
		ring:    draw.NewFocusRing(), words: draw.NewText(t.words, theme.SizeSmall, theme.ColorMuted)}
	r.Refresh()
	return r
}

type thumbnailRenderer struct {
	of      *Thumbnail
	ground  *canvas.Rectangle
	picture *canvas.Image
	ring    *canvas.Rectangle
	words   *draw.Text
}

// edge is the room for the focus ring round the picture.
const edge float32 = 4

func (r *thumbnailRenderer) MinSize() fyne.Size {
	width := max(thumbnailWidth, draw.TextWidth(r.of.words, theme.SizeSmall, fyne.TextStyle{}))
	return fyne.NewSize(width+2*edge, thumbnailHeight+2*edge+draw.LineHeight(theme.SizeSmall))
}

func (r *thumbnailRenderer) Layout(size fyne.Size) {
	room := fyne.NewSize(size.Width-2*edge, thumbnailHeight)
	for _, o := range []fyne.CanvasObject{r.ground, r.picture} {
		o.Resize(room)
		o.Move(fyne.NewPos(edge, edge))
	}
	r.words.Place(fyne.NewPos(edge, edge+thumbnailHeight+2), 0)
	draw.ShowFocus(r.ring, r.of.focused, fyne.NewSize(size.Width, thumbnailHeight+2*edge))
}

func (r *thumbnailRenderer) Refresh() {
	r.ground.FillColor = theme.Color(theme.ColorPlanFill)
	r.ground.Refresh()
	r.picture.Image = r.of.img
	r.picture.Refresh()
	r.words.Text.Text = r.of.words
	r.words.Dress()
	r.words.Refresh()
	r.Layout(r.of.Size())
}

func (r *thumbnailRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.picture, r.ring, r.words.Text}
}

func (r *thumbnailRenderer) Destroy() {}
