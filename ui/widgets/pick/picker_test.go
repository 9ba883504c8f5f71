package pick

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/ui/widgets/seen"
)

// shelf returns a folder with two folders, four pictures in the order of their numbers, a table and a hidden file.
func shelf(t *testing.T) string {
	t.Helper()
	root := t.TempDir()
	for _, folder := range []string{"b lot 41", "A lot 40"} {
		if err := os.Mkdir(filepath.Join(root, folder), 0o700); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range []string{"IMG 10.jpg", "IMG 9.JPG", "img 9b.png", "IMG 100.jpg", "list.csv", ".hidden.jpg"} {
		if err := os.WriteFile(filepath.Join(root, name), make([]byte, 1500), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return root
}

func shown(t *testing.T, of For) (p *Picker, picked *[]string) {
	t.Helper()
	test.NewTempApp(t)
	of.Day, of.What = func(d time.Time) string { return d.Format("Jan 2") }, "photo"
	p, picked = New(of), &[]string{}
	p.OnPicked = func(paths []string) { *picked = paths }
	w := test.NewTempWindow(t, p.Object())
	w.Resize(fyne.NewSize(700, 500))
	w.Canvas().Focus(p.list)
	return p, picked
}

func (p *Picker) names() (names []string) {
	for _, e := range p.entries {
		names = append(names, e.name)
	}
	return names
}

var pictures = []string{".jpg", ".png"}

func TestFoldersComeFirstAndNumbersCount(t *testing.T) {
	p, _ := shown(t, For{Folder: shelf(t), Endings: pictures})
	want := []string{above, "A lot 40", "b lot 41", "IMG 9.JPG", "img 9b.png", "IMG 10.jpg", "IMG 100.jpg"}
	if got := p.names(); !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	if facts := p.list.Facts(); !strings.Contains(facts[3], "2 kB") || !strings.Contains(facts[1], "folder") {
		t.Errorf("%q", facts)
	}
}

func TestMarkedFilesAreTakenTogetherByKeyboard(t *testing.T) {
	p, picked := shown(t, For{Folder: shelf(t), Endings: pictures, Many: true})
	// a folder takes no mark
	seen.Press(p.list, fyne.KeySpace, fyne.KeyDown, fyne.KeyDown, fyne.KeyDown, fyne.KeySpace, fyne.KeyDown, fyne.KeyDown)
	if got := p.said.Text(); got != "1 of 4 marked." {
		t.Errorf("%q", got)
	}
	seen.Press(p.list, fyne.KeyReturn)
	if got := []string{filepath.Base((*picked)[0]), filepath.Base((*picked)[1])}; len(*picked) != 2 ||
		!slices.Equal(got, []string{"IMG 9.JPG", "IMG 10.jpg"}) {
		t.Errorf("%q", *picked)
	}
	p.markRange(0, 6)
	if p.Take(); len(*picked) != 4 {
		t.Errorf("all: %q", *picked)
	}
}

func TestEnterGoesIntoAFolderAndBack(t *testing.T) {
	root := shelf(t)
	p, picked := shown(t, For{Folder: root, Many: true, Endings: pictures})
	seen.Press(p.list, fyne.KeyDown, fyne.KeyDown, fyne.KeyReturn)
	if p.Folder() != filepath.Join(root, "b lot 41") || !slices.Equal(p.names(), []string{above}) {
		t.Fatalf("in %s: %q", p.Folder(), p.names())
	}
	if p.Take(); len(*picked) != 0 || p.said.Text() != "! Select a photo first." {
		t.Errorf("took %q, says %q", *picked, p.said.Text())
	}
	if seen.Press(p.list, fyne.KeyReturn); p.Folder() != root || p.list.Selected() != 2 {
		t.Errorf("back in %s at row %d", p.Folder(), p.list.Selected())
	}
}

func TestAPathCanBeTyped(t *testing.T) {
	root := shelf(t)
	p, picked := shown(t, For{Folder: filepath.Join(root, "gone"), Endings: pictures})
	for typed, says := range map[string]string{filepath.Join(root, "none"): "There is nothing at",
		filepath.Join(root, "list.csv"): "That is no photo"} {
		p.path.SetText(typed)
		if p.typed(); !strings.Contains(p.said.Text(), says) || len(*picked) != 0 {
			t.Errorf("%q: %q, took %q", typed, p.said.Text(), *picked)
		}
	}
	p.path.SetText(root)
	if p.typed(); p.Folder() != root {
		t.Errorf("in %s", p.Folder())
	}
	p.path.SetText(filepath.Join(root, "IMG 9.JPG"))
	if p.typed(); len(*picked) != 1 {
		t.Errorf("took %q", *picked)
	}
}

func TestAFolderIsTaken(t *testing.T) {
	root := shelf(t)
	p, picked := shown(t, For{Folder: root, Folders: true})
	if want := []string{above, "A lot 40", "b lot 41"}; !slices.Equal(p.names(), want) {
		t.Errorf("%q", p.names())
	}
	seen.Press(p.list, fyne.KeyDown, fyne.KeyReturn)
	if p.Take(); !slices.Equal(*picked, []string{filepath.Join(root, "A lot 40")}) {
		t.Errorf("%q", *picked)
	}
}

// A folder that answers late holds nothing up: another can be gone to meanwhile, and takes its place.
func TestAFolderThatAnswersLateHoldsNothingUp(t *testing.T) {
	root, waiting := shelf(t), map[string]func() func(){}
	p, picked := shown(t, For{Folder: root, Folders: true, Away: func(name string, work func() func()) { waiting[name] = work }})
	if got := p.said.Text(); got != "Reading "+root+"…" || len(p.entries) != 0 {
		t.Errorf("%q, %d rows", got, len(p.entries))
	}
	if p.Take(); len(*picked) != 0 {
		t.Errorf("took %q before anything was read", *picked)
	}
	p.goTo(filepath.Join(root, "b lot 41"))
	if waiting["folder"]()(); p.Folder() != filepath.Join(root, "b lot 41") {
		t.Errorf("in %s", p.Folder())
	}
	if waiting["places"]()(); p.said.Text() == "" {
		t.Error("says nothing")
	}
}

// A path that was typed and answers after the picking has ended is not taken.
func TestNothingIsTakenAfterTheEnd(t *testing.T) {
	root, waiting := shelf(t), map[string]func() func(){}
	p, picked := shown(t, For{Folder: root, Endings: pictures, Away: func(name string, work func() func()) { waiting[name] = work }})
	p.path.SetText(filepath.Join(root, "img 9b.png"))
	p.path.OnSubmitted("")
	answered := waiting["folder"]()
	p.End()
	if answered(); len(*picked) != 0 {
		t.Errorf("took %q", *picked)
	}
}

// Pictures are looked for in the user's own folder of them the first time, and at home where there is none.
func TestTheFirstFolderIsTheUsersOwn(t *testing.T) {
	home := t.TempDir()
	t.Setenv("HOME", home)
	t.Setenv("USERPROFILE", home)
	if p, _ := shown(t, For{First: "Pictures"}); p.Folder() != home {
		t.Errorf("without such a folder in %s", p.Folder())
	}
	own := filepath.Join(home, "Pictures")
	if err := os.Mkdir(own, 0o700); err != nil {
		t.Fatal(err)
	}
	if p, _ := shown(t, For{First: "Pictures"}); p.Folder() != own {
		t.Errorf("in %s", p.Folder())
	}
}
