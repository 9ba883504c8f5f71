package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

// NoteKind is how grave a note is.
type NoteKind int

// The kinds of notes, each with a word and a shape of its own.
const (
	Info NoteKind = iota // "Note", a circle
	Care                 // "Take care", a triangle
	Stop                 // "Stop", an eight-sided sign
)

var noteWords = map[NoteKind]string{Info: "Note", Care: "Take care", Stop: "Stop"}

// Note is a line that says something beside the figures: a shape, a word for how grave it is, and the text, which wraps.
type Note struct {
	widget.BaseWidget
	kind NoteKind
	text string
	body *widget.Label
}

// NewNote returns a note.
func NewNote(kind NoteKind, text string) *Note {
	n := &Note{body: widget.NewLabel("")}
	n.body.Wrapping = fyne.TextWrapWord
	n.ExtendBaseWidget(n)
	n.Set(kind, text)
	return n
}

// Set changes kind and text.
func (n *Note) Set(kind NoteKind, text string) {
	n.kind, n.text = kind, text
	n.body.SetText(n.Facts()[0])
	n.Refresh()
}

// Facts returns the note in words.
func (n *Note) Facts() []string { return []string{noteWords[n.kind] + ": " + n.text} }

// CreateRenderer returns the renderer.
func (n *Note) CreateRenderer() fyne.WidgetRenderer {
	r := &noteRenderer{note: n, ground: canvas.NewRectangle(color.Transparent), circle: canvas.NewCircle(color.Transparent),
		polygon: canvas.NewPolygon(3, color.Transparent)}
	r.ground.CornerRadius = theme.Half
	r.dress()
	return r
}

type noteRenderer struct {
	note    *Note
	ground  *canvas.Rectangle
	circle  *canvas.Circle
	polygon *canvas.Polygon
}

func (r *noteRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.circle, r.polygon, r.note.body}
}

func (r *noteRenderer) sign() float32 { return draw.LineHeight(theme.SizeBody) - 4 }

// dress takes colours and shape for the kind.
func (r *noteRenderer) dress() {
	ground, sign := theme.ColorWarningBackground, theme.ColorWarning
	if r.note.kind == Info {
		ground, sign = theme.ColorNoteBackground, theme.ColorMuted
	}
	r.ground.FillColor = theme.Color(ground)
	r.circle.StrokeColor, r.circle.StrokeWidth = theme.Color(sign), 2
	r.polygon.FillColor = theme.Color(sign)
	r.circle.Hidden, r.polygon.Hidden = r.note.kind != Info, r.note.kind == Info
	r.polygon.Sides, r.polygon.Angle = 3, 0
	if r.note.kind == Stop {
		r.polygon.Sides, r.polygon.Angle = 8, 22.5
	}
}

func (r *noteRenderer) Layout(size fyne.Size) {
	r.ground.Resize(size)
	side := r.sign()
	at := fyne.NewPos(theme.Space, theme.Space+(draw.LineHeight(theme.SizeBody)-side)/2)
	for _, o := range []fyne.CanvasObject{r.circle, r.polygon} {
		o.Move(at)
		o.Resize(fyne.NewSquareSize(side))
	}
	left := theme.Space + side
	r.note.body.Move(fyne.NewPos(left, 0))
	r.note.body.Resize(fyne.NewSize(size.Width-left, size.Height))
}

func (r *noteRenderer) MinSize() fyne.Size {
	body := r.note.body.MinSize()
	return fyne.NewSize(body.Width+theme.Space+r.sign(), body.Height)
}

func (r *noteRenderer) Refresh() {
	r.dress()
	r.ground.Refresh()
	r.circle.Refresh()
	r.polygon.Refresh()
	r.note.body.Refresh()
	r.Layout(r.note.Size())
}

func (r *noteRenderer) Destroy() {}
