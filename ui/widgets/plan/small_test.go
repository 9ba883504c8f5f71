package plan

import (
	"image"
	"image/color"
	"testing"

	"walkline/ui/damage"
	"walkline/valuation/lot"
)

// The picture without words shows a survey where the plan itself has it: the marked cell differs, the others are as before.
func TestAPictureShowsWhereTheDamageIs(t *testing.T) {
	var p Pictures
	const high = 96
	none, front := p.Of(nil, high), p.Of([]lot.Damage{{Area: "12", Extent: "disabling", Depth: "structure"}}, high)
	g := smallGeometry()
	for i, area := range lot.Areas {
		c := g.cells[i].Center()
		if differs := unlike(none, front, c, high); differs != (area == "12") {
			t.Errorf("area %s: differs %v", area, differs)
		}
	}
	if p.Of(nil, high) != none {
		t.Error("the same survey was drawn anew")
	}
	if none.Bounds().Dy() != high {
		t.Errorf("it is %v", none.Bounds())
	}
}

// unlike reports whether two pictures differ round a point of the layout.
func unlike(a, b image.Image, at damage.Point, high int) bool {
	x, y := int(at.X*float32(high)/smallRing), int(at.Y*float32(high)/smallRing)
	for dx := -2; dx <= 2; dx++ {
		for dy := -2; dy <= 2; dy++ {
			if color.NRGBAModel.Convert(a.At(x+dx, y+dy)) != color.NRGBAModel.Convert(b.At(x+dx, y+dy)) {
				return true
			}
		}
	}
	return false
}
