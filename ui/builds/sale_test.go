package builds

import (
	"testing"

	"fyne.io/fyne/v2/test"

	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/valuation/build"
)

func TestAPriceThatItSoldForEndsAnOpenBuild(t *testing.T) {
	for before, after := range map[build.Outcome]build.Outcome{build.Open: build.Sold, build.AsIs: build.AsIs} {
		s := opened(t, "Days and selling")
		s.edit("ended", func(b *build.Build) { b.Outcome = before })
		test.Type(seen.All[*widgets.NumberEntry](s.page.Object())[1].Focus(), "13900")
		if b := s.now(); b.Sale.Price == nil || *b.Sale.Price != 1390000 || b.Outcome != after {
			t.Errorf("%s before the price: %s, sold for %v", before, b.Outcome, b.Sale.Price)
		}
	}
}
