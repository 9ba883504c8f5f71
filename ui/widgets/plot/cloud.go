package plot

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

// mostShapes is how many points are shapes of their own on the canvas. More are painted as one picture: the canvas draws
// every shape anew in every frame.
const mostShapes = 300

// corners of the polygon that stands for a small circle.
const corners = 12

// cloud paints many points as one picture, at the resolution of the screen: those left out under those used.
func (d *drawing) cloud(f frame, points []ScatterPoint) {
	var used, outer, inner []draw.Path
	for _, p := range points {
		at, radius := f.at(p.X, p.Y).Subtract(f.pos), pointRadius(p.Weight)
		if p.Used {
			used = append(used, pointPath(at, radius, p.Branded))
			continue
		}
		outer = append(outer, pointPath(at, radius, p.Branded))
		inner = append(inner, pointPath(at, radius-1.5, p.Branded))
	}
	ink, ground := draw.NRGBA(theme.ColorPoint), draw.NRGBA(draw.Background)
	r := canvas.NewRaster(func(w, h int) image.Image {
		p := draw.NewPen(w, h, float32(w)/f.size.Width)
		p.Fill(draw.Ink{Fill: ink}, outer...)
		p.Fill(draw.Ink{Fill: ground}, inner...)
		p.Fill(draw.Ink{Fill: ink}, used...)
		return p.Image()
	})
	r.Move(f.pos)
	r.Resize(f.size)
	d.Add(r)
}

// pointPath is the outline of a point: a square for a branded title, else a circle.
func pointPath(at fyne.Position, radius float32, branded bool) draw.Path {
	n, turn := corners, 0.0
	if branded {
		n, turn, radius = 4, math.Pi/4, radius*math.Sqrt2
	}
	path := make(draw.Path, n)
	for i := range path {
		sin, cos := math.Sincos(turn + 2*math.Pi*float64(i)/float64(n))
		path[i] = at.AddXY(radius*float32(cos), radius*float32(sin))
	}
	return path
}
