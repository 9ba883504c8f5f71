package plan

import (
	"fyne.io/fyne/v2"

	"walkline/ui/damage"
	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
	"walkline/valuation/lot"
)

// geometry says where everything of the plan lies, in points.
type geometry struct {
	middle       fyne.Position
	inner, outer float32
	badge        float32 // radius of the disc under a digit
	cells        [19]shape
	extents      [3]damage.Tile // the legend's samples
	depths       [3]damage.Tile
	words        float32 // left edge of the words beside the tiles
	caption      float32 // top of the caption
}

const (
	leastRing    float32 = 320
	tiles                = 7
	legendLines          = 4
	swatchLegend float32 = 18
)

// column is the width of the tiles and their words.
func column() float32 { return 32 + theme.Space + 132*theme.Scale() }

func captionHeight() float32 { return 2*draw.LineHeight(theme.SizeBody) + theme.Space }

func leastSize() fyne.Size {
	return fyne.NewSize(leastRing+theme.Broad+besideRing(), max(leastRing, stackHeight(tileStep(0)))+captionHeight())
}

// besideRing is the width of what stands beside the ring.
func besideRing() float32 { return max(column(), 2*legendColumn()) }

// stackHeight is the height of the tiles with the legend below them.
func stackHeight(step float32) float32 { return tiles*step + theme.Wide + legendLines*legendStep() }

// tileStep is the height of a tile's row when the room is given; 0 asks for the least.
func tileStep(room float32) float32 {
	least := 2*draw.LineHeight(theme.SizeSmall) + theme.Half
	return min(max(least, room), least+theme.Space)
}

func legendStep() float32   { return max(swatchLegend, draw.LineHeight(theme.SizeSmall)) + theme.Half }
func legendColumn() float32 { return swatchLegend + theme.Half + 76*theme.Scale() }

func geometryFor(size fyne.Size) geometry {
	var g geometry
	right := besideRing()
	high := size.Height - captionHeight()
	ring := min(size.Width-right-theme.Broad, high)
	g.outer = ring / 2
	g.inner = g.outer * 0.70
	g.middle = fyne.NewPos(g.outer, g.outer)
	g.badge = draw.LineHeight(theme.SizeSmall) * 0.68
	for hour := 1; hour <= clockPoints; hour++ {
		g.cells[hour-1] = damage.Sector{Middle: damage.Point(g.middle), Inner: g.inner, Outer: g.outer, Hour: hour}
	}
	left := ring + theme.Broad
	legend := float32(legendLines) * legendStep()
	step := tileStep((ring - legend - theme.Wide) / tiles)
	foot := max(ring, stackHeight(step))
	g.caption = foot + theme.Space
	side := step - theme.Space
	for i := range tiles {
		cell := square(fyne.NewPos(left, float32(i)*step), side)
		cell.Row = right
		g.cells[clockPoints+i] = cell
	}
	g.words = left + side + theme.Space
	g.legend(left, foot-legend)
	return g
}

// legend places the samples of extents and depths in two columns under a line of headings.
func (g *geometry) legend(left, top float32) {
	for i := range lot.Extents {
		y := top + float32(i+1)*legendStep()
		g.extents[i] = square(fyne.NewPos(left, y), swatchLegend)
		g.depths[i] = square(fyne.NewPos(left+legendColumn(), y), swatchLegend)
	}
}

// pin returns where the frame lies that marks a cell with photographs: beside its number on the ring, in the corner of a tile.
func (g *geometry) pin(i int) damage.Tile {
	const width, height = 10, 7
	at := g.cells[i].Center()
	if t, tile := g.cells[i].(damage.Tile); tile {
		at = damage.Point{X: t.Pos.X + t.Width - width/2, Y: t.Pos.Y + t.Height - height/2}
	} else {
		at.X += g.badge + width/2
		at.Y += g.badge
	}
	return damage.Tile{Pos: damage.Point{X: at.X - width/2, Y: at.Y - height/2}, Width: width, Height: height}
}

// at returns the cell under a place, or -1.
func (g *geometry) at(pos fyne.Position) int {
	for i, s := range g.cells {
		if s.Contains(damage.Point(pos)) {
			return i
		}
	}
	return -1
}

// used is the room that the plan fills of what it was given.
func (g *geometry) used() fyne.Size {
	last := g.cells[clockPoints].(damage.Tile)
	return fyne.NewSize(last.Pos.X+last.Row, g.caption-theme.Space+captionHeight())
}
