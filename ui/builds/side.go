package builds

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/form"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
)

// side is the right side of a build: where it leads. The figure and the lines keep their places; what comes and goes stands
// below them.
type side struct {
	body  *fyne.Container
	lead  *canvas.Rectangle
	head  *widget.RichText
	lines *fyne.Container
	ways  *fyne.Container
	notes *fyne.Container
	last  view.BuildSide
}

func newSide() *side {
	s := &side{head: widget.NewRichText(), lines: container.NewVBox(), ways: container.NewVBox(), notes: container.NewVBox()}
	s.head.Wrapping = fyne.TextWrapWord
	s.lead = canvas.NewRectangle(theme.Color(theme.ColorNoteBackground))
	lines := container.New(layout.NewCustomPaddedLayout(0, theme.Space, theme.Space, theme.Space), s.lines)
	ways := container.New(layout.NewCustomPaddedLayout(0, theme.Space, theme.Space, theme.Space), s.ways)
	s.body = container.NewStack(s.lead, container.NewPadded(container.NewVScroll(container.NewVBox(s.head, lines, ways, s.notes))))
	return s
}

func (s *side) render(v view.BuildSide) {
	s.last = v
	s.lead.FillColor = theme.Color(theme.ColorNoteBackground)
	s.lead.Refresh()
	figure := fyne.ThemeColorName("foreground")
	switch {
	case v.Loses:
		figure = theme.ColorWarning
	case !v.Settled:
		figure = theme.ColorMuted
	}
	headline := v.Headline
	if v.Loses {
		headline += ": a loss"
	}
	s.head.Segments = []widget.RichTextSegment{
		&widget.TextSegment{Text: headline, Style: widget.RichTextStyle{SizeName: theme.SizeBody, ColorName: theme.ColorMuted}},
		&widget.TextSegment{Text: v.Figure, Style: widget.RichTextStyle{SizeName: theme.SizeHeading, ColorName: figure,
			TextStyle: fyne.TextStyle{Bold: true}}},
	}
	s.head.Refresh()
	s.lines.Objects = nil
	for _, l := range v.Lines {
		s.lines.Add(widgets.NewFacing(l[0], l[1], form.SideLine()))
	}
	if v.Stop != "" {
		s.lines.Add(widgets.NewNote(widgets.Info, v.Stop))
	}
	s.lines.Refresh()
	s.renderWays(v)
	s.notes.Objects = nil
	for _, words := range v.Notes {
		s.notes.Add(widgets.NewNote(widgets.Info, words))
	}
	s.notes.Refresh()
}

func (s *side) renderWays(v view.BuildSide) {
	s.ways.Objects = nil
	if len(v.Ways) > 0 {
		s.ways.Add(widgets.NewHeading("Ways out"))
		s.ways.Add(form.Small(v.WaysNote))
	}
	for _, w := range v.Ways {
		s.ways.Add(widgets.NewFacing(w.Name, w.Figure, form.SideLine()))
		if w.Note != "" {
			s.ways.Add(form.Small(w.Note))
		}
	}
	s.ways.Refresh()
}
