package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"os"
	"path/filepath"
	"runtime/debug"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"

	"walkline/assets"
	"walkline/cmd/version"
	"walkline/cmd/wire"
	"walkline/store"
	"walkline/ui"
	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/valuation"
)

// mostMemory is the memory, in bytes, above which the garbage collector works harder. Ours: a machine with 2 GB has room for it.
const mostMemory = 700 << 20

func main() {
	debug.SetMemoryLimit(mostMemory)
	os.Exit(execute(os.Args[1:], os.Stdout, os.Stderr))
}

// execute does what the arguments ask and returns the exit code.
func execute(args []string, out, errs io.Writer) int {
	o, err := readOptions(args)
	switch {
	case err != nil:
		fmt.Fprintln(errs, "walkline:", err)
		return faulty
	case o.words != "":
		fmt.Fprint(out, o.words)
		return done
	}
	if err = run(o, errs); err == nil {
		return done
	}
	fmt.Fprintln(errs, "walkline:", err)
	switch {
	case errors.As(err, new(unshowable)):
		box("Walkline cannot show its window", err.Error())
		return noWindow
	case errors.As(err, new(homeless)): // every other fault had a window of its own
		box("Walkline cannot start", err.Error())
	}
	return failed
}

// run opens the store and the window, and returns when the window is closed.
func run(o options, errs io.Writer) error {
	folder, err := madeFolder()
	if err != nil {
		return err
	}
	defer keepLog(folder, errs)()
	shipped := task.Ahead(func() error { _, err := wire.Shipped(); return err })
	hung := time.AfterFunc(patience, func() { unpainted(&session{faults: crashes{errs: errs}, free: func() {}}) })
	err = tryWindow()
	hung.Stop()
	if err != nil {
		slog.Error("no window", "error", err)
		return err
	}
	faults := crashes{folder: folder, errs: errs, now: time.Now}
	said := faults.unfinished()
	if err := shipped(); err != nil {
		return err
	}
	return faults.over(func() error { return shown(o, faults, said) })
}

// shown opens the lots and the window, and returns when the window is closed.
func shown(o options, faults crashes, said []string) error {
	folder := faults.folder
	speakEnglish()
	moveSettings(toolkitFolder())
	a := app.NewWithID(appID)
	a.SetIcon(fyne.NewStaticResource("walkline.png", assets.Icon()))
	path := o.store
	if path == "" {
		path = filepath.Join(folder, "walkline.db")
	}
	free, err := claim(a, path)
	if err != nil {
		return err
	}
	s := &session{path: path, folder: folder, faults: faults, said: said, free: free, runner: task.NewQueued(faults.caught)}
	defer s.close()
	opened := task.Ahead(s.read)
	ui.Dress(a)
	why := s.shown(a, opened())
	if why != nil {
		s.rescue(a, why)
	}
	a.Run()
	if s.book == nil {
		return why
	}
	slog.Info("closed")
	return nil
}

// session is what one run of the window is over.
type session struct {
	book         *store.Store // nil: the lots did not open
	desk         *desk.Desk
	first        desk.State
	free         func() // lets go of the lots
	path, folder string
	faults       crashes
	said         []string // files of faults that ended programs before this one
	runner       *task.Queued
	watch        *time.Timer // until the window is painted
}

// show builds the window over the lots and shows it.
func (s *session) show(a fyne.App) {
	w := ui.NewWindow(a, ui.Parts{Desk: s.desk, First: s.first, Runner: s.runner, Crash: s.faults.caught})
	w.Describe(ui.About{Version: version.Line("Walkline"), Engine: valuation.Engine, File: s.path, Folder: s.folder,
		Licences: assets.Notices()})
	if len(s.said) > 0 {
		w.Warn("Walkline ended in a fault the last time. What is known of it lies in " + s.said[len(s.said)-1] + ". Every edit had been saved.")
	}
	s.watch = awaitPaint(s.runner, patience, func() { unpainted(s) }, func() { s.rest(a, w) })
	endOnSignals(a, w, s.runner)
	w.Show()
	(&daily{runner: s.runner, clock: s.runner, now: time.Now, book: s.book, say: w,
		folder: func() string { return a.Preferences().String(ui.DailyFolder) }}).keep()
}

// unhurried is how long work that nobody asked for waits once the window is painted. Ours: by then its user looks at it.
const unhurried = 3 * time.Second

// rest has the file checked, gives back the memory that only the start needed, most of it for reading the catalogues, and has the rest of
// the work begun.
func (s *session) rest(a fyne.App, w *ui.Window) {
	s.check(a, s.runner, w)
	task.Start(s.runner, task.Order[struct{}]{Key: "rest", Wait: time.Second,
		Work: func(context.Context) (struct{}, error) { debug.FreeOSMemory(); return struct{}{}, nil },
		Show: func(struct{}, error) {}})
	s.runner.After(unhurried, w.Begin)
}
