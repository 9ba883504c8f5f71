package plot

import (
	"fyne.io/fyne/v2"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

// frame lays the plot out: chances from none to certain, and below the axis a line for the names of the posts.
func (c *Chances) frame() frame {
	x := span{0, 0}
	for _, l := range c.data.Lines {
		for _, p := range l.Points {
			x.take(p.X)
		}
	}
	x.take(c.data.At)
	whole := Axis{Title: "chance", Format: percent}
	f := newFrame(c.Size(), 1, scale{x, c.data.X}, scale{span{0, 1}, whole})
	f.size.Height -= draw.LineHeight(theme.SizeSmall)
	return f
}

// draw draws the plot for its size.
func (c *Chances) draw(d *drawing, size fyne.Size) {
	if len(c.data.Lines) > 0 {
		f := c.frame()
		d.axes(f, c.data.X, Axis{Title: "chance", Format: percent})
		var marks []mark
		for _, l := range c.data.Lines {
			d.chance(f, l)
			marks = append(marks, mark{l.sample, l.Name})
		}
		d.legend(f.pos.X+f.size.Width, [][]mark{marks})
		d.posts(f, c.data.Posts)
		c.walker(d, f)
	}
	d.caption(c.Caption(), size)
}

// stroke draws a straight piece of the line in its manner.
func (l ChanceLine) stroke(d *drawing, a, b fyne.Position) {
	if l.Warns {
		const lap = 0.7 // a piece reaches over its ends, else the painter leaves a gap
		d.Line(along(a, b, a.X-lap), along(a, b, b.X+lap), theme.ColorWarning, 2.5)
		return
	}
	d.pattern(a, b, theme.ColorPoint)
}

// sample draws what the line looks like, beside its name in a legend.
func (l ChanceLine) sample(d *drawing, at fyne.Position) {
	l.stroke(d, at.SubtractXY(theme.Space, 0), at.AddXY(theme.Half, 0))
}

func (d *drawing) chance(f frame, l ChanceLine) {
	for i := 1; i < len(l.Points); i++ {
		a, b := l.Points[i-1], l.Points[i]
		l.stroke(d, f.at(a.X, a.Y), f.at(b.X, b.Y))
	}
}

// pattern draws dashes whose phase hangs on the place alone, so that the pieces of a line make one pattern.
func (d *drawing) pattern(a, b fyne.Position, tone fyne.ThemeColorName) {
	const period, dash = 9, 5
	for from := a.X; from < b.X; {
		into := from - period*float32(int(from/period))
		to := min(from-into+dash, b.X)
		if into < dash {
			d.Line(along(a, b, from), along(a, b, to), tone, 2)
		}
		from += period - into
	}
}

// along returns the place at x on the line between two places.
func along(a, b fyne.Position, x float32) fyne.Position {
	return fyne.NewPos(x, a.Y+(b.Y-a.Y)*(x-a.X)/(b.X-a.X))
}

// posts draws the limits that lie in sight as wedges on the axis, with their names below it where there is room: the strong ones first.
func (d *drawing) posts(f frame, posts []Post) {
	y := f.pos.Y + f.size.Height + tickLength + 2*draw.LineHeight(theme.SizeSmall)
	var taken []span
	for _, strong := range []bool{true, false} {
		for _, p := range posts {
			if p.Strong == strong && p.At <= f.x.high {
				d.wedge(f.at(p.At, 0), strong)
				taken = d.nameOf(f, p, y, taken)
			}
		}
	}
}

// wedge draws a wedge that stands on a place of the axis.
func (d *drawing) wedge(foot fyne.Position, strong bool) {
	high, tone, width := float32(14), theme.ColorMuted, float32(1.5)
	if strong {
		high, tone, width = 22, theme.ColorAccent, 2.5
	}
	d.Line(foot, foot.AddXY(-high/3, -high), tone, width)
	d.Line(foot, foot.AddXY(high/3, -high), tone, width)
	d.Line(foot.AddXY(-high/3, -high), foot.AddXY(high/3, -high), tone, width)
}

// nameOf writes the name of a post where no other stands, and returns the room that is taken then.
func (d *drawing) nameOf(f frame, p Post, y float32, taken []span) []span {
	half := draw.TextWidth(p.Name, theme.SizeSmall, fyne.TextStyle{}) / 2
	x := max(min(f.at(p.At, 0).X, f.pos.X+f.size.Width-half), f.pos.X+half)
	room := span{float64(x - half - theme.Space), float64(x + half + theme.Space)}
	for _, t := range taken {
		if room.low < t.high && t.low < room.high {
			return taken
		}
	}
	tone := map[bool]fyne.ThemeColorName{true: theme.ColorAccent, false: theme.ColorMuted}[p.Strong]
	d.Text(p.Name, fyne.NewPos(x, y), 0.5, theme.SizeSmall, tone)
	return append(taken, room)
}

// walker draws the bid on the first line, the steps that it may take there, and its name.
func (c *Chances) walker(d *drawing, f frame) {
	first := c.data.Lines[0].Points
	const step, ring = 2, 6
	for _, x := range c.data.Steps {
		if x >= f.x.low && x <= f.x.high {
			d.Circle(f.at(x, valueOf(first, x)), step, theme.Color(draw.Foreground), draw.Foreground, 1)
		}
	}
	at := f.at(c.data.At, valueOf(first, c.data.At))
	d.Circle(at, ring, theme.Color(theme.ColorAccent), theme.ColorAccent, 1)
	for _, l := range c.data.Lines[1:] {
		d.halo(f.at(c.data.At, valueOf(l.Points, c.data.At)), ring)
	}
	style := fyne.TextStyle{Bold: true}
	wide := draw.TextWidth(c.data.Name, theme.SizeBody, style)
	place := at.AddXY(ring, ring/2)
	if place.X+wide > f.pos.X+f.size.Width {
		place.X = at.X - ring - wide
	}
	d.Text(c.data.Name, place, 0, theme.SizeBody, draw.Foreground).TextStyle = style
}
