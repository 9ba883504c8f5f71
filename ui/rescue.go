package ui

import (
	"context"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/task"
	"walkline/ui/theme"
	"walkline/ui/widgets"
	"walkline/ui/widgets/pick"
)

// Rescue is what is offered where the lots do not open, or turn out to be damaged. Each way out runs away from the window.
type Rescue struct {
	Shown   bool                                                           // the lots are on show, and go on when this is closed
	Words   string                                                         // what is wrong, in sentences
	Restore func(ctx context.Context, backup string) error                 // puts a backup in the place of what is there
	Salvage func(ctx context.Context) (to string, words string, err error) // saves what can be read to a new file; nil: nothing can be
	Aside   func(ctx context.Context) error                                // keeps a stray write-ahead file aside; nil: there is none
	Again   func() error                                                   // after one that helped: shows the lots, or says what comes next
}

// rescue is the window of a [Rescue].
type rescue struct {
	Rescue
	window fyne.Window
	runner task.Runner
	path   *widgets.TextEntry
	said   *widget.Label
}

// ShowRescue opens a window that says why the lots could not be opened, or what is damaged in them, and offers to restore a backup at once,
// to save what can be read, and to keep a stray file aside. When one of these helped, the lots are shown and the window closes.
func ShowRescue(a fyne.App, r task.Runner, of Rescue) {
	if !of.Shown {
		a.Settings().SetTheme(theme.New(theme.Options{}))
	}
	w := &rescue{Rescue: of, window: a.NewWindow("Walkline"), runner: r, path: widgets.NewTextEntry(), said: widget.NewLabel(of.Words)}
	w.said.Wrapping = fyne.TextWrapWord
	w.path.SetPlaceHolder("path of a backup")
	restore := func() {
		backup := strings.TrimSpace(w.path.Text)
		w.try("Checking the backup…", func(ctx context.Context) error { return of.Restore(ctx, backup) })
	}
	w.path.OnSubmitted = func(string) { restore() }
	way := container.NewBorder(nil, nil, nil, container.NewHBox(widgets.NewButton("Look for it…", w.browse),
		widgets.NewButton("Restore it", restore)), w.path)
	heading, leave := "The lots could not be opened", a.Quit
	if of.Shown {
		heading, leave = "The lots are damaged", w.window.Close
	}
	foot := container.NewHBox(widgets.NewButton("Close", leave))
	if of.Aside != nil {
		foot.Add(widgets.NewButton("Keep the stray file aside and open without it", func() {
			w.try("Keeping the file aside…", of.Aside)
		}))
	}
	if of.Salvage != nil {
		foot.Add(widgets.NewButton("Save what can be read", w.save))
	}
	w.window.SetContent(container.NewPadded(container.NewBorder(widgets.NewHeading(heading),
		container.NewVBox(way, foot), nil, nil, container.NewVScroll(w.said))))
	w.window.Resize(fyne.NewSize(760, 380))
	w.window.Show()
	w.window.Canvas().Focus(w.path)
}

// try runs one way out and opens the lots after it, or says why it did not help.
func (w *rescue) try(words string, way func(ctx context.Context) error) {
	w.said.SetText(words)
	task.Start(w.runner, task.Order[struct{}]{Key: "rescue",
		Work: func(ctx context.Context) (struct{}, error) { return struct{}{}, way(ctx) },
		Show: func(_ struct{}, err error) {
			if err == nil {
				err = w.Again()
			}
			if err != nil {
				w.said.SetText(err.Error() + "\n\n" + w.Words)
				return
			}
			w.window.Close()
		}})
}

// save saves what can be read, says what that is and offers it as the backup to restore.
func (w *rescue) save() {
	w.said.SetText("Reading what can be read, lot by lot…")
	type saved struct{ to, words string }
	task.Start(w.runner, task.Order[saved]{Key: "rescue",
		Work: func(ctx context.Context) (s saved, err error) {
			s.to, s.words, err = w.Salvage(ctx)
			return s, err
		},
		Show: func(s saved, err error) {
			if err != nil {
				w.said.SetText(err.Error() + "\n\n" + w.Words)
				return
			}
			w.said.SetText(s.words)
			w.path.SetText(s.to)
		}})
}

// browse lets the user choose the backup from a list.
func (w *rescue) browse() {
	d := newPicking("Backup to restore", "Choose", pick.For{What: "backup"}, w.window, w.runner,
		func(paths []string) { w.path.SetText(paths[0]) })
	d.Show()
	w.window.Canvas().Focus(d.picker.First())
}
