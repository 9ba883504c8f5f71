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

// Pictures draws plans without words, to be looked at and not worked on: the ring with the vehicle, the tiles of the other areas
// beside it from top to bottom. It keeps what it drew.
type Pictures struct {
	OnWhite bool // for a white page; else in the colours of the moment
	drawn   map[picture]image.Image
}

// Points that a picture without words is laid out in; it is then drawn at any size, its lines with it.
const (
	smallRing  float32 = 160
	smallGap   float32 = 8
	smallTile  float32 = smallRing/tiles - 3
	smallWidth float32 = smallRing + smallGap + smallTile
)

// mostDrawn is how many pictures are kept, about 20 kB each at the size of a row.
const mostDrawn = 400

// Of returns the plan of a survey, high pixels high.
func (p *Pictures) Of(survey []lot.Damage, high int) image.Image {
	size := fyne.NewSize(smallWidth, smallRing)
	pic := picture{width: int(float32(high) * smallWidth / smallRing), height: high, size: size, chosen: -1, colors: colorsNow()}
	if p.OnWhite {
		pic.colors = colorsOf(light)
	}
	for i, area := range lot.Areas {
		pic.cells[i] = lot.Damage{Area: area}
		for _, d := range survey {
			if d.Area == area {
				pic.cells[i].Extent, pic.cells[i].Depth = d.Extent, d.Depth
			}
		}
	}
	if drawn, ok := p.drawn[pic]; ok {
		return drawn
	}
	if p.drawn == nil || len(p.drawn) >= mostDrawn {
		p.drawn = map[picture]image.Image{}
	}
	pen := draw.NewPen(pic.width, pic.height, float32(pic.height)/size.Height)
	pic.survey(pen, smallGeometry())
	p.drawn[pic] = pen.Image()
	return p.drawn[pic]
}

// light returns a colour of the light look.
func light(name fyne.ThemeColorName) color.Color { return onWhite.Color(name, 0) }

var onWhite = theme.New(theme.Options{Look: theme.Light})

// smallGeometry says where everything of a picture without words lies.
func smallGeometry() geometry {
	g := geometry{outer: smallRing / 2}
	g.inner, g.middle = g.outer*0.70, fyne.NewPos(g.outer, g.outer)
	for hour := 1; hour <= clockPoints; hour++ {
		g.cells[hour-1] = damage.Sector{Middle: damage.Point(g.middle), Inner: g.inner, Outer: g.outer, Hour: hour}
	}
	for i := range tiles {
		g.cells[clockPoints+i] = square(fyne.NewPos(smallRing+smallGap, float32(i)*smallRing/tiles), smallTile)
	}
	return g
}
