package plan

import (
	"fyne.io/fyne/v2"

	"walkline/ui/damage"
	"walkline/ui/widgets/draw"
)

// shape is a cell of the plan.
type shape interface {
	Outline(inset float32) damage.Path // a closed path, clockwise, drawn in from the edge
	Center() damage.Point
	Contains(at damage.Point) bool
}

// path returns an outline as the pen draws it.
func path(line damage.Path) draw.Path {
	out := make(draw.Path, len(line))
	for i, at := range line {
		out[i] = fyne.Position(at)
	}
	return out
}

// center returns the middle of a shape as a place of the window.
func center(s shape) fyne.Position { return fyne.Position(s.Center()) }

// square returns a tile without words.
func square(pos fyne.Position, side float32) damage.Tile {
	return damage.Tile{Pos: damage.Point(pos), Width: side, Height: side}
}
