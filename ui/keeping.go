package ui

import (
	"context"
	"slices"

	"fyne.io/fyne/v2"

	"walkline/store/book"
	"walkline/ui/desk"
)

// The settings of the toolkit that keep the size of the window: it is of the machine's screen.
const (
	widthKept  = "window.width"
	heightKept = "window.height"
)

// keptSize returns the size that the window had last.
func (w *Window) keptSize() fyne.Size {
	kept := w.app.Preferences()
	return fyne.NewSize(float32(kept.FloatWithFallback(widthKept, 1280)), float32(kept.FloatWithFallback(heightKept, 720)))
}

// sized lays the window's content out and keeps its size, once there is a window.
type sized struct{ w *Window }

func (s sized) MinSize(objects []fyne.CanvasObject) fyne.Size { return objects[0].MinSize() }

func (s sized) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Resize(size)
	objects[0].Move(fyne.NewPos(0, 0))
	if now, kept := s.w.window.Canvas().Size(), s.w.app.Preferences(); s.w.shown && now != s.w.keptSize() {
		kept.SetFloat(widthKept, float64(now.Width))
		kept.SetFloat(heightKept, float64(now.Height))
	}
}

// stand is where the user was, kept with the lots.
type stand struct {
	Place desk.Place `json:"place"`
	Lot   int64      `json:"lot"` // that was open; 0: none
}

const standSetting = "stand"

// stands returns where the user is.
func (w *Window) stands() stand {
	s := stand{Place: w.state.Place}
	if w.state.Open != nil {
		s.Lot = w.state.Open.ID
	}
	return s
}

// keepStand keeps where the user is, where that has changed. What cannot be kept is not missed: the next start shows the Board.
func (w *Window) keepStand() {
	if now := w.stands(); now != w.stood && w.shown {
		w.stood = now
		_ = w.desk.Book.PutSetting(context.Background(), standSetting, now)
	}
}

// goBack shows the page, and the lot, where the user was last.
func (w *Window) goBack() {
	var last stand
	if found, err := w.desk.Book.Setting(context.Background(), standSetting, &last); !found || err != nil {
		return
	}
	w.stood = last
	if slices.ContainsFunc(w.state.Entries, func(e book.Entry) bool { return e.ID == last.Lot && !e.Archived }) {
		w.Do(desk.OpenLot(last.Lot))
	}
	if last.Place != w.state.Place && (w.state.Open != nil || !w.places.at(last.Place).lot) {
		w.goTo(last.Place)
	}
}
