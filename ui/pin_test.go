package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"walkline/ui/desk"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets/seen"
	"walkline/valuation"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// valuedAt is an open lot with a bid, which was another before.
func valuedAt(bid, was money.Amount) desk.Open {
	c := valuation.Defaults()
	c.Currency, c.Lot.Make, c.Lot.Title.Document = "USD", "Kettrick", "salvage"
	c.Resale.Guess = &prob.Three{Low: 1, Likely: 2, High: 3}
	c.SeeNothing(true)
	v := desk.Valued{Of: c, Answer: valuation.Answer{Currency: "USD", WalkAway: &bid}}
	v.Answer.Plan, v.Answer.Plans = valuation.Rebuild, map[string]*money.Amount{valuation.Rebuild: &bid, valuation.ForParts: nil}
	return desk.Open{Case: c, Valued: &v, Fresh: true, Moved: &desk.Moved{Was: &was, Is: &bid, By: "no ripple in the trunk floor"}}
}

func TestThePinSaysTheBidAndWhatMovedIt(t *testing.T) {
	var done []desk.Action
	p := newPin(func(a desk.Action) { done = append(done, a) }, nil)
	seen.Open(t, fyne.NewSize(900, 60), p.bar)
	if p.render(desk.State{}); p.bar.Visible() {
		t.Error("without an open lot a bid is shown")
	}
	o := valuedAt(350000, 330000)
	says := func(o desk.Open, figure, moved string) {
		t.Helper()
		if p.render(desk.State{Open: &o}); p.press.Text != figure || p.moved.Text != moved {
			t.Errorf("says %q, %q; want %q, %q", p.press.Text, p.moved.Text, figure, moved)
		}
	}
	says(o, "USD 3,500, rebuild", "was 3,300: no ripple in the trunk floor")
	o.Moved.Since, o.Moved.By = true, "catalogues"
	says(o, "USD 3,500, rebuild", "since last time: was 3,300: catalogues")
	o.Fresh = false
	says(o, "USD 3,500, rebuild", view.Working)
	o.Fresh, o.Tried = true, []string{"min_profit"}
	says(o, "USD 3,500, rebuild", "a try without: least expected profit. Nothing of it is kept.")
	o = desk.Open{Case: valuation.Defaults()}
	o.Faults = []valuation.Fault{{Key: "resale"}, {Key: "rules"}}
	says(o, view.NotYet, "needs vehicle, title document, resale price, a house rule")
	p.press.OnTapped()
	if len(done) != 1 || p.shown.Seek != "lot" {
		t.Errorf("a press seeks %q", p.shown.Seek)
	}
}

// TestThePinLiesBesideThePlacesOrBelow: beside them at text 1, below them at text 1.5, and neither is cut at 1280 points.
func TestThePinLiesBesideThePlacesOrBelow(t *testing.T) {
	w, _ := guarded(t)
	for scale, below := range map[float32]bool{1: false, 1.5: true} {
		w.app.Settings().SetTheme(theme.New(theme.Options{Scale: scale}))
		o := valuedAt(350000, 330000)
		w.pin.render(desk.State{Open: &o})
		size := head{}.MinSize([]fyne.CanvasObject{w.places.strip, w.pin.bar})
		head{}.Layout([]fyne.CanvasObject{w.places.strip, w.pin.bar}, fyne.NewSize(1248, size.Height))
		if lies := w.pin.bar.Position().Y > 0; lies != below {
			t.Errorf("at text %v the pin lies below: %v", scale, lies)
		}
		if size.Width > 1248 || !strings.HasPrefix(w.pin.press.Text, "USD") {
			t.Errorf("at text %v the head asks for %v", scale, size)
		}
	}
}
