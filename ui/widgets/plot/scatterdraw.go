package plot

import (
	"cmp"
	"image"
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

// draw draws the plot for its size.
func (s *Scatter) draw(d *drawing, size fyne.Size) {
	f := s.frame()
	d.axes(f, s.data.X, s.data.Y)
	if len(s.data.Band) > 1 {
		d.band(f, s.data.Band)
	}
	if s.data.Subject != nil {
		d.subject(f, *s.data.Subject)
	}
	if len(s.order) > mostShapes {
		d.cloud(f, s.data.Points)
	} else {
		for _, i := range s.order {
			p := s.data.Points[i]
			d.point(f.at(p.X, p.Y), pointRadius(p.Weight), p)
		}
	}
	for _, i := range []int{s.selected, s.hovered} {
		if i >= 0 {
			p := s.data.Points[i]
			d.halo(f.at(p.X, p.Y), pointRadius(p.Weight)+4)
		}
	}
	d.legend(f.pos.X+f.size.Width, s.legend())
	d.caption(s.Caption(), size)
}

// legend returns the lines of the legend.
func (s *Scatter) legend() [][]mark { return legendLines(s.marks(), s.data.Y.Title, s.Size().Width) }

// marks returns what the legend explains: what is there.
func (s *Scatter) marks() []mark {
	point := func(p ScatterPoint) func(*drawing, fyne.Position) {
		return func(d *drawing, at fyne.Position) { d.point(at, 4, p) }
	}
	var out []mark
	has := func(want func(ScatterPoint) bool) bool {
		for _, p := range s.data.Points {
			if want(p) {
				return true
			}
		}
		return false
	}
	if has(func(p ScatterPoint) bool { return p.Used }) {
		out = append(out, mark{point(ScatterPoint{Used: true}), "used"})
	}
	if has(func(p ScatterPoint) bool { return !p.Used }) {
		out = append(out, mark{point(ScatterPoint{}), "left out"})
	}
	if has(func(p ScatterPoint) bool { return p.Branded }) {
		out = append(out, mark{point(ScatterPoint{Used: true, Branded: true}), "branded title"})
	}
	if len(s.data.Band) > 1 {
		out = append(out, mark{func(d *drawing, at fyne.Position) {
			d.Rect(at.SubtractXY(7, 5), fyne.NewSize(14, 10), theme.Color(theme.ColorBand))
			d.Line(at.SubtractXY(7, 0), at.AddXY(7, 0), theme.ColorMuted, 1.5)
		}, cmp.Or(s.data.Fit, "fit, 8 of 10 sell inside")})
	}
	if s.data.Subject != nil {
		out = append(out, mark{func(d *drawing, at fyne.Position) { d.Line(at.SubtractXY(0, 6), at.AddXY(0, 6), theme.ColorAccent, 3) },
			"this lot"})
	}
	return out
}

func pointRadius(weight float64) float32 {
	const least, most = 3, 7
	return least + (most-least)*float32(math.Sqrt(min(max(weight, 0), 1)))
}

// point draws a circle or a square, filled or hollow, centred on a place.
func (d *drawing) point(at fyne.Position, radius float32, p ScatterPoint) {
	ink, ground := theme.Color(theme.ColorPoint), theme.Color(draw.Background)
	fill := ground
	if p.Used {
		fill = ink
	}
	if p.Branded {
		r := d.Rect(at.SubtractXY(radius, radius), fyne.NewSquareSize(2*radius), fill)
		r.StrokeColor, r.StrokeWidth = ink, 1.5
		return
	}
	d.Circle(at, radius, fill, theme.ColorPoint, 1.5)
}

// halo marks the selected point.
func (d *drawing) halo(at fyne.Position, radius float32) {
	d.Circle(at, radius, color.Transparent, theme.ColorAccent, 2)
}

// subject draws the lot as a dashed line at its x with its interval as a bar.
func (d *drawing) subject(f frame, s Subject) {
	const dash, gap = 5, 4
	top, bottom := f.pos.Y, f.pos.Y+f.size.Height
	x := f.at(s.X, s.Middle).X
	for y := top; y < bottom; y += dash + gap {
		d.Line(fyne.NewPos(x, y), fyne.NewPos(x, min(y+dash, bottom)), theme.ColorAccent, 1)
	}
	d.Line(f.at(s.X, s.Low), f.at(s.X, s.High), theme.ColorAccent, 3)
	for _, y := range []float64{s.Low, s.Middle, s.High} {
		at := f.at(s.X, y)
		d.Line(at.SubtractXY(7, 0), at.AddXY(7, 0), theme.ColorAccent, 3)
	}
}

// band fills the area between the low and the high line and draws the middle one.
func (d *drawing) band(f frame, points []BandPoint) {
	var line, middle draw.Path
	for _, b := range points {
		line = append(line, f.at(b.X, b.High).Subtract(f.pos))
		middle = append(middle, f.at(b.X, b.Middle).Subtract(f.pos))
	}
	for i := len(points) - 1; i >= 0; i-- {
		line = append(line, f.at(points[i].X, points[i].Low).Subtract(f.pos))
	}
	fill, stroke := draw.NRGBA(theme.ColorBand), draw.NRGBA(theme.ColorMuted)
	fill.A = 0xd0 // the grid shows through
	r := canvas.NewRaster(func(w, h int) image.Image {
		p := draw.NewPen(w, h, float32(w)/f.size.Width)
		p.Fill(draw.Ink{Fill: fill}, line)
		p.Stroke(stroke, 1.5, middle)
		return p.Image()
	})
	r.Move(f.pos)
	r.Resize(f.size)
	d.Add(r)
}
