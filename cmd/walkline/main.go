package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"os"
	"path/filepath"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"

	"walkline/assets"
	"walkline/cmd/version"
	"walkline/cmd/wire"
	"walkline/store"
	"walkline/ui"
	"walkline/ui/task"
	"walkline/valuation"
)

func main() { os.Exit(execute(os.Args[1:], os.Stdout, os.Stderr)) }

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
	err = run(o, errs)
	var unshown unshowable
	switch {
	case err == nil:
		return done
	case errors.As(err, &unshown):
		fmt.Fprintln(errs, "walkline:", err)
		box("Walkline cannot show its window", err.Error())
		return noWindow
	}
	fmt.Fprintln(errs, "walkline:", err)
	return failed
}

// run opens the store and the window, and returns when the window is closed.
func run(o options, errs io.Writer) error {
	folder, err := madeFolder()
	if err != nil {
		return err
	}
	defer keepLog(folder, errs)()
	if err := tryWindow(); err != nil {
		slog.Error("no window", "error", err)
		return err
	}
	faults := crashes{folder: folder, errs: errs, now: time.Now}
	said := faults.unfinished()
	defer faults.watch()()
	speakEnglish()
	moveSettings(toolkitFolder())
	a := app.NewWithID(appID)
	a.SetIcon(fyne.NewStaticResource("walkline.png", assets.Icon()))
	path := o.store
	if path == "" {
		path = filepath.Join(folder, "walkline.db")
	}
	book, release, err := openBook(a, path)
	if err != nil {
		return err
	}
	defer release()
	return show(a, session{book: book, release: release, path: path, folder: folder, faults: faults, said: said})
}

// openBook claims the lots and opens them; a window says why when it can't.
func openBook(a fyne.App, path string) (book *store.Store, release func(), err error) {
	free, err := store.Claim(context.Background(), path)
	if err != nil {
		slog.Warn("refused", "file", path, "error", err)
		ui.ShowTrouble(a, "The lots are open already", "Another window shows the lots of "+path+". Go on there, or close it first: two windows would write over each other.")
		return nil, nil, err
	}
	book, err = store.Open(context.Background(), path)
	if err != nil {
		slog.Error("refused", "file", path, "error", err)
		ui.ShowTrouble(a, "The lots could not be opened", err.Error()+"\n\nNothing was changed. Move the file away or start with --store and another file.")
		free()
		return nil, nil, err
	}
	slog.Info("opened", "file", path)
	return book, func() {
		if err := book.Close(); err != nil {
			slog.Error("closing", "file", path, "error", err)
		}
		free()
	}, nil
}

// session is what one run of the window is over.
type session struct {
	book         *store.Store
	release      func() // closes the book and lets go of it
	path, folder string
	faults       crashes
	said         []string // files of faults that ended programs before this one
}

// show opens the window, and returns when it is closed.
func show(a fyne.App, s session) error {
	desk, err := wire.NewDesk(s.book)
	if err != nil {
		return err
	}
	desk.Importer, desk.Lister, desk.Past = logged{desk.Importer}, loggedList{desk.Lister}, loggedPast{desk.Past}
	runner := task.NewQueued(s.faults.caught)
	w := ui.NewWindow(a, desk, runner, s.faults.caught)
	w.Describe(ui.About{Version: version.Line("Walkline"), Engine: valuation.Engine, File: s.path, Folder: s.folder, Licences: assets.Notices()})
	if len(s.said) > 0 {
		w.Warn("Walkline ended in a fault the last time. What is known of it lies in " + s.said[len(s.said)-1] + ". Every edit had been saved.")
	}
	watch := awaitPaint(runner, patience, func() { unpainted(s) })
	endOnSignals(a, w, runner)
	w.Show()
	a.Run()
	watch.Stop()
	runner.Stop()
	slog.Info("closed")
	return nil
}
