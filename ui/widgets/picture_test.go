package widgets

import (
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"walkline/ui/theme"
)

// looks are the themes in which every widget is drawn.
var looks = map[string]theme.Options{
	"light":     {Look: theme.Light},
	"dark":      {Look: theme.Dark},
	"light-big": {Look: theme.Light, Scale: 1.5},
}

// picture draws an object at a size in every look. With WALKLINE_PICTURES set it writes PNG files there to be looked at.
func picture(t *testing.T, name string, size fyne.Size, make func() fyne.CanvasObject) {
	t.Helper()
	for look, options := range looks {
		a := test.NewTempApp(t)
		a.Settings().SetTheme(theme.New(options))
		w := test.NewTempWindow(t, container.NewPadded(container.NewPadded(make())))
		w.Resize(size.AddWidthHeight(1, 1))
		w.Resize(size) // again: a text that wraps knows its height after it had its width
		if w.Content().MinSize().Width > size.Width+0.5 && options.Scale == 0 {
			t.Errorf("%s wants %v, the window has %v", name, w.Content().MinSize(), size)
		}
		save(t, name+"-"+look, w)
	}
}

// save draws the window and keeps the picture where it is asked for.
func save(t *testing.T, name string, w fyne.Window) {
	t.Helper()
	img := w.Canvas().Capture()
	folder := os.Getenv("WALKLINE_PICTURES")
	if folder == "" {
		return
	}
	f, err := os.Create(filepath.Join(folder, name+".png"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, img); err != nil {
		t.Fatal(err)
	}
}
