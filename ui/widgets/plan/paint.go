package plan

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"

	"walkline/ui/damage"
	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
	"walkline/valuation/lot"
)

// palette are the colours of a picture of the plan.
type palette struct {
	fill, minor, functional, disabling  color.NRGBA
	hatch, outline, ground, ink, chosen color.NRGBA
}

func colorsNow() palette { return colorsOf(theme.Color) }

// colorsOf takes the colours from a theme.
func colorsOf(of func(fyne.ThemeColorName) color.Color) palette {
	c := func(name fyne.ThemeColorName) color.NRGBA {
		return color.NRGBAModel.Convert(of(name)).(color.NRGBA)
	}
	return palette{fill: c(theme.ColorPlanFill), minor: c(theme.ColorDamageMinor), functional: c(theme.ColorDamageFunctional),
		disabling: c(theme.ColorDamageDisabling), hatch: c(theme.ColorHatch), outline: c(theme.ColorPlanOutline),
		ground: c(draw.Background), ink: c(theme.ColorMuted), chosen: c(theme.ColorAccent)}
}

// extentInk returns how an extent fills a cell: the farther, the darker and the closer the hatch.
func (c palette) extentInk(extent string) draw.Ink {
	h := damage.HatchOf(extent)
	ink := draw.Ink{Fill: c.fill, Hatch: c.hatch, Period: h.Period, Width: h.Width, Cross: h.Cross}
	switch extent {
	case "minor":
		ink.Fill = c.minor
	case "functional":
		ink.Fill = c.functional
	case "disabling":
		ink.Fill = c.disabling
	}
	return ink
}

// picture is all that a picture of the plan depends on; two equal ones look the same.
type picture struct {
	width, height int
	size          fyne.Size
	cells         [19]lot.Damage
	photos        [19]bool // a photograph is pinned to the cell
	chosen        int
	focused       bool
	colors        palette
}

// painted draws the picture.
func (pic picture) painted(g geometry) image.Image {
	p := draw.NewPen(pic.width, pic.height, float32(pic.width)/pic.size.Width)
	pic.survey(p, g)
	pic.legend(p, g)
	return p.Image()
}

// survey draws the vehicle and its cells.
func (pic picture) survey(p *draw.Pen, g geometry) {
	pic.vehicle(p, g)
	for i, d := range pic.cells {
		pic.cell(p, g.cells[i], d, i == pic.chosen)
		if i < clockPoints && g.badge > 0 {
			p.Fill(draw.Ink{Fill: pic.colors.ground}, path(damage.Disc(g.cells[i].Center(), g.badge)))
		}
		if pic.photos[i] {
			pic.pin(p, g.pin(i))
		}
	}
}

// legend draws the samples of extents and depths.
func (pic picture) legend(p *draw.Pen, g geometry) {
	for i, s := range g.extents {
		p.Fill(pic.colors.extentInk(lot.Extents[i]), path(s.Outline(0)))
		ring(p, pic.colors.outline, s, 0, 1)
	}
	for i, s := range g.depths {
		p.Fill(draw.Ink{Fill: pic.colors.fill}, path(s.Outline(0)))
		pic.border(p, s, lot.Depths[i])
	}
}

// pin draws the small frame of a photograph.
func (pic picture) pin(p *draw.Pen, s damage.Tile) {
	p.Fill(draw.Ink{Fill: pic.colors.hatch}, path(s.Outline(-1.5)))
	p.Fill(draw.Ink{Fill: pic.colors.ground}, path(s.Outline(0)))
	p.Fill(draw.Ink{Fill: pic.colors.hatch}, path(damage.Disc(s.Center(), 2)))
}

func (pic picture) cell(p *draw.Pen, s shape, d lot.Damage, chosen bool) {
	p.Fill(pic.colors.extentInk(d.Extent), path(s.Outline(cellGap)))
	if d.Depth == "" {
		ring(p, pic.colors.outline, s, cellGap, cellGap+1)
	}
	pic.border(p, shapeIn{s, cellGap}, d.Depth)
	switch {
	case chosen && pic.focused:
		ring(p, pic.colors.chosen, s, -1.5, cellGap-0.5)
	case chosen:
		ring(p, pic.colors.ink, s, 0.5, cellGap-0.5)
	}
}

// ring fills the strip between a shape's outline at one inset and at a deeper one.
func ring(p *draw.Pen, c color.NRGBA, s shape, from, to float32) {
	p.Between(c, path(s.Outline(from)), path(s.Outline(to)))
}

// cellGap is the room that a cell leaves at its edge, where the mark of the selected one goes.
const cellGap float32 = 2.5

// border draws the depth.
func (pic picture) border(p *draw.Pen, s shape, depth string) {
	for _, strip := range damage.BorderOf(depth) {
		c := pic.colors.hatch
		if strip.Plain {
			c = pic.colors.fill
		}
		ring(p, c, s, strip.From, strip.To)
	}
}

// shapeIn is a shape drawn in by a margin.
type shapeIn struct {
	shape
	margin float32
}

// Outline returns the edge drawn in by the margin and an inset.
func (s shapeIn) Outline(inset float32) damage.Path { return s.shape.Outline(inset + s.margin) }

// vehicle draws a plain car seen from above, front up, inside the ring.
func (pic picture) vehicle(p *draw.Pen, g geometry) {
	v := damage.NewVehicle(damage.Point(g.middle), g.inner)
	for _, wheel := range v.Wheels {
		p.Fill(draw.Ink{Fill: pic.colors.outline}, path(wheel))
	}
	p.Fill(draw.Ink{Fill: pic.colors.fill}, path(v.Body))
	p.Stroke(pic.colors.outline, 1.75, path(v.Body))
	for _, line := range v.Lines {
		p.Stroke(pic.colors.outline, 1, path(line))
	}
}
