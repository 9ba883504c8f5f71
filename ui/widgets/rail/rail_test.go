package rail_test

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/widgets"
	"walkline/ui/widgets/rail"
	"walkline/ui/widgets/seen"
)

func TestARailShowsOneSection(t *testing.T) {
	var gone []int
	r := rail.Across([]rail.Section{{Name: "Bills", Body: widget.NewLabel("all bills")}, {Name: "Hours", Body: widget.NewLabel("all hours")}},
		func(i int) { gone = append(gone, i) })
	w := seen.Open(t, fyne.NewSize(400, 200), container.NewBorder(r.Buttons, nil, nil, nil, r.Room))
	if texts := seen.Texts(w.Content()); !slices.Contains(texts, "all bills") || slices.Contains(texts, "all hours") || len(gone) != 0 {
		t.Errorf("at first %q, told %v", texts, gone)
	}
	buttons := seen.All[*widgets.Button](w.Content())
	test.Tap(buttons[1])
	if texts := seen.Texts(w.Content()); slices.Contains(texts, "all bills") || !slices.Contains(texts, "all hours") {
		t.Errorf("then %q", texts)
	}
	if buttons[1].Importance != widget.HighImportance || buttons[0].Importance != widget.LowImportance || r.Current() != 1 ||
		!slices.Equal(gone, []int{1}) {
		t.Errorf("lit %v, current %d, told %v", buttons[1].Importance, r.Current(), gone)
	}
	r.Close(0, true)
	if buttons[0].Visible() || !slices.Equal(r.Names(), []string{"Bills", "Hours"}) {
		t.Errorf("closed, visible %v, names %v", buttons[0].Visible(), r.Names())
	}
}
