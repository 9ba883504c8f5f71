package plot

import (
	"fyne.io/fyne/v2"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

// draw draws the rows: names left, bars in the middle, figures right.
func (b *bars) draw(d *drawing, size fyne.Size) {
	if len(b.rows) == 0 {
		d.Text(noBars, fyne.NewPos(0, theme.Half), 0, theme.SizeBody, theme.ColorMuted)
		return
	}
	names, figures := b.columns(size.Width)
	left, right := names+theme.Wide, size.Width-figures-theme.Wide
	scale := span{}
	for _, r := range b.rows {
		scale.take(r.from)
		scale.take(r.to)
	}
	if scale.low == scale.high {
		scale.high = scale.low + 1
	}
	x := func(v float64) float32 { return left + (right-left)*float32((v-scale.low)/(scale.high-scale.low)) }
	for i, r := range b.rows {
		b.row(d, i, r, size.Width, names)
		b.bar(d, i, x(r.from), x(r.to))
		if b.links && i+1 < len(b.rows) {
			y := float32(i+1) * barStep()
			d.Line(fyne.NewPos(x(r.to), y-theme.Half-2), fyne.NewPos(x(r.to), y+theme.Half+2), theme.ColorMuted, 1)
		}
	}
	d.Line(fyne.NewPos(x(0), 0), fyne.NewPos(x(0), float32(len(b.rows))*barStep()), theme.ColorMuted, 1)
}

// columns returns the widths of the names and of the figures.
func (b *bars) columns(width float32) (names, figures float32) {
	for _, r := range b.rows {
		style := fyne.TextStyle{Bold: r.strong}
		names = max(names, draw.TextWidth(r.name, theme.SizeBody, style))
		figures = max(figures, draw.TextWidth(r.figure, theme.SizeBody, style))
	}
	return min(names, nameRoom*theme.Scale(), width/2) + theme.Space, figures + theme.Space
}

// row draws the ground, the name and the figure of a row.
func (b *bars) row(d *drawing, i int, r barRow, width, names float32) {
	step := barStep()
	top := fyne.NewPos(0, b.head()+float32(i)*step)
	d.Row(top, fyne.NewSize(width, step), i == b.selected, i == b.hovered)
	style := fyne.TextStyle{Bold: r.strong}
	y := top.Y + (step-draw.LineHeight(theme.SizeBody))/2
	name := draw.NewText(draw.Shortened(r.name, names, theme.SizeBody, style), theme.SizeBody, draw.Foreground)
	figure := draw.NewText(r.figure, theme.SizeBody, draw.Foreground)
	name.TextStyle, figure.TextStyle = style, style
	name.Place(fyne.NewPos(theme.Space, y), 0)
	figure.Place(fyne.NewPos(width-theme.Space, y), 1)
	d.Add(name.Text)
	d.Add(figure.Text)
}

// bar draws a bar between two places; one without width still shows as a line.
func (b *bars) bar(d *drawing, i int, from, to float32) {
	color := theme.ColorPoint
	if b.rows[i].strong {
		color = theme.ColorAccent
	}
	left, wide := min(from, to), max(max(from, to)-min(from, to), 1.5)
	d.Rect(fyne.NewPos(left, float32(i)*barStep()+theme.Space), fyne.NewSize(wide, barStep()-2*theme.Space), theme.Color(color))
}
