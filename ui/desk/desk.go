package desk

import (
	"context"
	"sync/atomic"

	"walkline/valuation"
	"walkline/valuation/lot"
)

// Desk does what the user asks. It keeps no state of its own.
type Desk struct {
	Book      Book
	Importer  Importer
	Past      PastTables
	Lister    Lister
	Press     Press
	Album     Album // nil: no photographs are kept
	Documents Documents
	Vault     Vault // nil: the book is in no file
	Know      valuation.Knowledge
	Memory    *valuation.Memory       // what earlier valuations worked out; nil: each begins anew
	Starter   valuation.Case          // the starter values of the shop's terms
	Demo      func() []valuation.Case // the demo sale
	Today     func() lot.Date

	current atomic.Pointer[valuation.Knowledge] // the catalogues with the shop's own entries, as the book keeps them
}

// Load returns the first state: the Board.
func (d *Desk) Load(ctx context.Context) State {
	return d.kept(d.loadOwn(ctx, d.loadPacks(ctx, d.loadShop(ctx, d.refresh(ctx, State{})))))
}

// refresh reads the Board again.
func (d *Desk) refresh(ctx context.Context, s State) State {
	entries, err := d.Book.Entries(ctx)
	if err != nil {
		return s.troubled("read the Board", err)
	}
	s.Entries = entries
	return d.reachAt(ctx, s)
}

// NewLot adds a lot with the shop's terms and opens it.
func (d *Desk) NewLot(ctx context.Context, s State) State {
	id, err := d.Book.Add(ctx, d.blank(s))
	if err != nil {
		return s.troubled("add a lot", err)
	}
	opened := d.OpenLot(ctx, d.refresh(ctx, s), id)
	if opened.Trouble != "" {
		return opened
	}
	return opened.said("A new lot. Start with its facts.")
}

// LoadDemo adds the demo sale.
func (d *Desk) LoadDemo(ctx context.Context, s State) State {
	cases := d.Demo()
	ids, err := d.Book.AddAll(ctx, "add the demo sale", cases)
	if err != nil {
		return s.troubled("add the demo sale", err)
	}
	for i, c := range cases {
		if c, err = d.tuned(ctx, c); err != nil {
			return s.troubled("read the learned factors", err)
		}
		if v, err := d.Value(c); err == nil {
			if err := d.Book.NoteAnswer(ctx, ids[i], v.Answer); err != nil {
				return s.troubled("keep the demo's answers", err)
			}
		}
	}
	return d.refresh(ctx, s.said("The demo sale at Harrow Flats: three invented lots."))
}

// OpenLot puts a lot on the worksheet.
func (d *Desk) OpenLot(ctx context.Context, s State, id int64) State {
	c, err := d.caseOf(ctx, id)
	if err != nil {
		return s.troubled("open the lot", err)
	}
	o := Open{ID: id, Case: c, Faults: c.Check(), Revision: 1}
	for _, e := range s.Entries {
		if e.ID == id {
			o.State = e.State
		}
	}
	if s.Open != nil {
		o.Revision = s.Open.Revision + 1
	}
	s.Place, s.Notice, s.Trouble = Worksheet, "", ""
	o, s = d.withPhotos(ctx, s, o)
	return d.reach(ctx, d.standing(ctx, s.with(o)))
}

// CloseLot takes the lot off the worksheet, shows the Board and reads it again.
func (d *Desk) CloseLot(ctx context.Context, s State) State {
	s.Open, s.Place = nil, Board
	return d.refresh(ctx, s)
}

// reach looks up what undo and redo would do.
func (d *Desk) reach(ctx context.Context, s State) State {
	r, err := d.Book.Reach(ctx, s.Open.ID)
	if err != nil {
		return s.troubled("read the history", err)
	}
	o := *s.Open
	o.Reach = r
	return s.with(o).compared()
}

// Edit changes a copy of the open lot's case and saves it; label names the step for undo.
func (d *Desk) Edit(ctx context.Context, s State, label string, change func(*valuation.Case)) State {
	if s.Open == nil {
		return s
	}
	o := *s.Open
	o.Case = o.Case.Clone()
	change(&o.Case)
	o.Case = s.atSale(s.Open.Case, o.Case)
	if err := d.Book.Save(ctx, o.ID, label, o.Case); err != nil {
		return s.troubled("save the change", err)
	}
	o.Faults, o.Revision, o.Fresh = o.Case.Check(), o.Revision+1, false
	s.Notice, s.Trouble = "", ""
	return d.reach(ctx, s.with(o))
}

// Undo takes the last step back: of what was recorded on the Live page, of the open lot, of the Bench where that is shown, of the Board where no lot is open.
func (d *Desk) Undo(ctx context.Context, s State) State {
	if s.Place == Live {
		return d.unrecord(ctx, s)
	}
	if s.ofBuild() {
		return d.steppedBuild(ctx, s, "Undone: ", d.Book.Undo)
	}
	if at, ok := s.history(); ok {
		return d.steppedAt(ctx, s, at, "Undone: ", d.Book.UndoAt)
	}
	c, label, done, err := d.Book.Undo(ctx, s.Open.ID)
	return d.stepped(ctx, s, "Undone: ", c, label, done, err)
}

// Redo does the step again that was undone last.
func (d *Desk) Redo(ctx context.Context, s State) State {
	if s.Place == Live {
		return d.rerecord(ctx, s)
	}
	if s.ofBuild() {
		return d.steppedBuild(ctx, s, "Done again: ", d.Book.Redo)
	}
	if at, ok := s.history(); ok {
		return d.steppedAt(ctx, s, at, "Done again: ", d.Book.RedoAt)
	}
	c, label, done, err := d.Book.Redo(ctx, s.Open.ID)
	return d.stepped(ctx, s, "Done again: ", c, label, done, err)
}

// stepped is the state after a step through the history.
func (d *Desk) stepped(ctx context.Context, s State, verb string, c valuation.Case, label string, done bool, err error) State {
	if err != nil {
		return s.troubled("step through the history", err)
	}
	if !done {
		return s.said("There is no such step in this lot's history.")
	}
	if c, err = d.tuned(ctx, c); err != nil {
		return s.troubled("read the learned factors", err)
	}
	o := *s.Open
	o.Case, o.Faults, o.Revision, o.Fresh = c, c.Check(), o.Revision+1, false
	s = s.said(verb + label + ".")
	o, s = d.withPhotos(ctx, s, o)
	return d.reach(ctx, s.with(o))
}
