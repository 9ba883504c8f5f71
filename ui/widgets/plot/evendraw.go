package plot

import (
	"math"
	"strconv"

	"fyne.io/fyne/v2"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

// percent writes a share with one decimal below a tenth.
func percent(x float64) string {
	digits := 0
	if x < 0.0995 {
		digits = 1
	}
	return strconv.FormatFloat(100*x, 'f', digits, 64) + " %"
}

// frame lays the chart out: no y axis, since only the shares of the area count.
func (b *BreakEven) frame() frame {
	x, top := span{math.Inf(1), math.Inf(-1)}, 0.0
	for _, s := range b.data.Slices {
		x.take(s.From)
		x.take(s.To)
		top = max(top, s.height())
	}
	if len(b.data.Slices) == 0 {
		x, top = span{0, 1}, 1
	}
	x.take(b.data.Bid.At)
	if b.data.Limit != nil {
		x.take(b.data.Limit.At)
	}
	size := b.Size()
	small, body := draw.LineHeight(theme.SizeSmall), draw.LineHeight(theme.SizeBody)
	above, below := 2*body+theme.Half, 2*small+tickLength+theme.Half+body+theme.Space
	f := frame{pos: fyne.NewPos(theme.Broad*theme.Scale(), above), x: x, y: span{0, top}}
	f.size = fyne.NewSize(max(size.Width-2*f.pos.X, plotMinimumSide), max(size.Height-above-below, plotMinimumSide/2))
	for _, t := range niceTicks(x.low, x.high, int(f.size.Width/(widthPerTick*theme.Scale()))) {
		if t >= x.low && t <= x.high {
			f.xTicks = append(f.xTicks, t)
		}
	}
	return f
}

func (s Slice) height() float64 { return s.Chance / (s.To - s.From) }

// draw draws the chart for its size.
func (b *BreakEven) draw(d *drawing, size fyne.Size) {
	if len(b.data.Slices) > 0 {
		f := b.frame()
		d.axes(f, b.data.X, Axis{})
		for _, s := range b.data.Slices {
			d.slice(f, s, b.data.Bid.At)
		}
		if l := b.data.Limit; l != nil && math.Abs(float64(f.at(l.At, 0).X-f.at(b.data.Bid.At, 0).X)) >= 1 {
			d.limit(f, *l, b.data.X.Title)
		}
		b.line(d, f)
		if !math.IsNaN(b.hovered) {
			at := f.at(b.hovered, 0)
			d.Line(at, at.SubtractXY(0, f.size.Height), theme.ColorMuted, 1)
		}
	}
	d.caption(b.Caption(), size)
}

// slice draws one slice, in two parts where the line goes through it. A loss is filled, a gain is an outline round a soft fill, so
// that they differ without colour.
func (d *drawing) slice(f frame, s Slice, line float64) {
	if s.Chance <= 0 {
		return
	}
	middle := min(max(line, s.From), s.To)
	if middle > s.From {
		d.bar(f, s.From, middle, s.height(), true)
	}
	if middle < s.To {
		d.bar(f, middle, s.To, s.height(), false)
	}
}

// bar draws a bar between two values, from the ground up.
func (d *drawing) bar(f frame, from, to, height float64, loss bool) {
	at, end := f.at(from, height), f.at(to, 0)
	size := fyne.NewSize(max(end.X-at.X, 1), end.Y-at.Y)
	if loss {
		const gap = 1
		d.Rect(at, fyne.NewSize(max(size.Width-gap, 1), size.Height), theme.Color(theme.ColorWarning))
		return
	}
	d.Rect(at, size, theme.Color(theme.ColorBand))
	d.Line(at, at.AddXY(size.Width, 0), theme.ColorPoint, 1.5)
}

// line draws the bid's line with its name, and what lies on its sides.
func (b *BreakEven) line(d *drawing, f frame) {
	body := draw.LineHeight(theme.SizeBody)
	top, bottom := fyne.NewPos(f.at(b.data.Bid.At, 0).X, body), f.at(b.data.Bid.At, 0)
	d.Line(top, bottom, theme.ColorAccent, 3)
	const grip = 5
	d.Circle(fyne.NewPos(bottom.X, bottom.Y), grip, theme.Color(theme.ColorAccent), theme.ColorAccent, 1)
	d.name(f, b.data.Bid.Name, top.X, 0, f.pos.X+f.size.Width, true)
	b.sides(d, f, top)
}

// sides writes what lies left and right of the line; both stand on one side where the other has no room.
func (b *BreakEven) sides(d *drawing, f frame, top fyne.Position) {
	loss := draw.TextWidth(b.data.Loss, theme.SizeBody, fyne.TextStyle{})
	gain := draw.TextWidth(b.data.Gain, theme.SizeBody, fyne.TextStyle{})
	left, right := top.X-theme.Space-loss, top.X+theme.Space
	if left < 0 {
		left, right = right, right+loss+theme.Wide
	}
	if right+gain > f.pos.X+f.size.Width+f.pos.X {
		right = top.X - theme.Space - gain
		left = right - theme.Wide - loss
	}
	d.Text(b.data.Loss, fyne.NewPos(left, top.Y), 0, theme.SizeBody, theme.ColorWarning)
	d.Text(b.data.Gain, fyne.NewPos(right, top.Y), 0, theme.SizeBody, theme.ColorMuted)
}

// limit draws the line that stays, dashed, with its name at the line's foot.
func (d *drawing) limit(f frame, l Line, title string) {
	const dash, gap = 5, 4
	x, bottom := f.at(l.At, 0).X, f.pos.Y+f.size.Height
	for y := f.pos.Y; y < bottom; y += dash + gap {
		d.Line(fyne.NewPos(x, y), fyne.NewPos(x, min(y+dash, bottom)), theme.ColorAccent, 1.5)
	}
	right := f.pos.X + f.size.Width - draw.TextWidth(title, theme.SizeSmall, fyne.TextStyle{}) - theme.Wide
	d.name(f, l.Name, x, bottom+tickLength+draw.LineHeight(theme.SizeSmall), right, false)
}

// name writes the name of a line across its place, kept between the chart's left edge and a place on its right.
func (d *drawing) name(f frame, words string, x, y, right float32, strong bool) {
	size, tone := theme.SizeSmall, theme.ColorMuted
	if strong {
		size, tone = theme.SizeBody, draw.Foreground
	}
	half := draw.TextWidth(words, size, fyne.TextStyle{Bold: strong}) / 2
	t := d.Text(words, fyne.NewPos(0, y), 0, size, tone)
	t.TextStyle.Bold = strong
	t.Place(fyne.NewPos(max(min(x, right-half), f.pos.X+half), y), 0.5)
}
