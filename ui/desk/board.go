package desk

import (
	"context"
	"fmt"
	"slices"

	"walkline/valuation/lot"
)

// history returns the place whose steps undo and redo walk, and false when they walk those of the open lot.
func (s State) history() (Place, bool) {
	switch {
	case s.Place == Bench:
		return Bench, true
	case s.Open == nil || s.Place == Builds:
		return Board, true
	}
	return Board, false
}

// ofBuild reports whether undo and redo walk the history of the open build's lot.
func (s State) ofBuild() bool { return s.Place == Builds && s.Build != nil }

// Reach returns what undo and redo would do where the user is.
func (s State) Reach() Reach {
	at, ok := s.history()
	switch {
	case s.Place == Live:
		return s.reachLive()
	case s.ofBuild():
		return s.Build.Reach
	case !ok:
		return s.Open.Reach
	case at == Bench:
		return s.OfBench
	}
	return s.OfBoard
}

// reachAt looks up what undo and redo would do on the Board and on the Bench.
func (d *Desk) reachAt(ctx context.Context, s State) State {
	var err error
	if s.OfBoard, err = d.Book.ReachAt(ctx, Board); err != nil {
		return s.troubled("read the history of the Board", err)
	}
	if s.OfBench, err = d.Book.ReachAt(ctx, Bench); err != nil {
		return s.troubled("read the history of the Bench", err)
	}
	return s
}

// steppedAt takes one step through the history of the Board or the Bench.
func (d *Desk) steppedAt(ctx context.Context, s State, at Place, verb string, step func(context.Context, Place) (string, bool, error)) State {
	label, done, err := step(ctx, at)
	switch {
	case err != nil:
		return s.troubled("step through the history", err)
	case !done:
		return s.said("There is no such step in this history.")
	}
	s = d.refresh(ctx, s.said(verb+label+"."))
	if at == Bench {
		s = d.standing(ctx, d.loadOwn(ctx, d.loadPacks(ctx, d.loadShop(ctx, s))).compared())
	}
	return s
}

// SetState marks a lot. A lot marked as bid or won has its prediction frozen, so that what came can be held against it;
// one that cannot be valued is marked all the same, and the notice says that nothing was foretold.
func (d *Desk) SetState(ctx context.Context, s State, id int64, state lot.State) State {
	said := fmt.Sprintf("Marked: %s.", state)
	if (state == lot.Bid || state == lot.Won) && !s.won(id) {
		if err := d.freeze(ctx, id); err != nil {
			said += " No prediction was frozen: " + err.Error()
		}
	}
	if err := d.Book.SetState(ctx, id, state); err != nil {
		return s.troubled("mark the lot", err)
	}
	if state == lot.Won {
		said += " It is among the Builds now."
		if s = d.note(ctx, s, id, state, nil); s.Trouble != "" {
			return s
		}
	}
	if s.Open != nil && s.Open.ID == id {
		o := *s.Open
		o.State = state
		s = s.with(o)
	}
	return d.refresh(ctx, s.said(said))
}

// won reports whether a lot is marked as won: what was foretold of it stands, and the work on it may have begun.
func (s State) won(id int64) bool {
	return slices.ContainsFunc(s.Entries, func(e Entry) bool { return e.ID == id && e.State == lot.Won })
}

// freeze values a lot as it stands and keeps the prediction.
func (d *Desk) freeze(ctx context.Context, id int64) error {
	c, err := d.caseOf(ctx, id)
	if err != nil {
		return err
	}
	v, err := d.Value(c)
	if err != nil {
		return err
	}
	figures, err := d.memory().Foretell(c, d.Knowledge(), nil)
	if err != nil {
		return err
	}
	return d.Book.Predict(ctx, id, c, v.Answer, figures)
}

// Duplicate copies a lot on the Board.
func (d *Desk) Duplicate(ctx context.Context, s State, id int64) State {
	if _, err := d.Book.Duplicate(ctx, id); err != nil {
		return s.troubled("copy the lot", err)
	}
	return d.refresh(ctx, s.said("Copied. The copy has a history of its own."))
}

// Archive puts a lot away, or takes it out again.
func (d *Desk) Archive(ctx context.Context, s State, id int64, archived bool) State {
	if err := d.Book.Archive(ctx, id, archived); err != nil {
		return s.troubled("archive the lot", err)
	}
	return d.refresh(ctx, s.said("Archived lots are kept: the box above the list shows them."))
}

// Remove takes a lot off the Board; Undo puts it back.
func (d *Desk) Remove(ctx context.Context, s State, id int64) State {
	if err := d.Book.Remove(ctx, id); err != nil {
		return s.troubled("remove the lot", err)
	}
	if s.Open != nil && s.Open.ID == id {
		s.Open, s.Place = nil, Board
	}
	return d.refresh(ctx, s.said("Removed. Undo on the Board puts it back."))
}
