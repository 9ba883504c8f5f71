package widgets

import (
	"image"
	"image/color"
	"image/draw"
	"math"

	"fyne.io/fyne/v2"
	"golang.org/x/image/vector"
)

// path is a closed or open line of points, in points of the window.
type path []fyne.Position

// ink is what a pen fills with: a colour, and hatch lines over it when period is set.
type ink struct {
	fill   color.NRGBA
	hatch  color.NRGBA
	period float32 // points between two lines, measured across them; 0: no hatch
	width  float32 // of a line
	cross  bool    // a second set of lines across the first
}

// pen draws paths into an image whose pixels are scale to a point.
type pen struct {
	dst   *image.RGBA
	scale float32
	mask  *image.Alpha
	z     vector.Rasterizer
}

func newPen(w, h int, scale float32) *pen {
	return &pen{dst: image.NewRGBA(image.Rect(0, 0, w, h)), scale: scale, mask: &image.Alpha{}}
}

// fill fills the area of closed paths; a path that runs the other way cuts a hole.
func (p *pen) fill(in ink, paths ...path) {
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
func (p *pen) box(paths []path) image.Rectangle {
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

// blend lays the ink over the image where the mask says.
func (p *pen) blend(in ink, box image.Rectangle) {
	for y := box.Min.Y; y < box.Max.Y; y++ {
		row := p.mask.Pix[(y-box.Min.Y)*p.mask.Stride:]
		out := p.dst.Pix[p.dst.PixOffset(box.Min.X, y):]
		for x := 0; x < box.Dx(); x++ {
			cover := uint32(row[x])
			if cover == 0 {
				continue
			}
			c := in.fill
			if in.period > 0 {
				c = mix(in.fill, in.hatch, in.lines(float32(box.Min.X+x)/p.scale, float32(y)/p.scale, p.scale))
			}
			over(out[x*4:x*4+4:x*4+4], c, cover*uint32(c.A)/255)
		}
	}
}

// lines returns how much of a pixel lies under hatch lines, 0..1.
func (in ink) lines(x, y, scale float32) float32 {
	share := in.line(x+y, scale)
	if in.cross {
		share = max(share, in.line(x-y, scale))
	}
	return share
}

// line returns the cover by one set of lines at a place along its diagonal.
func (in ink) line(along, scale float32) float32 {
	const diagonal = math.Sqrt2
	across := float64(along) / diagonal
	period := float64(in.period)
	off := math.Abs(across-period*math.Floor(across/period+0.5)) - float64(in.width)/2
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

// ring fills the strip between a shape's outline at one inset and at a deeper one.
func (p *pen) ring(c color.NRGBA, s shape, from, to float32) {
	inner := s.outline(to)
	back := make(path, len(inner))
	for i, at := range inner {
		back[len(inner)-1-i] = at
	}
	p.fill(ink{fill: c}, s.outline(from), back)
}

// stroke draws a line of a width along the points.
func (p *pen) stroke(c color.NRGBA, width float32, line path) {
	if len(line) < 2 {
		return
	}
	edge := make(path, 2*len(line))
	for i, at := range line {
		nx, ny := normal(line, i)
		edge[i] = at.AddXY(nx*width/2, ny*width/2)
		edge[len(edge)-1-i] = at.SubtractXY(nx*width/2, ny*width/2)
	}
	p.fill(ink{fill: c}, edge)
}

// normal returns the direction across a line at one of its points; a line that ends where it began is closed.
func normal(line path, i int) (x, y float32) {
	before, after := max(i-1, 0), min(i+1, len(line)-1)
	if last := len(line) - 1; line[0] == line[last] && (i == 0 || i == last) {
		before, after = last-1, 1
	}
	dx, dy := line[after].X-line[before].X, line[after].Y-line[before].Y
	length := float32(math.Hypot(float64(dx), float64(dy)))
	if length == 0 {
		return 0, 0
	}
	return -dy / length, dx / length
}
