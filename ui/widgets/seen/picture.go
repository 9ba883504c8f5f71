package seen

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

// Open opens a window on an object, in the light look.
func Open(t testing.TB, size fyne.Size, o fyne.CanvasObject) fyne.Window {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(theme.New(theme.Options{Look: theme.Light}))
	w := test.NewTempWindow(t, o)
	w.Resize(size)
	return w
}

// Press types keys that are no characters.
func Press(o fyne.Focusable, keys ...fyne.KeyName) {
	for _, k := range keys {
		o.TypedKey(&fyne.KeyEvent{Name: k})
	}
}

// Looks are the themes in which everything is drawn.
var Looks = map[string]theme.Options{
	"light":     {Look: theme.Light},
	"dark":      {Look: theme.Dark},
	"light-big": {Look: theme.Light, Scale: 1.5},
}

// Picture draws an object at a size in every look, and fails when it wants more width than it gets at text scale 1. With the
// environment's WALKLINE_PICTURES set to a folder it writes PNG files there to be looked at.
func Picture(t *testing.T, name string, size fyne.Size, make func() fyne.CanvasObject) {
	t.Helper()
	for look, options := range Looks {
		test.NewTempApp(t).Settings().SetTheme(theme.New(options))
		w := test.NewTempWindow(t, container.NewPadded(container.NewPadded(make())))
		w.Resize(size.AddWidthHeight(1, 1))
		w.Resize(size) // again: a text that wraps knows its height after it had its width
		if w.Content().MinSize().Width > size.Width+0.5 && options.Scale == 0 {
			t.Errorf("%s wants %v, the window has %v", name, w.Content().MinSize(), size)
		}
		Save(t, name+"-"+look, w)
	}
}

// Save draws the window and keeps the picture where it is asked for.
func Save(t *testing.T, name string, w fyne.Window) {
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
