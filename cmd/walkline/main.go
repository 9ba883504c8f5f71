package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"

	"walkline/cmd/wire"
	"walkline/store"
	"walkline/ui"
	"walkline/ui/task"
)

func main() {
	chosen := flag.String("store", "", "the SQLite file that keeps the lots (default: walkline.db in the user's data folder)")
	flag.Parse()
	if err := run(*chosen); err != nil {
		fmt.Fprintln(os.Stderr, "walkline:", err)
		os.Exit(1)
	}
}

// run opens the store and the window, and returns when the window is closed.
func run(chosen string) error {
	if err := display(); err != nil {
		return err
	}
	path, err := storePath(chosen)
	if err != nil {
		return err
	}
	a := app.NewWithID("walkline.desktop")
	release, err := store.Claim(context.Background(), path)
	if err != nil {
		ui.ShowTrouble(a, "The lots are open already", "Another window shows the lots of "+path+". Go on there, or close it first: two windows would write over each other.")
		return err
	}
	defer release()
	book, err := store.Open(context.Background(), path)
	if err != nil {
		ui.ShowTrouble(a, "The lots could not be opened", err.Error()+"\n\nNothing was changed. Move the file away or start with --store and another file.")
		return err
	}
	defer book.Close()
	desk, err := wire.NewDesk(book)
	if err != nil {
		return err
	}
	crash := crashFile(filepath.Dir(path))
	runner := task.NewQueued(crash)
	w := ui.NewWindow(a, desk, runner, crash)
	w.Show()
	a.Run()
	runner.Stop()
	return nil
}

// crashFile returns what is done with a panic that was caught: it is written to a file of its own beside the store, and
// the program goes on. Every edit is saved as it is made, so nothing is lost.
func crashFile(dir string) func(task.Crash) {
	return func(c task.Crash) {
		name := filepath.Join(dir, "crash-"+time.Now().UTC().Format("20060102T150405Z")+".txt")
		text := fmt.Sprintf("%v\n\n%s", c.Value, c.Stack)
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			fmt.Fprintln(os.Stderr, "walkline: writing the crash file:", err)
		}
		fmt.Fprintln(os.Stderr, "walkline: a fault in the program, written to", name)
		fyne.LogError("caught", fmt.Errorf("%v", c.Value))
	}
}
