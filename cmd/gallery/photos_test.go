package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/widgets"
	"walkline/ui/widgets/plan"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
	"walkline/valuation/lot"
)

// photographs returns a folder with two pictures, one that is broken, and a table.
func photographs(t *testing.T) string {
	t.Helper()
	folder := t.TempDir()
	whole := sample(t, 1)
	for name, data := range map[string][]byte{"a front.jpg": whole, "b engine.JPG": sample(t, 2), "c broken.jpeg": whole[:len(whole)/2],
		"list.csv": []byte("price,model_year,mileage\n12000,2018,61000\n12500,2018,58000\n")} {
		if err := os.WriteFile(filepath.Join(folder, name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return folder
}

func sample(t *testing.T, n int) []byte {
	t.Helper()
	data, err := samplePhoto(n)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// withPhotos returns the window with the Damage section of a lot, and the photographs of a folder on its front.
func withPhotos(t *testing.T) (*stage, int64) {
	t.Helper()
	s, id := worksheet(t, "27", '2')
	s.tap(t, "Add photos…")
	seen.All[*widgets.TextEntry](s.top())[0].SetText(photographs(t))
	s.tap(t, "Add")
	return s, id
}

func (s *stage) keptPhotos(t *testing.T, id int64) []lot.Photo {
	t.Helper()
	return s.lotOf(t, id).Photos
}

func TestPhotosOfAFolderArePinnedToTheSelectedArea(t *testing.T) {
	s, id := withPhotos(t)
	list := s.keptPhotos(t, id)
	if len(list) != 2 || list[0].Area != "12" || list[0].Stage != lot.Before || list[0].Name != "a front.jpg" {
		t.Fatalf("%+v", list)
	}
	s.wants(t, "Photos: 12 front", "2 photos added.", "c broken.jpeg: the photo breaks off or is damaged")
	if n := len(seen.All[*widgets.Thumbnail](s.screen.Content())); n != 2 {
		t.Errorf("%d small pictures", n)
	}
	p := seen.All[*plan.Plan](s.screen.Content())[0]
	if want := " · 2 photos"; !strings.HasSuffix(p.Caption(), want) {
		t.Errorf("the plan says %q", p.Caption())
	}
	s.undo()
	s.wants(t, "Undone: add 2 photos.")
	if n := len(s.keptPhotos(t, id)); n != 0 || len(seen.All[*widgets.Thumbnail](s.screen.Content())) != 0 {
		t.Errorf("%d photos after undo", n)
	}
}

func TestAPhotoIsAddedOnceOnly(t *testing.T) {
	s, id := withPhotos(t)
	s.tap(t, "Add photos…")
	seen.All[*widgets.TextEntry](s.top())[0].SetText(photographs(t))
	s.tap(t, "Add")
	s.wants(t, "0 photos added. 2 photos the lot had already.")
	if n := len(s.keptPhotos(t, id)); n != 2 {
		t.Errorf("%d photos", n)
	}
}

// Dropped on the Damage section, pictures are of the selected area; elsewhere, of the whole vehicle. A table stays a table.
func TestDroppedPicturesBecomePhotos(t *testing.T) {
	s, id := worksheet(t, "27", '2')
	folder := photographs(t)
	drop := func(names ...string) {
		var files []fyne.URI
		for _, n := range names {
			files = append(files, storage.NewFileURI(filepath.Join(folder, n)))
		}
		s.window.Drop(files)
	}
	p := seen.All[*plan.Plan](s.screen.Content())[0]
	s.screen.Canvas().Focus(p)
	seen.Press(p, fyne.KeyRight)
	drop("a front.jpg")
	s.press(fyne.Key3)
	drop("b engine.JPG", "c broken.jpeg")
	s.wants(t, "1 photo added.", "c broken.jpeg: the photo breaks off")
	if list := s.keptPhotos(t, id); len(list) != 2 || list[0].Area != "01" || list[1].Area != "" {
		t.Errorf("%+v", list)
	}
	drop("list.csv")
	if all := strings.Join(seen.Texts(s.top()), " "); !strings.Contains(all, "Import list.csv") {
		t.Errorf("a dropped table opens %q", all)
	}
	drop("a front.jpg") // a dialog is open: it waits
	if n := len(s.keptPhotos(t, id)); n != 2 {
		t.Errorf("%d photos", n)
	}
}

func TestWhereNoPictureIsTheWindowSaysSo(t *testing.T) {
	s, _ := worksheet(t, "27", '2')
	s.tap(t, "Add photos…")
	nowhere := filepath.Join(t.TempDir(), "none")
	seen.All[*widgets.TextEntry](s.top())[0].SetText(nowhere)
	s.tap(t, "Add")
	s.wants(t, "Could not add the photos: no photo is at "+nowhere)
}

func TestEnterOpensTheLargeViewAndWhatIsSaidThereIsKept(t *testing.T) {
	s, id := withPhotos(t)
	var first fyne.Focusable = seen.All[*widgets.Thumbnail](s.screen.Content())[0]
	s.screen.Canvas().Focus(first)
	seen.Press(first, fyne.KeyReturn)
	if all := strings.Join(seen.Texts(s.top()), " "); !strings.Contains(all, "a front.jpg · 320 x 240") {
		t.Fatalf("the large view says %q", all)
	}
	caption := seen.All[*widgets.TextEntry](s.top())[0]
	test.Type(caption, "bumper in")
	s.tap(t, "Next")
	if all := strings.Join(seen.Texts(s.top()), " "); !strings.Contains(all, "b engine.JPG") {
		t.Errorf("after Next: %q", all)
	}
	seen.All[*widgets.Select](s.top())[0].SetSelected("engine bay")
	seen.All[*widget.RadioGroup](s.top())[0].SetSelected("taken after the work")
	s.tap(t, "Close")
	list := s.keptPhotos(t, id)
	if list[0].Caption != "bumper in" || list[1].Area != "engine_bay" || list[1].Stage != lot.After || list[0].Stage != lot.Before {
		t.Errorf("%+v", list)
	}
	s.wants(t, "Others: engine bay 1.")
	s.undo()
	s.wants(t, "Undone: photo taken after the work.")
}

func TestARemovedPhotoComesBack(t *testing.T) {
	s, id := withPhotos(t)
	seen.All[*widgets.Thumbnail](s.screen.Content())[1].Tapped(nil)
	s.screen.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyDelete})
	if list := s.keptPhotos(t, id); len(list) != 1 || list[0].Name != "a front.jpg" || s.screen.Canvas().Overlays().Top() != nil {
		t.Errorf("%+v", list)
	}
	s.wants(t, "Undo puts it back.")
	before := s.keptPhotos(t, id)
	s.undo()
	if list := s.keptPhotos(t, id); len(list) != 2 || slices.Equal(list, before) {
		t.Errorf("after undo: %+v", list)
	}
}

// onBuild returns the window with the photographs of a build in sight.
func onBuild(t *testing.T) (*stage, int64) {
	t.Helper()
	s, id := worksheet(t, "27", '2')
	s.window.Do(desk.MarkLots(lot.Won, id))
	s.window.Do(desk.GoToBuild(id))
	s.press(fyne.Key5)
	return s, id
}

// Photographs are marked in the list of a folder and added together, on Builds as on the worksheet, by the keyboard alone.
func TestSeveralPhotosAreMarkedAndAddedAtOnce(t *testing.T) {
	for name, page := range map[string]func(*testing.T) (*stage, int64){
		"worksheet": func(t *testing.T) (*stage, int64) { return worksheet(t, "27", '2') }, "builds": onBuild} {
		t.Run(name, func(t *testing.T) {
			s, id := page(t)
			s.tap(t, "Add photos…")
			s.tap(t, "Look for them…")
			path := seen.All[*widgets.TextEntry](s.top())[0]
			path.SetText(photographs(t))
			path.OnSubmitted(path.Text)
			list := s.screen.Canvas().Focused()
			seen.Press(list, fyne.KeyDown, fyne.KeySpace, fyne.KeyDown, fyne.KeySpace, fyne.KeyReturn)
			s.wants(t, "2 photos added.")
			if n := len(s.keptPhotos(t, id)); n != 2 || s.screen.Canvas().Overlays().Top() != nil {
				t.Errorf("%d photos", n)
			}
			s.tap(t, "Add photos…")
			s.tap(t, "Look for them…") // and it begins where it was left
			if !seen.Says(s.top(), "c broken.jpeg") {
				t.Errorf("%q", seen.Texts(s.top()))
			}
		})
	}
}

// Several pictures that are dropped on a build become its photographs together, taken after the work.
func TestSeveralPicturesDroppedOnABuild(t *testing.T) {
	s, id := onBuild(t)
	folder := photographs(t)
	s.window.Drop([]fyne.URI{storage.NewFileURI(filepath.Join(folder, "a front.jpg")),
		storage.NewFileURI(filepath.Join(folder, "b engine.JPG"))})
	if list := s.keptPhotos(t, id); len(list) != 2 || list[1].Stage != lot.After {
		t.Errorf("%+v", list)
	}
}

// On Builds a photograph is looked at large, turned to the next, given its words and removed, as on the worksheet.
func TestAPhotoIsShownLargeFromBuilds(t *testing.T) {
	s, id := onBuild(t)
	s.tap(t, "Add photos…")
	seen.All[*widgets.TextEntry](s.top())[0].SetText(photographs(t))
	s.tap(t, "Add")
	var list fyne.Focusable = seen.All[*table.Table](s.screen.Content())[0]
	s.screen.Canvas().Focus(list)
	seen.Press(list, fyne.KeyDown, fyne.KeyReturn)
	if all := strings.Join(seen.Texts(s.top()), " "); !strings.Contains(all, "a front.jpg · 320 x 240") {
		t.Fatalf("the large view says %q", all)
	}
	s.tap(t, "Next")
	test.Type(seen.All[*widgets.TextEntry](s.top())[0], "new mount")
	s.tap(t, "Close")
	if kept := s.keptPhotos(t, id); kept[1].Caption != "new mount" || kept[0].Caption != "" {
		t.Errorf("%+v", kept)
	}
	s.screen.Canvas().Focus(list)
	seen.Press(list, fyne.KeyDelete)
	if kept := s.keptPhotos(t, id); len(kept) != 1 || kept[0].Caption != "new mount" {
		t.Errorf("%+v", kept)
	}
	s.undo()
	if kept := s.keptPhotos(t, id); len(kept) != 2 {
		t.Errorf("after undo: %+v", kept)
	}
}
