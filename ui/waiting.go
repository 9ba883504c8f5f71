package ui

import (
	"context"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/widgets"
)

// patience is how long work may take before its bar is shown.
const patience = 400 * time.Millisecond

// bar shows how far work is that takes a while, and ends it when asked: by its button or by Escape.
type bar struct {
	w      *Window
	dialog *dialog.CustomDialog
	shows  *widget.ProgressBar
	stop   func()
	ended  bool
}

// waiting returns the bar of work that cancel ends. It is shown once the work has taken a while.
func (w *Window) waiting(words string, cancel func()) *bar {
	b := &bar{w: w, shows: widget.NewProgressBar()}
	w.say(desk.State{Notice: words + "…"})
	b.stop = w.runner.After(patience, func() {
		if b.ended {
			return
		}
		end := widgets.NewButton("Cancel", func() { b.dialog.Hide() })
		b.dialog = dialog.NewCustomWithoutButtons(words, container.NewVBox(b.shows, container.NewHBox(end)), w.window)
		b.dialog.Resize(fyne.NewSize(420, 140))
		w.open(b.dialog)
		b.dialog.SetOnClosed(func() {
			w.forget(b.dialog)
			if !b.ended {
				b.ended = true
				cancel()
			}
		})
	})
	return b
}

// prepare has the part of an action that takes long done away from the window, and then does the rest. Until that it can be cancelled.
func (w *Window) prepare(a desk.Action) {
	working, cancel := context.WithCancel(context.Background())
	words, s := a.Bar(w.state), w.state
	bar := w.waiting(words, cancel)
	task.Start(w.runner, task.Order[desk.Action]{ // without a key: a second one must not cancel the first
		Work: func(ctx context.Context) (desk.Action, error) {
			return w.desk.Ahead(desk.Watched(working, func(done float64) { task.Report(ctx, done, "") }), s, a)
		},
		Report: func(done float64, _ string) { bar.set(done) },
		Show: func(rest desk.Action, err error) {
			defer cancel()
			bar.close()
			switch {
			case err != nil && working.Err() != nil:
				w.say(desk.State{Notice: words + ": cancelled. Nothing was changed."})
			case !rest.Ready():
				w.failed(words, err)
			default:
				w.Do(rest)
			}
		}})
}

// cancelled says that the work of some words was ended before anything came of it.
func (w *Window) cancelled(words string) {
	w.say(desk.State{Notice: words + ": cancelled. Nothing was taken."})
	w.nextTable()
}

func (b *bar) set(done float64) { b.shows.SetValue(done) }

// close takes the bar away: the work has come to its end.
func (b *bar) close() {
	b.ended = true
	b.stop()
	if b.dialog != nil {
		b.dialog.Hide()
	}
}
