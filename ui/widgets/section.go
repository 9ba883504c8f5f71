package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

// Words is a line of text that follows theme and text scale and can be changed.
type Words struct {
	widget.BaseWidget
	text *draw.Text
	tone fyne.ThemeColorName // without a warning
}

func newWords(s string, size fyne.ThemeSizeName, color fyne.ThemeColorName, bold bool) *Words {
	w := &Words{text: draw.NewText(s, size, color), tone: color}
	w.text.TextStyle.Bold = bold
	w.ExtendBaseWidget(w)
	return w
}

// NewHeading returns the heading of a section.
func NewHeading(s string) *Words { return newWords(s, theme.SizeHeading, draw.Foreground, true) }

// NewCaption returns a line of second rank.
func NewCaption(s string) *Words { return newWords(s, theme.SizeSmall, theme.ColorMuted, false) }

// NewLine returns a line of body text.
func NewLine(s string) *Words { return newWords(s, theme.SizeBody, draw.Foreground, false) }

// SetText changes the words.
func (w *Words) SetText(s string) {
	if w.text.Text.Text != s {
		w.text.Text.Text = s
		w.Refresh()
	}
}

// Text returns the words.
func (w *Words) Text() string { return w.text.Text.Text }

// SetWarning shows the words in the warning colour, or not; say the warning in words too.
func (w *Words) SetWarning(on bool) {
	w.text.Tone = w.tone
	if on {
		w.text.Tone = theme.ColorWarning
	}
	w.Refresh()
}

// SetRight aligns the words to the right, for figures.
func (w *Words) SetRight(on bool) {
	w.text.Alignment = fyne.TextAlignLeading
	if on {
		w.text.Alignment = fyne.TextAlignTrailing
	}
	w.Refresh()
}

// CreateRenderer returns the renderer.
func (w *Words) CreateRenderer() fyne.WidgetRenderer { return &wordsRenderer{w} }

type wordsRenderer struct{ w *Words }

func (r *wordsRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.w.text.Text} }
func (r *wordsRenderer) Destroy()                     {}
func (r *wordsRenderer) Layout(size fyne.Size)        { r.w.text.Resize(size) }
func (r *wordsRenderer) MinSize() fyne.Size {
	return r.w.text.MinSize()
}
func (r *wordsRenderer) Refresh() {
	r.w.text.Dress()
	r.w.text.Refresh()
	r.Layout(r.w.Size())
}
