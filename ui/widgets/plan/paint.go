package plan

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
	"walkline/valuation/lot"
)

// palette are the colours of a picture of the plan.
type palette struct {
	fill, minor, functional, disabling  color.NRGBA
	hatch, outline, ground, ink, chosen color.NRGBA
}

func colorsNow() palette {
	c := func(name fyne.ThemeColorName) color.NRGBA {
		return color.NRGBAModel.Convert(theme.Color(name)).(color.NRGBA)
	}
	return palette{fill: c(theme.ColorPlanFill), minor: c(theme.ColorDamageMinor), functional: c(theme.ColorDamageFunctional),
		disabling: c(theme.ColorDamageDisabling), hatch: c(theme.ColorHatch), outline: c(theme.ColorPlanOutline),
		ground: c(draw.Background), ink: c(theme.ColorMuted), chosen: c(theme.ColorAccent)}
}

// extentInk returns how an extent fills a cell: the farther, the darker and the closer the hatch.
func (c palette) extentInk(extent string) draw.Ink {
	switch extent {
	case "minor":
		return draw.Ink{Fill: c.minor, Hatch: c.hatch, Period: 11, Width: 1}
	case "functional":
		return draw.Ink{Fill: c.functional, Hatch: c.hatch, Period: 6, Width: 1.25}
	case "disabling":
		return draw.Ink{Fill: c.disabling, Hatch: c.hatch, Period: 6, Width: 1.5, Cross: true}
	}
	return draw.Ink{Fill: c.fill}
}

// picture is all that a picture of the plan depends on; two equal ones look the same.
type picture struct {
	width, height int
	size          fyne.Size
	cells         [19]lot.Damage
	chosen        int
	focused       bool
	colors        palette
}

// painted draws the picture.
func (pic picture) painted(g geometry) image.Image {
	p := draw.NewPen(pic.width, pic.height, float32(pic.width)/pic.size.Width)
	pic.vehicle(p, g)
	for i, d := range pic.cells {
		pic.cell(p, g.cells[i], d, i == pic.chosen)
		if i < clockPoints {
			p.Fill(draw.Ink{Fill: pic.colors.ground}, disc(g.cells[i].center(), g.badge))
		}
	}
	for i, s := range g.extents {
		p.Fill(pic.colors.extentInk(lot.Extents[i]), s.outline(0))
		ring(p, pic.colors.outline, s, 0, 1)
	}
	for i, s := range g.depths {
		p.Fill(draw.Ink{Fill: pic.colors.fill}, s.outline(0))
		pic.border(p, s, lot.Depths[i])
	}
	return p.Image()
}

func (pic picture) cell(p *draw.Pen, s shape, d lot.Damage, chosen bool) {
	p.Fill(pic.colors.extentInk(d.Extent), s.outline(cellGap))
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
	p.Between(c, s.outline(from), s.outline(to))
}

// cellGap is the room that a cell leaves at its edge, where the mark of the selected one goes.
const cellGap float32 = 2.5

// border draws the depth: a thin line for the skin, a thick one for what is bolted, a double one for the structure.
func (pic picture) border(p *draw.Pen, s shape, depth string) {
	switch depth {
	case "skin":
		ring(p, pic.colors.hatch, s, 0, 1.25)
	case "bolted":
		ring(p, pic.colors.hatch, s, 0, 4)
	case "structure":
		ring(p, pic.colors.hatch, s, 0, 1.75)
		ring(p, pic.colors.fill, s, 1.75, 4)
		ring(p, pic.colors.hatch, s, 4, 5.75)
	}
}

// shapeIn is a shape drawn in by a margin.
type shapeIn struct {
	shape
	margin float32
}

func (s shapeIn) outline(inset float32) draw.Path { return s.shape.outline(inset + s.margin) }

// vehicle draws a plain car seen from above, front up, inside the ring.
func (pic picture) vehicle(p *draw.Pen, g geometry) {
	at := func(x, y float32) fyne.Position { return g.middle.AddXY(x*g.inner, y*g.inner) }
	for _, corner := range [][2]float32{{-0.40, -0.55}, {0.40, -0.55}, {-0.40, 0.52}, {0.40, 0.52}} {
		wheel := tile{pos: at(corner[0]-0.045, corner[1]-0.115), size: fyne.NewSize(0.09*g.inner, 0.23*g.inner)}
		p.Fill(draw.Ink{Fill: pic.colors.outline}, wheel.outline(0))
	}
	body := curve(at(0, -0.88),
		at(0.24, -0.88), at(0.38, -0.84), at(0.40, -0.62), at(0.41, -0.30), at(0.41, 0.30), at(0.40, 0.64),
		at(0.39, 0.84), at(0.26, 0.87), at(0, 0.87), at(-0.26, 0.87), at(-0.39, 0.84), at(-0.40, 0.64),
		at(-0.41, 0.30), at(-0.41, -0.30), at(-0.40, -0.62), at(-0.38, -0.84), at(-0.24, -0.88), at(0, -0.88))
	p.Fill(draw.Ink{Fill: pic.colors.fill}, body)
	p.Stroke(pic.colors.outline, 1.75, body)
	thin := func(line draw.Path) { p.Stroke(pic.colors.outline, 1, line) }
	thin(curve(at(-0.33, -0.36), at(-0.12, -0.45), at(0.12, -0.45), at(0.33, -0.36))) // foot of the windscreen
	thin(curve(at(-0.27, -0.12), at(-0.10, -0.17), at(0.10, -0.17), at(0.27, -0.12))) // front of the roof
	thin(curve(at(-0.27, 0.36), at(-0.10, 0.39), at(0.10, 0.39), at(0.27, 0.36)))     // back of the roof
	thin(curve(at(-0.31, 0.58), at(-0.12, 0.64), at(0.12, 0.64), at(0.31, 0.58)))     // foot of the rear window
	for _, side := range []float32{-1, 1} {
		thin(draw.Path{at(0.33*side, -0.36), at(0.27*side, -0.12), at(0.27*side, 0.36), at(0.31*side, 0.58)})
		thin(draw.Path{at(0.41*side, -0.30), at(0.47*side, -0.27), at(0.41*side, -0.23)}) // mirror
	}
}
