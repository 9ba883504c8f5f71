package form

import (
	"reflect"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/valuation"
	"walkline/valuation/prob"
)

// shown is a form that was opened over a case and has edited nothing by it.
func shown(t *testing.T, e *edited, fill ...func(*Form)) *Form {
	t.Helper()
	e.c.Currency = "USD"
	f := New(e.edit)
	for _, add := range fill {
		add(f)
	}
	seen.Open(t, fyne.NewSize(900, 900), f.Rows)
	f.Render(e.c)
	if len(e.labels) > 0 {
		t.Fatalf("writing the case edited %q", e.labels)
	}
	return f
}

func TestWaysOutAreEntered(t *testing.T) {
	e := &edited{c: valuation.Defaults()}
	e.c.WaysOut.AsItStands.Starter, e.c.WaysOut.ForParts.Starter = true, true
	f := shown(t, e, Stopping, Standing, Parting)
	money := prob.Three{Low: 1000, Likely: 1500, High: 2000}
	threes := seen.All[*widgets.ThreeEntry](f.Rows)
	for _, i := range []int{0, 1, 2, 3, 4, 5, 6} {
		threes[i].OnChanged(money)
	}
	if e.c.WaysOut.AsItStands.Starter || e.c.WaysOut.ForParts.Starter {
		t.Error("an edited figure is a starter value still")
	}
	w := e.c.WaysOut
	if w.Strip.Hours != money || w.Strip.Days != money || *w.AsItStands.Money != money || w.AsItStands.Days != money ||
		*w.ForParts.Money != money || w.ForParts.Hours != money || w.ForParts.Days != money {
		t.Errorf("kept %+v", w)
	}
	f.Render(e.c)
	ticks := seen.All[*widgets.Check](f.Rows)
	if !ticks[1].Checked || !ticks[2].Checked || !ticks[3].Checked {
		t.Error("a way with money is no plan")
	}
	ticks[1].SetChecked(false)
	if want := []string{valuation.AsItStands, valuation.ForParts}; !slices.Equal(e.c.WaysOut.Plans, want) {
		t.Errorf("without the rebuild: %v", e.c.WaysOut.Plans)
	}
	ticks[1].SetChecked(true)
	if e.c.WaysOut.Plans != nil {
		t.Errorf("all of them are kept as %v", e.c.WaysOut.Plans)
	}
	ticks[0].SetChecked(false)
	threes[2].OnChanged(prob.Three{})
	if e.c.WaysOut.Stop || e.c.WaysOut.AsItStands.Money != nil {
		t.Errorf("stop %v, as it stands %v", e.c.WaysOut.Stop, e.c.WaysOut.AsItStands.Money)
	}
}

func TestThePriceOverTimeIsEntered(t *testing.T) {
	e := &edited{c: valuation.Defaults()}
	f := shown(t, e, Growing, Mileage, Discounts, Season)
	moves := seen.All[*widgets.Select](f.Rows)[0]
	moves.SetSelected(stays)
	if y := e.c.Resale.YearlyChange; y == nil || *y != (prob.Three{}) {
		t.Errorf("a price that stays: %v", y)
	}
	moves.SetSelected(byMe)
	if y := e.c.Resale.YearlyChange; y == nil || *y != usualChange {
		t.Errorf("my figures: %v", y)
	}
	moves.SetSelected(byRows)
	threes := seen.All[*widgets.ThreeEntry](f.Rows)
	off := prob.Three{Low: .3, Likely: .4, High: .5}
	threes[2].OnChanged(off)
	if e.c.Resale.YearlyChange != nil || e.c.Resale.Discounts[valuation.CauseFlood] != off {
		t.Errorf("change %v, discounts %v", e.c.Resale.YearlyChange, e.c.Resale.Discounts)
	}
	threes[2].OnChanged(prob.Three{})
	if e.c.Resale.Discounts != nil {
		t.Errorf("discounts that were taken back: %v", e.c.Resale.Discounts)
	}
	march := seen.All[*widgets.NumberEntry](f.Rows)[2]
	march.OnChanged(widgets.Known(1.04))
	if want := []float64{1, 1, 1.04, 1, 1, 1, 1, 1, 1, 1, 1, 1}; !reflect.DeepEqual(e.c.Resale.Season, want) {
		t.Errorf("the season is %v", e.c.Resale.Season)
	}
	march.OnChanged(widgets.Known(1))
	if e.c.Resale.Season != nil {
		t.Errorf("a flat season is kept as %v", e.c.Resale.Season)
	}
}

func TestEveryFieldOfWaysAndMarketHasHelp(t *testing.T) {
	e := &edited{c: valuation.Defaults()}
	f := shown(t, e, Stopping, Standing, Parting, Growing, Mileage, Discounts, Season, Rivals)
	for _, l := range seen.All[*widget.Label](f.Rows) {
		if view.Help(l.Text) == "" {
			t.Errorf("%q has no help", l.Text)
		}
	}
}
