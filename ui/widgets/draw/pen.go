package draw

import (
	"image"
	"image/color"
	"image/draw"
	"math"

	"fyne.io/fyne/v2"
	"golang.org/x/image/vector"
)

// Path is a closed or open line of points, in points of the window.
type Path []fyne.Position

// Ink is what a pen fills with: a colour, and hatch lines over it when Period is set.
type Ink struct {
	Fill   color.NRGBA
	Hatch  color.NRGBA
	Period float32 // points between two lines, measured across them; 0: no hatch
	Width  float32 // of a line
	Cross  bool    // a second set of lines across the first
}

// Pen draws paths into an image.
type Pen struct {
	dst   *image.RGBA
	scale float32 // pixels to a point
	mask  *image.Alpha
	z     vector.Rasterizer
}

// NewPen returns a pen on a clear image of w x h pixels, scale to a point.
func NewPen(w, h int, scale float32) *Pen {
	return &Pen{dst: image.NewRGBA(image.Rect(0, 0, w, h)), scale: scale, mask: &image.Alpha{}}
}

// Image returns what was drawn.
func (p *Pen) Image() image.Image { return p.dst }

// Fill fills the area of closed paths; a path that runs the other way cuts a hole.
func (p *Pen) Fill(in Ink, paths ...Path) {
	box := p.box(paths)
	if box.Empty() {
		return
	}
	p.z.Reset(box.Dx(), box.Dy())
	p.z.DrawOp = draw.Src
	for _, line := range paths {
		for i, at := range line {
			x, y := at.X*p.scale-float32(box.Min.X), at.Y*p.scale-float32(box.Min.Y)
			if i == 0 {
				p.z.MoveTo(x, y)
			} else {
				p.z.LineTo(x, y)
			}
		}
		p.z.ClosePath()
	}
	if need := box.Dx() * box.Dy(); cap(p.mask.Pix) < need {
		p.mask.Pix = make([]uint8, need)
	}
	p.mask.Pix = p.mask.Pix[:box.Dx()*box.Dy()]
	p.mask.Stride, p.mask.Rect = box.Dx(), image.Rect(0, 0, box.Dx(), box.Dy())
	p.z.Draw(p.mask, p.mask.Rect, image.Opaque, image.Point{})
	p.blend(in, box)
}

// box returns the pixels that the paths touch.
func (p *Pen) box(paths []Path) image.Rectangle {
	lowX, lowY := float32(math.Inf(1)), float32(math.Inf(1))
	highX, highY := -lowX, -lowY
	for _, line := range paths {
		for _, at := range line {
			lowX, highX = min(lowX, at.X), max(highX, at.X)
			lowY, highY = min(lowY, at.Y), max(highY, at.Y)
		}
	}
	if lowX > highX {
		return image.Rectangle{}
	}
	r := image.Rect(int(lowX*p.scale)-1, int(lowY*p.scale)-1, int(highX*p.scale)+2, int(highY*p.scale)+2)
	return r.Intersect(p.dst.Bounds())
}

// blend lays the Ink over the image where the mask says.
func (p *Pen) blend(in Ink, box image.Rectangle) {
	for y := box.Min.Y; y < box.Max.Y; y++ {
		row := p.mask.Pix[(y-box.Min.Y)*p.mask.Stride:]
		out := p.dst.Pix[p.dst.PixOffset(box.Min.X, y):]
		for x := 0; x < box.Dx(); x++ {
			cover := uint32(row[x])
			if cover == 0 {
				continue
			}
			c := in.Fill
			if in.Period > 0 {
				c = mix(in.Fill, in.Hatch, in.lines(float32(box.Min.X+x)/p.scale, float32(y)/p.scale, p.scale))
			}
			over(out[x*4:x*4+4:x*4+4], c, cover*uint32(c.A)/255)
		}
	}
}

// lines returns how much of a pixel lies under hatch lines, 0..1.
func (in Ink) lines(x, y, scale float32) float32 {
	share := in.line(x+y, scale)
	if in.Cross {
		share = max(share, in.line(x-y, scale))
	}
	return share
}

// line returns the cover by one set of lines at a place along its diagonal.
func (in Ink) line(along, scale float32) float32 {
	const diagonal = math.Sqrt2
	across := float64(along) / diagonal
	period := float64(in.Period)
	off := math.Abs(across-period*math.Floor(across/period+0.5)) - float64(in.Width)/2
	return float32(min(max(0.5-off*float64(scale), 0), 1))
}

func mix(a, b color.NRGBA, share float32) color.NRGBA {
	s := uint32(share*256 + 0.5)
	blend := func(x, y uint8) uint8 { return uint8((uint32(x)*(256-s) + uint32(y)*s) >> 8) }
	return color.NRGBA{R: blend(a.R, b.R), G: blend(a.G, b.G), B: blend(a.B, b.B), A: blend(a.A, b.A)}
}

// over lays an opaque colour with a cover of 0..255 over one pixel of alpha-premultiplied RGBA.
func over(px []uint8, c color.NRGBA, cover uint32) {
	rest := 255 - cover
	px[0] = uint8((uint32(c.R)*cover + uint32(px[0])*rest) / 255)
	px[1] = uint8((uint32(c.G)*cover + uint32(px[1])*rest) / 255)
	px[2] = uint8((uint32(c.B)*cover + uint32(px[2])*rest) / 255)
	px[3] = uint8((255*cover + uint32(px[3])*rest) / 255)
}

// Between fills what lies inside one closed path and outside another within it.
func (p *Pen) Between(c color.NRGBA, outer, inner Path) {
	back := make(Path, len(inner))
	for i, at := range inner {
		back[len(inner)-1-i] = at
	}
	p.Fill(Ink{Fill: c}, outer, back)
}

// Stroke draws a line of a width along the points.
func (p *Pen) Stroke(c color.NRGBA, width float32, line Path) {
	if len(line) < 2 {
		return
	}
	edge := make(Path, 2*len(line))
	for i, at := range line {
		nx, ny := normal(line, i)
		edge[i] = at.AddXY(nx*width/2, ny*width/2)
		edge[len(edge)-1-i] = at.SubtractXY(nx*width/2, ny*width/2)
	}
	p.Fill(Ink{Fill: c}, edge)
}

// normal returns the direction across a line at one of its points, longer where the line bends so that its width stays (a
// mitred corner); a line that ends where it began is closed.
func normal(line Path, i int) (x, y float32) {
	before, after := i-1, i
	if last := len(line) - 1; line[0] == line[last] && (i == 0 || i == last) {
		before, after = last-1, 0
	}
	ax, ay := across(line, before)
	bx, by := across(line, after)
	x, y = ax+bx, ay+by
	length := x*x + y*y
	const sharpest = 0.5 // below it a corner is cut, not mitred
	scale := 2 / max(length, sharpest)
	if ax == 0 && ay == 0 || bx == 0 && by == 0 {
		scale = 1 // an end: one side only
	}
	return x * scale, y * scale
}

// across returns the direction of length 1 across the part of a line after a point; zero where there is none.
func across(line Path, i int) (x, y float32) {
	if i < 0 || i+1 >= len(line) {
		return 0, 0
	}
	dx, dy := line[i+1].X-line[i].X, line[i+1].Y-line[i].Y
	length := float32(math.Hypot(float64(dx), float64(dy)))
	if length == 0 {
		return 0, 0
	}
	return -dy / length, dx / length
}
