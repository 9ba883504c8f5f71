package record

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets/draw"
	"walkline/ui/widgets/seen"
)

func TestTheLongestWordsOfAFigureFitTheirColumn(t *testing.T) {
	seen.Open(t, fyne.NewSize(100, 100), widget.NewLabel(""))
	for _, x := range []struct {
		columns []view.Column
		at      int
		words   string
	}{
		{view.CoverageColumns, 2, "100 %"}, {view.CoverageColumns, 1, "120 of 120"}, {view.CoverageColumns, 3, "98 % to 100 %"},
		{view.EffectColumns, 1, "do not bid"}, {view.EffectColumns, 2, "do not bid"},
	} {
		c := x.columns[x.at]
		room := c.Width - 2*theme.Space
		if w := draw.TextWidth(x.words, theme.SizeBody, fyne.TextStyle{}); w > room {
			t.Errorf("%s: %q is %.0f wide, there is room for %.0f", c.Title, x.words, w, room)
		}
	}
}
