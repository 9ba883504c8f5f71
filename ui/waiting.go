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

// barred is work away from the window behind a bar. It can be cancelled until it has come to its end, and ends with the program.
type barred[T any] struct {
	words string
	work  func(context.Context) (T, error)
	show  func(came T, err error)
	gone  func() // it was cancelled, and nothing came of it
}

// behindBar starts work that takes a while.
func behindBar[T any](w *Window, b barred[T]) {
	working, cancel := context.WithCancel(context.Background())
	bar := w.waiting(b.words, cancel)
	task.Start(w.runner, task.Order[T]{ // without a key: a second one must not cancel the first
		Work: func(ctx context.Context) (T, error) {
			defer context.AfterFunc(ctx, cancel)() // the program ends
			return b.work(desk.Watched(working, func(done float64) { task.Report(ctx, done, "") }))
		},
		Report: func(done float64, _ string) { bar.set(done) },
		Show: func(came T, err error) {
			defer cancel()
			if bar.close(); err != nil && working.Err() != nil {
				b.gone()
				return
			}
			b.show(came, err)
		}})
}

// prepare has the part of an action that takes long done away from the window, and then does the rest. Until that it can be cancelled, and
// no other one is begun: the same key pressed twice does one thing.
func (w *Window) prepare(a desk.Action) {
	words, s := a.Bar(w.state), w.state
	if w.preparing != "" {
		w.say(desk.State{Notice: w.preparing + " is still under way: that was not done."})
		return
	}
	w.preparing = words
	behindBar(w, barred[desk.Action]{words: words,
		work: func(ctx context.Context) (desk.Action, error) { return w.desk.Ahead(ctx, s, a) },
		show: func(rest desk.Action, err error) {
			if w.preparing = ""; !rest.Ready() {
				w.failed(words, err)
				return
			}
			w.Do(rest)
		},
		gone: func() {
			w.preparing = ""
			w.say(desk.State{Notice: words + ": cancelled. Nothing was changed."})
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
