package sheet

import (
	"codeberg.org/go-pdf/fpdf"

	"walkline/ui/damage"
	"walkline/valuation/lot"
)

// The ring in points of the window, and how it is scaled down.
const (
	ringOuter = 200
	ringInner = 140
	cellInset = 2.5
)

// fills are the greys under the hatch of each extent.
var fills = map[string]int{"": 250, "minor": 240, "functional": 218, "disabling": 188}

// plot draws cells of the damage plan on a page.
type plot struct {
	press *press
	page  int
	x, y  float64 // of the plan's origin
	scale float64 // mm to a point of the window
}

// outlined is a cell's shape.
type outlined interface {
	Outline(inset float32) damage.Path
}

// cell fills, hatches and edges a cell.
func (p plot) cell(s outlined, d lot.Damage, inset float32) {
	pdf := p.press.pdf
	p.press.at(p.page, func() {
		g := fills[d.Extent]
		pdf.SetFillColor(g, g, g)
		pdf.Polygon(points(s.Outline(inset), p.x, p.y, p.scale), "F")
		p.hatch(s.Outline(inset), damage.HatchOf(d.Extent))
		if d.Depth == "" {
			pdf.SetDrawColor(hair, hair, hair)
			pdf.SetLineWidth(0.15)
			pdf.Polygon(points(s.Outline(inset), p.x, p.y, p.scale), "D")
		}
		for _, strip := range damage.BorderOf(d.Depth) {
			p.strip(s, strip, inset)
		}
	})
}

// strip draws one part of a border, as a line of its width along its middle.
func (p plot) strip(s outlined, b damage.Strip, inset float32) {
	g := ink
	if b.Plain {
		g = 255
	}
	pdf := p.press.pdf
	pdf.SetDrawColor(g, g, g)
	pdf.SetLineJoinStyle("miter")
	pdf.SetLineWidth(float64(b.To-b.From) * p.scale)
	pdf.Polygon(points(s.Outline(inset+(b.From+b.To)/2), p.x, p.y, p.scale), "D")
}

// hatch draws lines at 45 degrees inside an outline.
func (p plot) hatch(line damage.Path, h damage.Hatch) {
	if h.Period == 0 {
		return
	}
	pdf := p.press.pdf
	at := points(line, p.x, p.y, p.scale)
	pdf.ClipPolygon(at, false)
	pdf.SetDrawColor(ink, ink, ink)
	pdf.SetLineWidth(float64(h.Width) * p.scale)
	low, high := bounds(at)
	step := float64(h.Period) * p.scale * 1.4142135623730951 // along an axis
	height := high.Y - low.Y
	for x := low.X - height; x < high.X+height; x += step {
		pdf.Line(x, high.Y, x+height, low.Y)
		if h.Cross {
			pdf.Line(x, low.Y, x+height, high.Y)
		}
	}
	pdf.ClipEnd()
}

// bounds returns the corners of the box round some places.
func bounds(at []fpdf.PointType) (low, high fpdf.PointType) {
	low, high = at[0], at[0]
	for _, q := range at {
		low.X, low.Y = min(low.X, q.X), min(low.Y, q.Y)
		high.X, high.Y = max(high.X, q.X), max(high.Y, q.Y)
	}
	return low, high
}

// vehicle draws the plain car in the ring.
func (p plot) vehicle() {
	v := damage.NewVehicle(damage.Point{X: ringOuter, Y: ringOuter}, ringInner)
	pdf := p.press.pdf
	p.press.at(p.page, func() {
		pdf.SetFillColor(120, 120, 120)
		for _, wheel := range v.Wheels {
			pdf.Polygon(points(wheel, p.x, p.y, p.scale), "F")
		}
		pdf.SetFillColor(250, 250, 250)
		pdf.SetDrawColor(120, 120, 120)
		pdf.SetLineWidth(0.3)
		pdf.Polygon(points(v.Body, p.x, p.y, p.scale), "FD")
		pdf.SetLineWidth(0.15)
		for _, line := range v.Lines {
			at := points(line, p.x, p.y, p.scale)
			for i := 1; i < len(at); i++ {
				pdf.Line(at[i-1].X, at[i-1].Y, at[i].X, at[i].Y)
			}
		}
	})
}

// ring draws the twelve clock points with their numbers, and the vehicle.
func (p plot) ring(cells map[string]lot.Damage) {
	p.vehicle()
	number := style{size: smallType.size, bold: true, gray: ink}
	for hour, area := range lot.Areas[:damage.ClockPoints] {
		s := damage.Sector{Middle: damage.Point{X: ringOuter, Y: ringOuter}, Inner: ringInner, Outer: ringOuter, Hour: hour + 1}
		p.cell(s, cells[area], cellInset)
		c := s.Center()
		x, y := p.x+float64(c.X)*p.scale, p.y+float64(c.Y)*p.scale
		p.press.at(p.page, func() {
			p.press.pdf.SetFillColor(255, 255, 255)
			p.press.pdf.Circle(x, y, 2.2, "F")
		})
		p.press.write(p.page, x, y-number.line()/2+0.1, 0.5, area, number)
	}
	p.press.write(p.page, p.x+ringOuter*p.scale, p.y+(ringOuter-ringInner*0.62)*p.scale-smallType.line(), 0.5, "front", smallType)
}

// swatch draws a square sample of a cell.
func (p plot) swatch(x, y, side float64, d lot.Damage) {
	q := p
	q.x, q.y = x, y
	q.cell(damage.Tile{Width: float32(side / p.scale), Height: float32(side / p.scale)}, d, 0)
}
