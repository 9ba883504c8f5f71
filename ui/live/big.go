package live

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
)

// big is a line of text as large as its room, black on white or white on black.
type big struct {
	widget.BaseWidget
	words   string
	most    float32 // largest text size, in points, at text scale 1
	strong  bool
	right   bool
	inverse bool
}

func newBig(most float32) *big {
	b := &big{most: most}
	b.ExtendBaseWidget(b)
	return b
}

func (b *big) set(words string) {
	if words != b.words {
		b.words = words
		b.Refresh()
	}
}

// setShape sets how large and how heavy the text may be.
func (b *big) setShape(most float32, strong bool) {
	if b.most != most || b.strong != strong {
		b.most, b.strong = most, strong
		b.Refresh()
	}
}

func (b *big) setInverse(on bool) {
	if on != b.inverse {
		b.inverse = on
		b.Refresh()
	}
}

// CreateRenderer returns the renderer.
func (b *big) CreateRenderer() fyne.WidgetRenderer {
	r := &bigRenderer{big: b, ground: canvas.NewRectangle(theme.Color(theme.ColorLiveForeground)),
		text: canvas.NewText("", theme.Color(theme.ColorLiveForeground))}
	r.dress()
	return r
}

type bigRenderer struct {
	big    *big
	ground *canvas.Rectangle
	text   *canvas.Text
}

func (r *bigRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.ground, r.text} }
func (r *bigRenderer) MinSize() fyne.Size           { return fyne.NewSize(16, 12) }
func (r *bigRenderer) Destroy()                     {}

func (r *bigRenderer) dress() {
	r.ground.Hidden = !r.big.inverse
	r.text.Text, r.text.TextStyle = r.big.words, fyne.TextStyle{Bold: r.big.strong}
	r.text.Color = theme.Color(theme.ColorLiveForeground)
	if r.big.inverse {
		r.text.Color = theme.Color(theme.ColorLiveBackground)
	}
}

// The bundled face, in shares of the text size: where capitals and figures begin below the top of a line, and how high they are
// with what hangs below. A line is higher than that by room for accents, which figures and plain words do not need.
const (
	inkTop    float32 = 0.30
	inkHeight float32 = 1.0
	inkSink   float32 = 0.09 // brings capitals to the middle of that
)

// Layout makes the text as large as its room allows.
func (r *bigRenderer) Layout(size fyne.Size) {
	if r.big.words == "" || size.Width <= 0 || size.Height <= 0 {
		r.ground.Resize(fyne.Size{})
		return
	}
	width := size.Width
	if r.big.inverse {
		width -= 2 * theme.Space
	}
	r.text.TextSize = min(size.Height/inkHeight, r.big.most*theme.Scale())
	for range 4 { // the width of a text is not quite proportional to its size
		if drawn := r.text.MinSize().Width; drawn > width {
			r.text.TextSize *= 0.99 * width / drawn
		}
	}
	drawn, ink := r.text.MinSize(), inkHeight*r.text.TextSize
	x, top := float32(0), (size.Height-ink)/2
	switch {
	case r.big.right:
		x = size.Width - drawn.Width
	case r.big.inverse:
		x = theme.Space
	}
	y := top - inkTop*r.text.TextSize
	if r.big.inverse {
		y += inkSink * r.text.TextSize
	}
	r.text.Move(fyne.NewPos(x, y))
	r.text.Resize(drawn)
	r.ground.Move(fyne.NewPos(x-theme.Space, top))
	r.ground.Resize(fyne.NewSize(drawn.Width+2*theme.Space, ink))
}

func (r *bigRenderer) Refresh() {
	r.dress()
	r.Layout(r.big.Size())
	r.ground.Refresh()
	r.text.Refresh()
}
