package plan

import (
	"math"

	"fyne.io/fyne/v2"

	"walkline/ui/widgets/draw"
)

// shape is a cell of the plan.
type shape interface {
	outline(inset float32) draw.Path // a closed path, clockwise, drawn in from the edge
	center() fyne.Position
	contains(at fyne.Position) bool
}

// sector is one of twelve parts of the clock ring.
type sector struct {
	middle       fyne.Position
	inner, outer float32
	hour         int
}

const (
	sectorHalf = math.Pi / 12 // half of 30 degrees
	arcSteps   = 10
)

// angle is the hour's direction, clockwise from the top.
func (s sector) angle() float64 { return float64(s.hour) * math.Pi / 6 }

func (s sector) at(radius float32, angle float64) fyne.Position {
	return fyne.NewPos(s.middle.X+radius*float32(math.Sin(angle)), s.middle.Y-radius*float32(math.Cos(angle)))
}

func (s sector) outline(inset float32) draw.Path {
	var line draw.Path
	r := s.outer - inset
	half := sectorHalf - math.Asin(float64(inset/r))
	for i := 0; i <= arcSteps; i++ {
		line = append(line, s.at(r, s.angle()-half+2*half*float64(i)/arcSteps))
	}
	r = s.inner + inset
	half = sectorHalf - math.Asin(float64(inset/r))
	for i := 0; i <= arcSteps; i++ {
		line = append(line, s.at(r, s.angle()+half-2*half*float64(i)/arcSteps))
	}
	return line
}

func (s sector) center() fyne.Position { return s.at((s.inner+s.outer)/2, s.angle()) }

func (s sector) contains(at fyne.Position) bool {
	dx, dy := float64(at.X-s.middle.X), float64(at.Y-s.middle.Y)
	r := float32(math.Hypot(dx, dy))
	if r < s.inner || r > s.outer {
		return false
	}
	off := math.Remainder(math.Atan2(dx, -dy)-s.angle(), 2*math.Pi)
	return math.Abs(off) <= sectorHalf
}

// tile is a swatch beside the ring with its row of words, which counts as the cell for the pointer.
type tile struct {
	pos  fyne.Position
	size fyne.Size
	row  float32 // width of the whole row
}

func (t tile) outline(inset float32) draw.Path {
	left, top := t.pos.X+inset, t.pos.Y+inset
	right, bottom := t.pos.X+t.size.Width-inset, t.pos.Y+t.size.Height-inset
	return draw.Path{{X: left, Y: top}, {X: right, Y: top}, {X: right, Y: bottom}, {X: left, Y: bottom}}
}

func (t tile) center() fyne.Position {
	return t.pos.AddXY(t.size.Width/2, t.size.Height/2)
}

func (t tile) contains(at fyne.Position) bool {
	const slack = 4
	return at.X >= t.pos.X-slack && at.X < t.pos.X+t.row && at.Y >= t.pos.Y-slack && at.Y < t.pos.Y+t.size.Height+slack
}

// disc returns a circle as a path.
func disc(at fyne.Position, radius float32) draw.Path {
	const steps = 32
	var line draw.Path
	for i := range steps {
		a := 2 * math.Pi * float64(i) / steps
		line = append(line, at.AddXY(radius*float32(math.Sin(a)), -radius*float32(math.Cos(a))))
	}
	return line
}

// curve flattens cubic Bézier pieces; knots are the start followed by two handles and an end for each piece.
func curve(knots ...fyne.Position) draw.Path {
	const steps = 12
	line := draw.Path{knots[0]}
	for k := 0; k+3 < len(knots); k += 3 {
		a, b, c, d := knots[k], knots[k+1], knots[k+2], knots[k+3]
		for i := 1; i <= steps; i++ {
			t := float32(i) / steps
			u := 1 - t
			line = append(line, fyne.NewPos(
				u*u*u*a.X+3*u*u*t*b.X+3*u*t*t*c.X+t*t*t*d.X,
				u*u*u*a.Y+3*u*u*t*b.Y+3*u*t*t*c.Y+t*t*t*d.Y))
		}
	}
	return line
}
