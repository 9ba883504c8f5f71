package main

import (
	"fmt"
	"log/slog"
	"os"
	"os/signal"
	"runtime"
	"syscall"
	"time"

	"fyne.io/fyne/v2"

	"walkline/ui"
	"walkline/ui/task"
)

// patience is how long the window may take to its first frame before it is taken for one that will never be seen; a frame is how long the
// toolkit takes from one to the next, with room.
const (
	patience = 30 * time.Second
	frame    = 100 * time.Millisecond
)

// settling is how many frames the toolkit may draw until all that it starts beside the window has begun.
const settling = 30

// later is what calls back on the window's goroutine.
type later interface {
	After(wait time.Duration, then func()) (stop func())
}

// awaitPaint calls never, away from the window, unless the window's loop comes round and has had the time of a frame before the patience
// is at its end: a driver that hangs keeps it from both. When it has, painted is called, on the window's goroutine.
func awaitPaint(l later, patience time.Duration, never, painted func()) *time.Timer {
	began := time.Now()
	t := time.AfterFunc(patience, never)
	l.After(0, func() {
		l.After(frame, func() {
			if t.Stop() {
				slog.Info("painted", "after", time.Since(began).Round(time.Millisecond))
				painted()
			}
		})
	})
	return t
}

// unpainted ends the program, whose window goroutine hangs in the driver: every edit is saved as it is made, and nobody could make any.
func unpainted(s *session) {
	err := unshowable{fmt.Sprintf("the window was not painted within %v", patience), softwareAdvice(runtime.GOOS) + " " + terminalInstead}
	slog.Error("no window", "error", err)
	fmt.Fprintln(s.faults.errs, "walkline:", err)
	s.release() // before anybody has to close the message
	box("Walkline cannot show its window", err.Error())
	os.Exit(noWindow)
}

// endOnSignals closes the window as its user would when the system asks the program to end: the field in hand is left, which takes
// what was typed, and all that follows a closed window follows. The toolkit's own ear hears two of these signals and drops what waits
// for the window, so it is taken off once the window runs. Keys that were pressed before the signal are typed first: the signal comes by a
// road of its own, past those that the window has not yet asked its display for.
func endOnSignals(a fyne.App, w *ui.Window, runner *task.Queued) {
	heard := make(chan os.Signal, 1)
	signal.Notify(heard, syscall.SIGHUP, syscall.SIGTERM, os.Interrupt)
	afterFrames(settling, func() {
		signal.Reset(syscall.SIGTERM, os.Interrupt)
		signal.Notify(heard, syscall.SIGTERM, os.Interrupt)
	})
	task.Start(runner, task.Order[os.Signal]{Key: "signals",
		Work: waitFor(heard),
		Show: func(s os.Signal, err error) {
			if err == nil {
				slog.Info("asked to end", "signal", s.String())
				afterFrames(2, func() {
					w.Leave()
					a.Quit()
				})
			}
		}})
}

// afterFrames calls then once the window has drawn so many frames more; it takes what came from the display before it draws one.
func afterFrames(n int, then func()) {
	var frames *fyne.Animation
	frames = fyne.NewAnimation(patience, func(float32) {
		if n--; n == 0 {
			frames.Stop()
			then()
		}
	})
	frames.RepeatCount = fyne.AnimationRepeatForever
	frames.Start()
}
