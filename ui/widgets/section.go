package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
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

// NewNumeral returns the one very large figure of a page.
func NewNumeral(s string) *Words { return newWords(s, theme.SizeNumeral, draw.Foreground, true) }

// NewLive returns a figure of the Live page, in its black on white.
func NewLive(s string) *Words { return newWords(s, theme.SizeLive, theme.ColorLiveForeground, true) }

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

// NewSection returns content under a heading, with room around it instead of a box.
func NewSection(title string, content ...fyne.CanvasObject) *fyne.Container {
	body := container.New(layout.NewCustomPaddedVBoxLayout(theme.Space), content...)
	return container.New(layout.NewCustomPaddedLayout(theme.Space, theme.Broad, 0, 0),
		container.New(layout.NewCustomPaddedVBoxLayout(theme.Space), NewHeading(title), body))
}

// NewFilled returns a section whose content takes all the height that is left.
func NewFilled(title string, content fyne.CanvasObject) *fyne.Container {
	head := container.New(layout.NewCustomPaddedLayout(0, theme.Half, 0, 0), NewHeading(title))
	return container.New(layout.NewCustomPaddedLayout(theme.Space, theme.Space, 0, 0), container.NewBorder(head, nil, nil, nil, content))
}

// KeyFigure is a large figure under its name, with a line of explanation under it.
type KeyFigure struct {
	widget.BaseWidget
	name, figure, note *Words
}

// NewKeyFigure returns a key figure in heading size.
func NewKeyFigure(name string) *KeyFigure { return newKeyFigure(name, NewHeading("")) }

// NewVerdictFigure returns the verdict's numeral, the largest figure of a page.
func NewVerdictFigure(name string) *KeyFigure { return newKeyFigure(name, NewNumeral("")) }

func newKeyFigure(name string, figure *Words) *KeyFigure {
	k := &KeyFigure{name: NewCaption(name), figure: figure, note: NewCaption("")}
	k.ExtendBaseWidget(k)
	return k
}

// Set shows a figure with its note; the note may be empty.
func (k *KeyFigure) Set(figure, note string) {
	k.figure.SetText(figure)
	k.note.SetText(note)
}

// SetWarning shows the figure in the warning colour, or not; say why in the note.
func (k *KeyFigure) SetWarning(on bool) { k.figure.SetWarning(on) }

// Facts returns name, figure and note in words.
func (k *KeyFigure) Facts() []string {
	fact := k.name.Text() + ": " + k.figure.Text()
	if k.note.Text() != "" {
		fact += ", " + k.note.Text()
	}
	return []string{fact}
}

// CreateRenderer returns the renderer.
func (k *KeyFigure) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.New(layout.NewCustomPaddedVBoxLayout(0), k.name, k.figure, k.note))
}
