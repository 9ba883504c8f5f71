package damage

import "math"

// Point is a place: x to the right, y down.
type Point struct{ X, Y float32 }

// plus returns the place moved.
func (p Point) plus(dx, dy float32) Point { return Point{p.X + dx, p.Y + dy} }

// Path is a line of places; an outline is closed from its last back to its first.
type Path []Point

// Sector is one of the twelve parts of the clock ring.
type Sector struct {
	Middle       Point
	Inner, Outer float32 // radii
	Hour         int     // 1..12
}

const (
	sectorHalf = math.Pi / 12 // half of 30 degrees
	arcSteps   = 10
)

// angle is the hour's direction, clockwise from the top.
func (s Sector) angle() float64 { return float64(s.Hour) * math.Pi / 6 }

func (s Sector) at(radius float32, angle float64) Point {
	return s.Middle.plus(radius*float32(math.Sin(angle)), -radius*float32(math.Cos(angle)))
}

// Outline returns the sector's edge, drawn in by an inset.
func (s Sector) Outline(inset float32) Path {
	var line Path
	r := s.Outer - inset
	half := sectorHalf - math.Asin(float64(inset/r))
	for i := 0; i <= arcSteps; i++ {
		line = append(line, s.at(r, s.angle()-half+2*half*float64(i)/arcSteps))
	}
	r = s.Inner + inset
	half = sectorHalf - math.Asin(float64(inset/r))
	for i := 0; i <= arcSteps; i++ {
		line = append(line, s.at(r, s.angle()+half-2*half*float64(i)/arcSteps))
	}
	return line
}

// Center returns the place in the middle of the sector.
func (s Sector) Center() Point { return s.at((s.Inner+s.Outer)/2, s.angle()) }

// Contains reports whether a place lies in the sector.
func (s Sector) Contains(at Point) bool {
	dx, dy := float64(at.X-s.Middle.X), float64(at.Y-s.Middle.Y)
	r := float32(math.Hypot(dx, dy))
	if r < s.Inner || r > s.Outer {
		return false
	}
	off := math.Remainder(math.Atan2(dx, -dy)-s.angle(), 2*math.Pi)
	return math.Abs(off) <= sectorHalf
}

// Tile is a swatch beside the ring. Row is the width of its row of words, which counts as the cell for a pointer.
type Tile struct {
	Pos           Point
	Width, Height float32
	Row           float32
}

// Outline returns the tile's edge, drawn in by an inset.
func (t Tile) Outline(inset float32) Path {
	left, top := t.Pos.X+inset, t.Pos.Y+inset
	right, bottom := t.Pos.X+t.Width-inset, t.Pos.Y+t.Height-inset
	return Path{{left, top}, {right, top}, {right, bottom}, {left, bottom}}
}

// Center returns the place in the middle of the tile.
func (t Tile) Center() Point { return t.Pos.plus(t.Width/2, t.Height/2) }

// Contains reports whether a place lies in the tile's row.
func (t Tile) Contains(at Point) bool {
	const slack = 4
	return at.X >= t.Pos.X-slack && at.X < t.Pos.X+t.Row && at.Y >= t.Pos.Y-slack && at.Y < t.Pos.Y+t.Height+slack
}

// Disc returns a circle as an outline.
func Disc(at Point, radius float32) Path {
	const steps = 32
	var line Path
	for i := range steps {
		a := 2 * math.Pi * float64(i) / steps
		line = append(line, at.plus(radius*float32(math.Sin(a)), -radius*float32(math.Cos(a))))
	}
	return line
}

// curve flattens cubic Bézier pieces; knots are the start followed by two handles and an end for each piece.
func curve(knots ...Point) Path {
	const steps = 12
	line := Path{knots[0]}
	for k := 0; k+3 < len(knots); k += 3 {
		a, b, c, d := knots[k], knots[k+1], knots[k+2], knots[k+3]
		for i := 1; i <= steps; i++ {
			t := float32(i) / steps
			u := 1 - t
			line = append(line, Point{
				u*u*u*a.X + 3*u*u*t*b.X + 3*u*t*t*c.X + t*t*t*d.X,
				u*u*u*a.Y + 3*u*u*t*b.Y + 3*u*t*t*c.Y + t*t*t*d.Y})
		}
	}
	return line
}
