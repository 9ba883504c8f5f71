package ui

import (
	"fmt"
	"net/url"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/desk"
	"walkline/ui/widgets"
)

// saved is the file that was written last, with the buttons beside what is said of it.
type saved struct {
	w       *Window
	path    string // empty: none yet
	buttons *fyne.Container
}

func newSaved(w *Window) *saved {
	s := &saved{w: w}
	s.buttons = container.NewHBox(widgets.NewButton("Open it", w.handler(s.open)), widgets.NewButton("Show its folder", w.handler(s.reveal)))
	s.buttons.Hide()
	return s
}

// is takes the file that was written.
func (s *saved) is(path string) {
	s.path = path
	s.buttons.Show()
}

// open opens the file in the system's own program for its kind.
func (s *saved) open() { s.show(s.path) }

// reveal opens the file's folder in the system's file manager.
func (s *saved) reveal() { s.show(filepath.Dir(s.path)) }

func (s *saved) show(path string) {
	if s.path == "" {
		s.w.say(desk.State{Notice: "Nothing was saved to a file yet."})
		return
	}
	if err := s.w.app.OpenURL(fileURL(path)); err != nil {
		s.w.failed("open "+path, fmt.Errorf("%w. The system may have no program for it", err))
	}
}

// fileURL is a path of this machine as the system's opener takes it.
func fileURL(path string) *url.URL {
	return &url.URL{Scheme: "file", Path: "/" + strings.TrimPrefix(filepath.ToSlash(path), "/")}
}
