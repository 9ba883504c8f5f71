package builds

import (
	"testing"

	"fyne.io/fyne/v2/test"

	"walkline/ui/desk"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

func TestUnlistedDamageIsEnteredFromTheBuildAndUndone(t *testing.T) {
	s := opened(t, "Hidden damage")
	tap(t, s.page.Object(), "Add this find")
	if len(s.now().Unlisted) != 0 || s.State.Trouble == "" {
		t.Fatalf("damage without a name is kept: %+v", s.now().Unlisted)
	}
	for _, e := range seen.All[*widgets.TextEntry](s.page.Object()) {
		if e.PlaceHolder == "cracked mount" {
			test.Type(e, "Bent pickup")
		}
	}
	tap(t, s.page.Object(), "Add this find")
	got := s.now().Unlisted
	if len(got) != 1 || got[0].Name != "Bent pickup" || got[0].ID != "unlisted-1" || s.Steps[len(s.Steps)-1] != "add find" {
		t.Fatalf("%+v %q", got, s.Steps)
	}
	s.edit("x", func(b *build.Build) { b.Unlisted[0].Cost = prob.Certain(250) })
	s.page.Go(0)
	s.says(t, "Hidden: Bent pickup")
	s.Do(desk.Undo())
	s.Do(desk.Undo())
	if len(s.now().Unlisted) != 0 {
		t.Errorf("%+v", s.now().Unlisted)
	}
}

func TestPhotosAfterTheWorkBelongToTheBuild(t *testing.T) {
	s := opened(t, "Photos")
	kept := desk.Kept{Photos: []lot.Photo{{Hash: "a", Kind: "jpeg", Name: "done.jpg", Stage: lot.After, Taken: "2026-11-19"}}}
	s.Do(desk.AddPhotos(s.State.Build.ID, kept, "", lot.After))
	s.says(t, "done.jpg", "after the work", "2026-11-19")
	tap(t, s.page.Object(), "Add photos…")
	if s.Wished[len(s.Wished)-1] != "photos" {
		t.Errorf("%q", s.Wished)
	}
	s.Do(desk.Undo())
	if len(s.State.Build.Photos) != 0 {
		t.Errorf("%+v", s.State.Build.Photos)
	}
}

func TestABuildLeadsToItsWorksheetAndBack(t *testing.T) {
	s := opened(t, "Progress")
	id := s.State.Build.ID
	tap(t, s.page.Object(), "Worksheet")
	if s.State.Place != desk.Worksheet || s.State.Open == nil || s.State.Open.ID != id {
		t.Fatalf("%v", s.State.Place)
	}
	s.Do(desk.GoToBuild(id))
	if s.State.Place != desk.Builds || s.State.Build == nil || s.State.Build.ID != id {
		t.Errorf("%v %v", s.State.Place, s.State.Build)
	}
}
