package desk

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"walkline/store/book"
)

// Action is one thing that the user does, as a value. One that keeps something is one transaction of the book and one step of one
// history: that of the page on which it is done, unless it says otherwise. The zero Action does nothing.
type Action struct {
	Wish  Wish                     // what the user is asked for first; the window asks. Zero: nothing
	words string                   // of the step, which undo names; empty: only what is shown changes
	field string                   // that is typed in: see [Action.Typed]
	of    func(State) book.Subject // whose step it is; nil: that of the page
	do    func(context.Context, *Desk, State, Action) State
}

// Words returns what undo will name; empty: nothing is kept.
func (a Action) Words() string { return a.words }

// Typed returns the action as one keystroke of a field: those that follow each other in the same one are one step.
func (a Action) Typed(field string) Action {
	a.field = field
	return a
}

// shows returns an action that changes only what is shown.
func shows(do func(context.Context, *Desk, State) State) Action {
	return Action{do: func(ctx context.Context, d *Desk, s State, _ Action) State { return do(ctx, d, s) }}
}

// keeps returns an action that makes a step.
func keeps(words string, do func(context.Context, *Desk, State, Action) State) Action {
	return Action{words: words, do: do}
}

// ofSubject returns the action as a step of a subject's history, wherever it is done.
func (a Action) ofSubject(subject book.Subject) Action {
	a.of = func(State) book.Subject { return subject }
	return a
}

// Do returns the state that an action makes of s, with what undo and redo would do then.
func (d *Desk) Do(ctx context.Context, s State, a Action) State {
	if a.do == nil {
		return s
	}
	s.Clash, s.Taken = nil, book.Done{}
	after := noted(s, a.do(ctx, d, s.said(""), a), a.words)
	if after.Place != Worksheet {
		after = after.untried()
	}
	return d.reach(ctx, after)
}

// step begins the step of an action on a state.
func (a Action) step(s State) book.Step {
	subject := s.Subject()
	if a.of != nil {
		subject = a.of(s)
	}
	return book.Step{Subject: subject, Label: a.words, Typing: a.field}
}

// keep writes a step and shows what it changed; doing says what was being done. Whether it was kept, Trouble of the state says.
func (d *Desk) keep(ctx context.Context, s State, doing string, step book.Step) (State, book.Done) {
	done, err := d.Book.Do(ctx, step)
	var clash *book.Clash
	switch {
	case errors.As(err, &clash):
		s = d.shown(ctx, s, book.Done{Lots: touched(step)})
		s.Clash = &Clash{Words: clashWords(step, clash), Mine: forced(doing, step)}
		return s.troubled(doing, clash), done
	case err != nil:
		return s.troubled(doing, err), done
	}
	return d.shown(ctx, s, done), done
}

// Clash is an action that was not done because what it changes was changed elsewhere since; the user is asked.
type Clash struct {
	Words string
	Mine  Action // does it all the same
}

func clashWords(step book.Step, c *book.Clash) string {
	what := "this"
	if c.Lot != "" {
		what = "lot " + c.Lot
	}
	return fmt.Sprintf("Since you opened %s, something else changed %s. Nothing of your change (%s) was kept.", what,
		strings.Join(c.Fields, ", "), step.Label)
}

// forced returns the action that writes a step even where it clashes.
func forced(doing string, step book.Step) Action {
	step.Forced = true
	return keeps(step.Label, func(ctx context.Context, d *Desk, s State, _ Action) State {
		s, _ = d.keep(ctx, s, doing, step)
		return s
	})
}

func touched(step book.Step) []int64 {
	var ids []int64
	for _, c := range step.Lots {
		ids = append(ids, c.Before.ID)
	}
	return ids
}

// shown is the state with what a step changed read again, as far as it is in sight.
func (d *Desk) shown(ctx context.Context, s State, done book.Done) State {
	s.steps++
	for _, id := range done.Lots {
		if s.Open != nil && s.Open.ID == id {
			s = d.reopen(ctx, s)
		}
		if s.Build != nil && s.Build.ID == id {
			s = d.rebuilt(ctx, s)
		}
	}
	if len(done.Settings) > 0 {
		s = d.loadSettings(ctx, s)
	}
	if len(done.Shelf) > 0 {
		s = d.reshelved(ctx, s)
	}
	return s
}
