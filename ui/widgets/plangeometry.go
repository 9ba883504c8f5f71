package widgets

import (
	"fyne.io/fyne/v2"

	"walkline/ui/theme"
	"walkline/valuation/lot"
)

// planGeometry says where everything of the plan lies, in points.
type planGeometry struct {
	middle       fyne.Position
	inner, outer float32
	badge        float32 // radius of the disc under a digit
	cells        [19]shape
	extents      [3]tile // the legend's samples
	depths       [3]tile
	words        float32 // left edge of the words beside the tiles
	caption      float32 // top of the caption
}

const (
	planRingMin  float32 = 320
	planTiles            = 7
	legendLines          = 4
	swatchLegend float32 = 18
)

// column is the width of the tiles and their words.
func planColumn() float32 { return 32 + theme.Space + 132*theme.Scale() }

func planCaption() float32 { return 2*lineHeight(theme.SizeBody) + theme.Space }

func planMinSize() fyne.Size {
	column := planTiles*planTileStep(0) + theme.Wide + legendLines*planLegendStep()
	ring := max(planRingMin, column)
	return fyne.NewSize(ring+theme.Broad+max(planColumn(), 2*planLegendColumn()), ring+planCaption())
}

// planTileStep is the height of a tile's row when the room is given; 0 asks for the least.
func planTileStep(room float32) float32 {
	least := 2*lineHeight(theme.SizeSmall) + theme.Half
	return min(max(least, room), least+theme.Space)
}

func planLegendStep() float32   { return max(swatchLegend, lineHeight(theme.SizeSmall)) + theme.Half }
func planLegendColumn() float32 { return swatchLegend + theme.Half + 76*theme.Scale() }

func planGeometryFor(size fyne.Size) planGeometry {
	var g planGeometry
	right := max(planColumn(), 2*planLegendColumn())
	ring := min(size.Width-right-theme.Broad, size.Height-planCaption())
	g.outer = ring / 2
	g.inner = g.outer * 0.70
	g.middle = fyne.NewPos(g.outer, g.outer)
	g.badge = lineHeight(theme.SizeSmall) * 0.68
	g.caption = ring + theme.Space
	for hour := 1; hour <= clockPoints; hour++ {
		g.cells[hour-1] = sector{middle: g.middle, inner: g.inner, outer: g.outer, hour: hour}
	}
	left := ring + theme.Broad
	legend := float32(legendLines) * planLegendStep()
	step := planTileStep((ring - legend - theme.Wide) / planTiles)
	side := step - theme.Space
	for i := range planTiles {
		g.cells[clockPoints+i] = tile{pos: fyne.NewPos(left, float32(i)*step), size: fyne.NewSquareSize(side), row: right}
	}
	g.words = left + side + theme.Space
	g.legend(left, ring-legend)
	return g
}

// legend places the samples of extents and depths in two columns under a line of headings.
func (g *planGeometry) legend(left, top float32) {
	for i := range lot.Extents {
		y := top + float32(i+1)*planLegendStep()
		g.extents[i] = tile{pos: fyne.NewPos(left, y), size: fyne.NewSquareSize(swatchLegend)}
		g.depths[i] = tile{pos: fyne.NewPos(left+planLegendColumn(), y), size: fyne.NewSquareSize(swatchLegend)}
	}
}

// at returns the cell under a place, or -1.
func (g *planGeometry) at(pos fyne.Position) int {
	for i, s := range g.cells {
		if s.contains(pos) {
			return i
		}
	}
	return -1
}

// used is the room that the plan fills of what it was given.
func (g *planGeometry) used() fyne.Size {
	last := g.cells[clockPoints].(tile)
	return fyne.NewSize(last.pos.X+last.row, g.caption-theme.Space+planCaption())
}
