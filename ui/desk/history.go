package desk

import (
	"context"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"walkline/store/book"
)

// Subject returns whose history undo and redo walk where the user is: an undo takes back only what was done on the page in sight.
func (s State) Subject() book.Subject {
	switch {
	case s.Place.ofALot() && s.Place != Live && s.Open != nil:
		return book.Worksheet(s.Open.ID)
	case s.Place == Live:
		return book.Sale
	case s.Place == SalePlan:
		return Planning
	case s.Place == Builds && s.Build != nil:
		return book.Build(s.Build.ID)
	case s.Place == Builds:
		return book.Buys
	case s.Place == Record:
		return book.Record
	case s.Place == Bench:
		return book.Bench(s.Section)
	}
	return book.Board
}

// reach looks up what undo and redo would do where the user is.
func (d *Desk) reach(ctx context.Context, s State) State {
	r, err := d.Book.Reach(ctx, s.Subject())
	if err != nil {
		return s.troubled("read the history", err)
	}
	s.Reach = r
	return s
}

// undone stands before the name of a step that was taken back, redone before that of one that was done again.
const (
	undone = "Undone: "
	redone = "Done again: "
)

// Undo takes the last step of the page's own subject back, and shows what it changed.
func Undo() Action {
	return travels(undone, func(s State) bool { return s.Reach.LongUndo }, Book.Undo)
}

// Redo does the step again that was taken back last.
func Redo() Action {
	return travels(redone, func(s State) bool { return s.Reach.LongRedo }, Book.Redo)
}

// travels returns an action that goes a step through the history of the page's subject, which may be long.
func travels(verb string, long func(State) bool, step func(Book, context.Context, book.Subject) (book.Done, error)) Action {
	bar := func(s State) string {
		if long(s) {
			return "Stepping through the history"
		}
		return ""
	}
	return keepsAfter("", bar, func(ctx context.Context, d *Desk, s State, _ Action) (deed, error) {
		of := s.Subject()
		done, err := step(d.Book, ctx, of)
		return func(ctx context.Context, d *Desk, s State, _ Action) State {
			return d.travelled(ctx, s, travel{verb, of, done, err})
		}, err
	})
}

// travel is a step through a history: of what subject, and what came of it.
type travel struct {
	verb string
	of   book.Subject
	done book.Done
	err  error
}

// travelled is the state after a step through the history, or after none could be made. Another page or lot may be in sight than when it
// was begun.
func (d *Desk) travelled(ctx context.Context, s State, t travel) State {
	var clash *book.Clash
	done, err := t.done, t.err
	switch {
	case errors.As(err, &clash) && len(clash.Stayed) > 0:
		s.Notice, s.Trouble = "", "Nothing was changed. "+stayedWords(clash.Stayed)+" To take a lot off all the same, use Lot > Remove."
		return s
	case err != nil:
		return s.troubled("step through the history", err)
	case !done.Did:
		return s.said("There is nothing to undo or redo on this page.")
	}
	said := t.verb + done.Label + "."
	if len(done.Stayed) > 0 {
		said += " " + stayedWords(done.Stayed)
	}
	if len(done.Left) > 0 {
		said += " Left alone, because changed since: " + strings.Join(done.Left, ", ") + "."
	}
	s = d.refresh(ctx, d.stale(ctx, d.shown(ctx, s, done)))
	if s = d.lists(ctx, s); s.Trouble != "" {
		return s
	}
	if t.of == book.Sale && s.Place == Live {
		s = d.showTaken(ctx, s, done)
	}
	s.Taken, s.Travels = done, s.Travels+1
	if s.Open != nil && slices.Contains(done.Lots, s.Open.ID) {
		o := *s.Open
		o.unlisted(done.Label, t.verb == undone)
		s = s.with(o)
	}
	return s.said(said)
}

// mostStayed is how many lots that stay are named.
const mostStayed = 4

// stayedWords says which lots stay although the step would take them off.
func stayedWords(lots []string) string {
	more := ""
	if n := len(lots) - mostStayed; n > 0 {
		lots, more = lots[:mostStayed], fmt.Sprintf(" and %d more", n)
	}
	return "Still here, because changed since: " + strings.Join(lots, ", ") + more + "."
}

// lists reads again the lists that the place shows.
func (d *Desk) lists(ctx context.Context, s State) State {
	if s.Place == Builds || s.Place == Record {
		return d.readBuilds(ctx, s)
	}
	return s
}

// stale is the state after a step that may have changed the learned factors, and what the track record is worked out from.
func (d *Desk) stale(ctx context.Context, s State) State {
	before := s.Factors
	if s = d.loadFactors(ctx, s).outdated(); s.Open != nil && !reflect.DeepEqual(before, s.Factors) {
		return d.reopen(ctx, s)
	}
	return s
}

// showTaken shows on Live the lot whose result was taken back or recorded again.
func (d *Desk) showTaken(ctx context.Context, s State, done book.Done) State {
	if len(done.Lots) == 0 || s.Open != nil && slices.Contains(done.Lots, s.Open.ID) {
		return s
	}
	return d.showLive(ctx, s, done.Lots[0])
}
