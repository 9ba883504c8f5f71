package worksheet

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/draw"
	"walkline/ui/widgets/plot"
)

// verdict is the right side of the worksheet. It never jumps: the figure, what binds and the lines keep their places, and
// what comes and goes stands below them.
type verdict struct {
	body   fyne.CanvasObject
	head   *widget.RichText
	plans  *fyne.Container
	lines  *fyne.Container
	share  *plot.ShareBars
	shares *fyne.Container
	more   *fyne.Container
	limits *limits
	ways   fyne.CanvasObject // proposes values for the ways out that have none
	last   view.Verdict
}

func newVerdict(do func(desk.Action)) *verdict {
	v := &verdict{head: widget.NewRichText(), plans: container.NewVBox(), lines: container.NewVBox(), share: plot.NewShareBars(),
		more: container.NewVBox(), limits: newLimits(do)}
	v.ways = container.NewHBox(widgets.NewButton("Propose starter values", func() { do(desk.ProposeWays(false)) }))
	v.head.Wrapping = fyne.TextWrapWord
	v.shares = container.NewVBox(form.Label("What moves it most"), v.share)
	lines := container.New(layout.NewCustomPaddedLayout(0, theme.Space, theme.Space, theme.Space), v.lines)
	plans := container.New(layout.NewCustomPaddedLayout(0, 0, theme.Space, theme.Space), v.plans)
	stack := container.NewVBox(v.head, v.limits.trial, plans, lines, v.shares, v.more, v.limits.body)
	ground := canvas.NewRectangle(theme.Color(theme.ColorNoteBackground))
	v.body = container.NewStack(ground, container.NewPadded(container.NewVScroll(stack)))
	return v
}

func (v *verdict) render(d view.Verdict) {
	v.last = d
	figure := fyne.ThemeColorName("foreground")
	switch {
	case d.Refused:
		figure = theme.ColorWarning
	case !d.Settled:
		figure = theme.ColorMuted
	}
	headline := d.Headline
	if !d.Settled && d.Figure != view.NotYet && d.Figure != view.Working {
		headline += ", before your last change"
	}
	v.head.Segments = []widget.RichTextSegment{
		&widget.TextSegment{Text: headline, Style: widget.RichTextStyle{SizeName: theme.SizeBody, ColorName: theme.ColorMuted}},
		&widget.TextSegment{Text: d.Figure, Style: widget.RichTextStyle{SizeName: numeral(d.Figure), ColorName: figure,
			TextStyle: fyne.TextStyle{Bold: true}}},
	}
	if d.Binds != "" {
		v.head.Segments = append(v.head.Segments, &widget.TextSegment{Text: d.Binds,
			Style: widget.RichTextStyle{SizeName: theme.SizeBody, ColorName: "foreground"}})
	}
	v.head.Refresh()
	v.renderPlans(d)
	v.renderLines(d)
	v.renderMore(d)
}

// renderPlans lists the plans with their bids, the chosen one marked, and where to stop.
func (v *verdict) renderPlans(d view.Verdict) {
	v.plans.Objects = nil
	if len(d.Plans) > 0 {
		v.plans.Add(form.Label(planTitle))
	}
	for _, r := range d.Plans {
		name := r.Name
		if r.Chosen {
			name += " (this bid)"
		}
		v.plans.Add(widgets.NewExplained(widgets.NewFacing(name, r.Bid, form.SideLine()), view.Help(planTitle)))
	}
	if d.Unpriced != "" {
		v.plans.Add(widgets.NewNote(widgets.Info, d.Unpriced))
		v.plans.Add(v.ways)
	}
	if d.Stop != "" {
		v.plans.Add(widgets.NewNote(widgets.Info, d.Stop))
	}
	v.plans.Refresh()
}

const planTitle = "Walk-away bid by plan"

// numeral is the text size of the figure: the largest at which it fits.
func numeral(figure string) fyne.ThemeSizeName {
	room := form.SideWidth() - 2*theme.Wide
	for _, size := range []fyne.ThemeSizeName{theme.SizeNumeral, theme.SizeLesserNumeral} {
		if draw.TextWidth(figure, size, fyne.TextStyle{Bold: true}) <= room {
			return size
		}
	}
	return theme.SizeHeading
}

func (v *verdict) renderLines(d view.Verdict) {
	v.lines.Objects = nil
	for _, l := range d.Lines {
		v.lines.Add(widgets.NewExplained(widgets.NewFacing(l[0], l[1], form.SideLine()), view.Help(l[0])))
	}
	v.lines.Refresh()
	var bars []plot.Share
	for _, s := range d.Drivers {
		bars = append(bars, plot.Share{Name: s.Name, Part: s.Part})
	}
	v.share.SetShares(bars)
	v.shares.Hidden = len(bars) == 0
}

// renderMore writes the next steps, the reasons and the warnings.
func (v *verdict) renderMore(d view.Verdict) {
	v.more.Objects = nil
	v.group("Still to enter", d.Next, false)
	v.group("Why", d.Reasons, d.Refused)
	v.group("Warnings", d.Warnings, true)
	if d.Care != "" {
		v.more.Add(form.Small(d.Care))
	}
	v.more.Refresh()
}

func (v *verdict) group(title string, items []string, warns bool) {
	if len(items) == 0 {
		return
	}
	v.more.Add(form.Label(title))
	for _, words := range items {
		if warns {
			v.more.Add(widgets.NewNote(widgets.Care, words))
			continue
		}
		t := widget.NewLabel(words)
		t.Wrapping = fyne.TextWrapWord
		v.more.Add(t)
	}
}
