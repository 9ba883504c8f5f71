package damage_test

import (
	"math"
	"slices"
	"testing"

	"walkline/ui/damage"
	"walkline/valuation/lot"
)

func TestEveryAreaHasWordsOfItsOwn(t *testing.T) {
	seen := map[string]string{}
	for i, area := range lot.Areas {
		words := damage.Area(area)
		if other, taken := seen[words]; taken {
			t.Errorf("%s and %s both read %q", area, other, words)
		}
		seen[words] = area
		if damage.OnRing(area) != (i < damage.ClockPoints) {
			t.Errorf("%s lies on the ring: %v", area, damage.OnRing(area))
		}
	}
}

func TestWords(t *testing.T) {
	for in, want := range map[string]string{"12": "12 front", "top": "top", "engine_bay": "engine bay", "07": "07 rear left",
		"nowhere": "nowhere", "": "", "13": "13"} {
		if got := damage.Area(in); got != want {
			t.Errorf("area %q reads %q, want %q", in, got, want)
		}
	}
	if damage.Short("12") != "12" || damage.Short("engine_bay") != "engine bay" {
		t.Error("short words")
	}
	for want, d := range map[string]lot.Damage{"12 front: functional, bolted": {Area: "12", Extent: "functional", Depth: "bolted"},
		"top: minor": {Area: "top", Extent: "minor"}, "06 rear: nothing marked": {Area: "06", Depth: "skin"}} {
		if got := damage.Words(d); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// MMUCC: clock points from above, 12 is the front, clockwise. With y down, the front lies at the top and 3 on the right.
func TestSectorsLieLikeAClock(t *testing.T) {
	s := damage.Sector{Middle: damage.Point{X: 100, Y: 100}, Inner: 60, Outer: 90}
	for hour, want := range map[int]damage.Point{12: {X: 100, Y: 25}, 3: {X: 175, Y: 100}, 6: {X: 100, Y: 175}, 9: {X: 25, Y: 100}} {
		s.Hour = hour
		c := s.Center()
		if math.Abs(float64(c.X-want.X)) > 1e-3 || math.Abs(float64(c.Y-want.Y)) > 1e-3 {
			t.Errorf("%d lies at %v, want %v", hour, c, want)
		}
		if !s.Contains(c) || s.Contains(s.Middle) || s.Contains(damage.Point{X: want.X, Y: 200 - want.Y}) && want.Y != 100 {
			t.Errorf("%d does not find its own place", hour)
		}
	}
}

// Geometry: twelve sectors fill the ring, pi (R^2 - r^2), but for what the chords of the flattened arcs cut off.
func TestSectorsFillTheRing(t *testing.T) {
	var sum float64
	for hour := 1; hour <= damage.ClockPoints; hour++ {
		sum += area(damage.Sector{Inner: 60, Outer: 90, Hour: hour}.Outline(0))
	}
	if want := math.Pi * (90*90 - 60*60); math.Abs(sum/want-1) > 2e-3 {
		t.Errorf("the sectors cover %.1f of %.1f", sum, want)
	}
	whole, inset := area(damage.Sector{Inner: 60, Outer: 90, Hour: 5}.Outline(0)),
		area(damage.Sector{Inner: 60, Outer: 90, Hour: 5}.Outline(3))
	if inset >= whole {
		t.Errorf("drawn in, a sector grows from %.1f to %.1f", whole, inset)
	}
}

// area returns what an outline encloses (the shoelace formula).
func area(line damage.Path) float64 {
	var twice float64
	for i, a := range line {
		b := line[(i+1)%len(line)]
		twice += float64(a.X)*float64(b.Y) - float64(b.X)*float64(a.Y)
	}
	return math.Abs(twice) / 2
}

func TestTiles(t *testing.T) {
	tile := damage.Tile{Pos: damage.Point{X: 10, Y: 20}, Width: 30, Height: 30, Row: 200}
	if area(tile.Outline(5)) != 400 || tile.Center() != (damage.Point{X: 25, Y: 35}) {
		t.Errorf("%v, %v", tile.Outline(5), tile.Center())
	}
	if !tile.Contains(damage.Point{X: 180, Y: 35}) || tile.Contains(damage.Point{X: 240, Y: 35}) {
		t.Error("a tile's row of words belongs to it, and no more")
	}
}

// The share of ink grows with the extent, and every border is wider than the one before.
func TestLooksGrowWithTheDamage(t *testing.T) {
	last := 0.0
	for _, extent := range lot.Extents {
		h := damage.HatchOf(extent)
		share := float64(h.Width / h.Period)
		if h.Cross {
			share = 2*share - share*share
		}
		if share < 1.5*last || share == 0 {
			t.Errorf("%s: %.2f of the ground is hatched, after %.2f", extent, share, last)
		}
		last = share
	}
	if damage.HatchOf("") != (damage.Hatch{}) || damage.BorderOf("") != nil {
		t.Error("no damage is hatched or edged")
	}
	var widths []float32
	for _, depth := range lot.Depths {
		b := damage.BorderOf(depth)
		widths = append(widths, b[len(b)-1].To)
	}
	if !slices.IsSorted(widths) || widths[0] == widths[1] || widths[1] == widths[2] {
		t.Errorf("borders of %v", widths)
	}
}

func TestVehicleFitsIntoItsRing(t *testing.T) {
	v := damage.NewVehicle(damage.Point{X: 50, Y: 50}, 40)
	for _, line := range append(append(v.Lines, v.Wheels...), v.Body) {
		for _, at := range line {
			if d := math.Hypot(float64(at.X-50), float64(at.Y-50)); d > 40 {
				t.Errorf("%v lies %.1f from the middle", at, d)
			}
		}
	}
}
