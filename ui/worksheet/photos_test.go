package worksheet

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/ui/widgets"
	"walkline/ui/widgets/plan"
	"walkline/ui/widgets/seen"
	"walkline/valuation"
	"walkline/valuation/lot"
)

func TestTheStripFollowsTheSelectedArea(t *testing.T) {
	b := at(t, "Damage", valuation.Defaults())
	b.State.Open.Photos = []lot.Photo{{Hash: "a", Kind: "png", Area: "12", Stage: lot.Before},
		{Hash: "b", Area: "12", Stage: lot.After}, {Hash: "c", Area: "01"}, {Hash: "d"}}
	b.show(b.State)
	if got := cards(b); !slices.Equal(got, []string{"before", "! not readable"}) {
		t.Errorf("on the front: %q", got)
	}
	b.wants(t, "Photos: 12 front", "Others: whole vehicle 1, 01 front right 1.")
	p := seen.All[*plan.Plan](b.window.Content())[0]
	b.window.Canvas().Focus(p)
	seen.Press(p, fyne.KeyRight)
	if len(cards(b)) != 1 {
		t.Errorf("one to the right: %q", cards(b))
	}
	b.wants(t, "Photos: 01 front right")
	test.Tap(seen.All[*widgets.Thumbnail](b.window.Content())[0])
	if last := b.Wished[len(b.Wished)-1]; last != "large photo c" {
		t.Errorf("a tap asks for %q", last)
	}
	if area, shown := b.page.DamageShown(); area != "01" || !shown {
		t.Errorf("%q, %v", area, shown)
	}
}

func cards(b *bench) []string {
	var words []string
	for _, c := range seen.All[*widgets.Thumbnail](b.window.Content()) {
		words = append(words, seen.Texts(c)...)
	}
	return words
}

// In a window that is too narrow for both, the list stands below the plan, and all of the plan keeps its room.
func TestTheListGoesBelowWhereThereIsNoRoomBeside(t *testing.T) {
	b := at(t, "Damage", valuation.Defaults())
	p := seen.All[*plan.Plan](b.window.Content())[0]
	for width, below := range map[float32]bool{1280: false, 900: true} {
		b.window.Resize(fyne.NewSize(width, 720))
		driver := fyne.CurrentApp().Driver()
		list := driver.AbsolutePositionForObject(b.page.survey.list)
		if at := driver.AbsolutePositionForObject(p); (list.Y >= at.Y+p.Size().Height) != below {
			t.Errorf("at %.0f wide the plan lies at %v, %v large, the list at %v", width, at, p.Size(), list)
		}
		if least := p.MinSize(); p.Size().Width < least.Width || p.Size().Height < least.Height {
			t.Errorf("at %.0f wide the plan is %v, least %v", width, p.Size(), least)
		}
	}
}

// The list moves down when the strip above it grows, and up when it shrinks.
func TestTheStripMakesRoomForItself(t *testing.T) {
	b := at(t, "Damage", valuation.Defaults())
	driver := fyne.CurrentApp().Driver()
	for _, photos := range [][]lot.Photo{{{Hash: "a", Kind: "png", Area: "12"}}, nil,
		{{Hash: "b", Kind: "png", Area: "12"}, {Hash: "c", Area: "06"}}} {
		b.State.Open.Photos = photos
		b.show(b.State)
		strip, list := b.page.survey.photos.body, b.page.survey.list
		foot := driver.AbsolutePositionForObject(strip).Y + strip.MinSize().Height
		if top := driver.AbsolutePositionForObject(list).Y; top < foot || top > foot+20 {
			t.Errorf("with %d photos the strip ends at %.0f and the list begins at %.0f", len(photos), foot, top)
		}
	}
}
