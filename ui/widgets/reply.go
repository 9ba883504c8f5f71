package widgets

import (
	"image/color"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

var (
	_ fyne.Focusable = (*Reply)(nil)
	_ fyne.Tappable  = (*Reply)(nil)
)

// Reply is one of a few answers to a question, side by side, each a circle with its word; the chosen one is filled. It is one
// stop of the keyboard: left and right move, the first letter of an answer chooses it, space steps on, up and down go to
// what stands before and after.
type Reply struct {
	widget.BaseWidget

	// OnChanged is called when the user chose another answer.
	OnChanged func(answer string)
	// OnReached is called when it takes the keyboard, so that a page can bring it into sight.
	OnReached func()

	answers []string
	chosen  int
	focused bool
}

// NewReply returns a question's answers, the last chosen.
func NewReply(answers []string, onChanged func(string)) *Reply {
	r := &Reply{OnChanged: onChanged, answers: answers, chosen: len(answers) - 1}
	r.ExtendBaseWidget(r)
	return r
}

// Set chooses an answer without calling the handler; an unknown one is left out.
func (r *Reply) Set(answer string) {
	if i := slices.Index(r.answers, answer); i >= 0 && i != r.chosen {
		r.chosen = i
		r.Refresh()
	}
}

// Selected returns the chosen answer.
func (r *Reply) Selected() string { return r.answers[r.chosen] }

// Facts returns the chosen answer in words.
func (r *Reply) Facts() []string { return []string{r.Selected()} }

// Choose chooses an answer as the user does.
func (r *Reply) Choose(answer string) { r.choose(slices.Index(r.answers, answer)) }

func (r *Reply) choose(i int) {
	if i < 0 || i >= len(r.answers) || i == r.chosen {
		return
	}
	r.chosen = i
	r.Refresh()
	if r.OnChanged != nil {
		r.OnChanged(r.answers[i])
	}
}

// Tapped chooses the answer under the pointer.
func (r *Reply) Tapped(e *fyne.PointEvent) {
	draw.FocusOn(r)
	left := float32(0)
	for i, a := range r.answers {
		if left += r.width(a); e.Position.X < left {
			r.choose(i)
			return
		}
	}
}

// TypedRune chooses the answer that begins with a letter; space steps on.
func (r *Reply) TypedRune(c rune) {
	if c == ' ' {
		r.choose((r.chosen + 1) % len(r.answers))
		return
	}
	same := func(a string) bool { return a[0]|0x20 == byte(c)|0x20 }
	for k := 1; k <= len(r.answers); k++ {
		if i := (r.chosen + k) % len(r.answers); c < 0x80 && same(r.answers[i]) {
			r.choose(i)
			return
		}
	}
}

// TypedKey moves between the answers, and up and down between the questions.
func (r *Reply) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyLeft:
		r.choose(r.chosen - 1)
	case fyne.KeyRight:
		r.choose(r.chosen + 1)
	case fyne.KeyDelete, fyne.KeyBackspace:
		r.choose(len(r.answers) - 1)
	case fyne.KeyUp, fyne.KeyDown:
		r.step(e.Name == fyne.KeyDown)
	}
	draw.Leave(r, e)
}

// step hands the keyboard to what stands before or after.
func (r *Reply) step(on bool) {
	c := draw.CanvasOf(r)
	if c == nil {
		return
	}
	if on {
		c.FocusNext()
	} else {
		c.FocusPrevious()
	}
}

// FocusGained shows the ring and tells the page.
func (r *Reply) FocusGained() {
	r.focused = true
	r.Refresh()
	if r.OnReached != nil {
		r.OnReached()
	}
}

// FocusLost hides the ring.
func (r *Reply) FocusLost() {
	r.focused = false
	r.Refresh()
}

// radius is that of an answer's circle.
func (r *Reply) radius() float32 { return draw.LineHeight(theme.SizeBody) / 2.7 }

// width is the room of one answer.
func (r *Reply) width(answer string) float32 {
	return 2*r.radius() + theme.Space/2 + draw.TextWidth(answer, theme.SizeBody, fyne.TextStyle{}) + 2*theme.Space
}

// CreateRenderer returns the renderer.
func (r *Reply) CreateRenderer() fyne.WidgetRenderer {
	return &draw.Renderer{Of: r, Focused: func() bool { return r.focused }, Draw: r.paint, Least: r.least}
}

func (r *Reply) least() fyne.Size {
	var width float32
	for _, a := range r.answers {
		width += r.width(a)
	}
	return fyne.NewSize(width, draw.LineHeight(theme.SizeBody)+theme.Space)
}

func (r *Reply) paint(d *draw.Sheet, size fyne.Size) {
	left, middle, radius := float32(0), size.Height/2, r.radius()
	for i, a := range r.answers {
		at := fyne.NewPos(left+radius+1, middle)
		tone := theme.ColorMuted
		if i == r.chosen {
			tone = theme.ColorAccent
			d.Circle(at, radius/2, theme.Color(theme.ColorAccent), theme.ColorAccent, 0)
		}
		d.Circle(at, radius, color.Transparent, tone, 1.5)
		d.Text(a, fyne.NewPos(left+2*radius+theme.Space/2+2, middle-draw.LineHeight(theme.SizeBody)/2), 0, theme.SizeBody, draw.Foreground)
		left += r.width(a)
	}
}
