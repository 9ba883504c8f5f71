package damage

// Hatch says how an extent is hatched: lines at 45 degrees, a period apart, measured across them.
type Hatch struct {
	Period float32 // 0: no hatch
	Width  float32 // of a line
	Cross  bool    // a second set of lines across the first
}

// HatchOf returns the hatch of an extent: the farther, the closer.
func HatchOf(extent string) Hatch {
	switch extent {
	case "minor":
		return Hatch{Period: 11, Width: 1}
	case "functional":
		return Hatch{Period: 6, Width: 1.25}
	case "disabling":
		return Hatch{Period: 6, Width: 1.5, Cross: true}
	}
	return Hatch{}
}

// Strip is a part of a border: between two insets from the edge, in the colour of the hatch or left plain.
type Strip struct {
	From, To float32
	Plain    bool
}

// BorderOf returns how a depth is edged: a thin line for the skin, a thick one for what is bolted, a double one for the structure.
func BorderOf(depth string) []Strip {
	switch depth {
	case "skin":
		return []Strip{{From: 0, To: 1.25}}
	case "bolted":
		return []Strip{{From: 0, To: 4}}
	case "structure":
		return []Strip{{From: 0, To: 1.75}, {From: 1.75, To: 4, Plain: true}, {From: 4, To: 5.75}}
	}
	return nil
}

// Vehicle is a plain car seen from above, front up.
type Vehicle struct {
	Wheels []Path // filled
	Body   Path   // filled, then stroked
	Lines  []Path // thin strokes: windows, roof, mirrors
}

// NewVehicle returns the vehicle that fits into a ring of the given inner radius.
func NewVehicle(middle Point, inner float32) Vehicle {
	at := func(x, y float32) Point { return middle.plus(x*inner, y*inner) }
	var v Vehicle
	for _, corner := range [][2]float32{{-0.40, -0.55}, {0.40, -0.55}, {-0.40, 0.52}, {0.40, 0.52}} {
		v.Wheels = append(v.Wheels, Tile{Pos: at(corner[0]-0.045, corner[1]-0.115), Width: 0.09 * inner, Height: 0.23 * inner}.Outline(0))
	}
	v.Body = curve(at(0, -0.88),
		at(0.24, -0.88), at(0.38, -0.84), at(0.40, -0.62), at(0.41, -0.30), at(0.41, 0.30), at(0.40, 0.64),
		at(0.39, 0.84), at(0.26, 0.87), at(0, 0.87), at(-0.26, 0.87), at(-0.39, 0.84), at(-0.40, 0.64),
		at(-0.41, 0.30), at(-0.41, -0.30), at(-0.40, -0.62), at(-0.38, -0.84), at(-0.24, -0.88), at(0, -0.88))
	v.Lines = []Path{
		curve(at(-0.33, -0.36), at(-0.12, -0.45), at(0.12, -0.45), at(0.33, -0.36)), // foot of the windscreen
		curve(at(-0.27, -0.12), at(-0.10, -0.17), at(0.10, -0.17), at(0.27, -0.12)), // front of the roof
		curve(at(-0.27, 0.36), at(-0.10, 0.39), at(0.10, 0.39), at(0.27, 0.36)),     // back of the roof
		curve(at(-0.31, 0.58), at(-0.12, 0.64), at(0.12, 0.64), at(0.31, 0.58)),     // foot of the rear window
	}
	for _, side := range []float32{-1, 1} {
		v.Lines = append(v.Lines,
			Path{at(0.33*side, -0.36), at(0.27*side, -0.12), at(0.27*side, 0.36), at(0.31*side, 0.58)},
			Path{at(0.41*side, -0.30), at(0.47*side, -0.27), at(0.41*side, -0.23)}) // mirror
	}
	return v
}
