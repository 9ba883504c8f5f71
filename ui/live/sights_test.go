package live

import (
	"image"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/widgets/seen"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// looked returns how many pictures the page shows.
func (h *hall) looked() int { return len(seen.All[*canvas.Image](h.page.Object())) }

// Photograph and plan are shown while the bidding stands still, and give way to the figures as soon as it moves.
func TestSightsAreShownBetweenTwoBids(t *testing.T) {
	h := at(t, fyne.NewSize(1280, 660))
	if h.looked() != 0 {
		t.Fatal("sights of a lot without any")
	}
	held := &task.Held{}
	h.page = New(h.do, Sights{Runner: held, Photo: func(_ lot.Photo, show func(image.Image, error)) {
		show(image.NewGray(image.Rect(0, 0, 4, 3)), nil)
	}})
	h.window.SetContent(h.page.Object())
	o := *h.State.Open
	o.Photos, o.Case.Damage = []lot.Photo{{Hash: "a"}}, []lot.Damage{{Area: "12", Extent: "minor"}}
	show := func(current money.Amount) {
		now := o
		now.Current = current
		h.page.Render(desk.State{Place: desk.Live, Open: &now})
	}
	show(0)
	if h.looked() != 2 {
		t.Fatalf("%d pictures before the first bid", h.looked())
	}
	show(50_000) // a legal step of the sale
	if h.looked() != 0 || held.Waiting() != 1 {
		t.Fatalf("%d pictures when a bid has come, %d waits", h.looked(), held.Waiting())
	}
	held.Release()
	if h.looked() != 2 {
		t.Errorf("%d pictures when the bidding stood still", h.looked())
	}
	h.types("7")
	held.Release()
	if h.looked() != 0 {
		t.Error("pictures while a price is typed")
	}
	h.press(fyne.KeyEscape)
	held.Release()
	if h.looked() != 2 {
		t.Error("no pictures after the price was dropped")
	}
	show(9_000_000) // a legal one, too
	held.Release()
	if h.looked() != 0 {
		t.Error("pictures past the walk-away bid")
	}
}
