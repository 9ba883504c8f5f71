package main

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"strings"
	"time"

	"fyne.io/fyne/v2"

	"walkline/cmd/wire"
	"walkline/store"
	"walkline/ui"
	"walkline/ui/task"
)

// claim takes the lots for this window; a window says why when it can't.
func claim(a fyne.App, path string) (free func(), err error) {
	free, err = store.Claim(context.Background(), path)
	if err != nil {
		slog.Warn("refused", "file", path, "error", err, "detail", store.Detail(err))
		ui.ShowTrouble(a, "The lots are open already",
			"Another window shows the lots of "+path+". Go on there, or close it first: two windows would write over each other.")
	}
	return free, err
}

// read opens the lots and loads what the window shows first. It touches no widget.
func (s *session) read() error {
	book, err := store.OpenAtOnce(context.Background(), s.path)
	if err != nil {
		slog.Error("refused", "file", s.path, "error", err, "detail", store.Detail(err))
		return err
	}
	slog.Info("opened", "file", s.path)
	s.book = book
	if s.desk, err = wire.NewDesk(book); err != nil {
		return err
	}
	ownRegion().settle(s.desk)
	s.desk.Importer, s.desk.Lister, s.desk.Past = logged{s.desk.Importer}, loggedList{s.desk.Lister}, loggedPast{s.desk.Past}
	s.first = s.desk.Load(context.Background())
	if s.first.Trouble == "" {
		return nil
	}
	if err = book.LookAtPages(context.Background()); err != nil { // where that is why, there is nothing to show
		s.book, err = nil, errors.Join(err, book.Close())
	}
	return err
}

// shown shows the lots where reading them went well.
func (s *session) shown(a fyne.App, why error) error {
	if why == nil {
		s.show(a)
	}
	return why
}

// close ends what runs, closes the lots and lets go of them.
func (s *session) close() {
	if s.watch != nil {
		s.watch.Stop()
	}
	s.runner.Stop()
	s.release()
}

// release closes the book, if one was opened.
func (s *session) release() {
	if s.book != nil {
		if err := s.book.Close(); err != nil {
			slog.Error("closing", "file", s.path, "error", err)
		}
	}
	s.free()
}

// rescue offers, in a window, what helps where the lots do not open.
func (s *session) rescue(a fyne.App, why error) {
	r := ui.Rescue{Words: troubleWords(s.path, why),
		Restore: func(ctx context.Context, backup string) error { return store.StageFor(ctx, s.path, backup) },
		Again:   func() error { return s.shown(a, s.read()) }}
	if errors.Is(why, store.ErrLog) {
		r.Aside = func(context.Context) error { _, err := store.KeepLogAside(s.path, time.Now()); return err }
	}
	if errors.Is(why, store.ErrDamaged) || errors.Is(why, store.ErrLog) {
		r.Salvage = func(ctx context.Context) (string, string, error) {
			return s.salvaged(ctx, func(ctx context.Context, to string) (store.Salvaged, error) { return store.Salvage(ctx, s.path, to) })
		}
	}
	ui.ShowRescue(a, s.runner, r)
}

// troubleWords says what is wrong and what helps.
func troubleWords(path string, why error) string {
	return fmt.Sprintf(`%v

Nothing was changed. A backup can be restored here; what is there now is set aside whole, beside it, and never deleted. To copy or `+
		`move the lots by hand, close the window first and take all that begins with the file's name: %s, the same with -wal behind it `+
		`where that is there, and the folder with .photos behind it. Or start with --store and another file.`, why, path)
}

// salvaged saves what can be read of a damaged file to a new one beside it.
func (s *session) salvaged(ctx context.Context, salvage func(context.Context, string) (store.Salvaged, error)) (to, words string,
	err error) {
	to = fmt.Sprintf("%s.salvaged-%s.db", s.path, time.Now().UTC().Format("20060102T150405Z"))
	found, err := salvage(ctx, to)
	return to, salvageWords(found, to), err
}

// mostLost is how many sentences of what was lost are said one by one. Ours: what can be read at a glance.
const mostLost = 30

// salvageWords says what was saved and what was lost.
func salvageWords(found store.Salvaged, to string) string {
	words := fmt.Sprintf("%d lots were read whole and saved to %s. Restore it below to go on with them.", found.Lots, to)
	if lost := len(found.Lost); lost > 0 {
		words += fmt.Sprintf("\n\nNot saved (%d):\n%s", lost, strings.Join(found.Lost[:min(lost, mostLost)], "\n"))
	}
	return words + "\n\n" + strings.Join(found.Notes, "\n")
}

// warner is where what the user should know is said.
type warner interface {
	Warn(words string)
	Tell(words string)
}

// repair offers what helps where the lots are on show and some of the file is damaged.
func (s *session) repair(w warner, why error) ui.Rescue {
	words := "Some of the file is not what was written. The rest can be used. What is damaged can't be trusted."
	if !errors.Is(why, store.ErrAltered) {
		words = "A page of the file can't be read. Edits may be lost from here on."
	}
	return ui.Rescue{Shown: true, Words: fmt.Sprintf(`%v

%s A backup can be restored here, or what can be read saved to a new file and restored. It takes the place of the lots `+
		`at the next start. What is there now is set aside whole, beside it.`, why, words),
		Restore: s.book.Stage,
		Salvage: func(ctx context.Context) (string, string, error) { return s.salvaged(ctx, s.book.Salvage) },
		Again: func() error {
			w.Warn("What was restored takes the place of the lots at the next start. Close Walkline and start it again.")
			return nil
		}}
}

// check looks at every page of the file once the window is there, before anybody can have done anything, then at all that it holds, and
// says what it finds.
func (s *session) check(a fyne.App, r task.Runner, w warner) {
	for _, words := range s.book.Said() {
		slog.Warn("found at opening", "file", s.path, "what", words)
		w.Warn(words)
	}
	look := func(wait time.Duration, at func(context.Context) error, sound func()) {
		task.Start(r, task.Order[struct{}]{Key: "check", Wait: wait,
			Work: func(ctx context.Context) (struct{}, error) { return struct{}{}, at(ctx) },
			Show: func(_ struct{}, err error) {
				if err == nil {
					sound()
					return
				}
				s.found(a, r, w, err)
			}})
	}
	look(0, s.book.LookAtPages, func() {
		look(unhurried, s.book.Check, func() {
			slog.Info("checked: every page is sound", "file", s.path)
			w.Tell("The file of the lots was checked: no damage was found.")
		})
	})
}

// found says what a check found, and offers what helps.
func (s *session) found(a fyne.App, r task.Runner, w warner, err error) {
	if !errors.Is(err, store.ErrDamaged) {
		slog.Warn("not checked", "file", s.path, "error", err)
		return
	}
	slog.Error("checked", "file", s.path, "error", err, "detail", store.Detail(err))
	w.Warn("The file of the lots is damaged. " + err.Error())
	ui.ShowRescue(a, r, s.repair(w, err))
}
