package desk

import (
	"context"
	"fmt"
	"reflect"
	"sync/atomic"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/patterns"
)

// Desk does what the user asks. It keeps no state of its own.
type Desk struct {
	Book      Book
	Importer  Importer
	Past      PastTables
	Lister    Lister
	Press     Press
	Files     Files
	Documents Documents
	Vault     Vault
	Know      valuation.Knowledge
	Edition   string            // of the catalogues in Know, which differs where they do; empty: they are never compared
	Memory    *valuation.Memory // what earlier valuations worked out; nil: each begins anew
	Starter   valuation.Case    // the starter values of the shop's terms
	// DecimalMark is what a new shop begins with: "," or "."; empty: ".".
	DecimalMark string
	Demo        func() []valuation.Case // the demo sale
	Today       func() lot.Date
	// Listing reads the text of a listing into a case. Errors: the text is longer than a listing can be.
	Listing func(text string, c valuation.Case) (Listed, error)
	// Look returns how many columns of a table each kind knows by their headings; nil: no table is looked at.
	Look func(data []byte) map[Kind]int
	// Copied returns rows of a table as text that spreadsheet programs take from the clipboard.
	Copied func(rows [][]string) string
	// Put writes a file over what is there: whole, or what was there stays. Errors: the disk's.
	Put func(path string, data []byte) error
	// Read reads a plain file of a bounded size, away from the window. Errors: it is none, it is larger, it can't be read.
	Read func(ctx context.Context, path string, most int64) ([]byte, error)
	// Share does n pieces of work, handed out in their order, by as many workers as it likes, each with what begin returns to it, and
	// returns when all has ended; nil: one does them all. Errors: the first that a piece returned; those after it are not begun.
	Share func(n int, begin func() (do func(piece int) error)) error

	draws   drawing
	went    atomic.Pointer[results]             // what the shop's own lots went for; nil: not read yet
	seen    atomic.Pointer[patterns.Counts]     // what the shop's own surveys found; nil: not read yet
	current atomic.Pointer[valuation.Knowledge] // the catalogues with the shop's own entries, as the book keeps them
	laid    atomic.Pointer[string]              // mark of those; nil: not read yet
}

// Load returns the first state: the Board.
func (d *Desk) Load(ctx context.Context) State {
	s := d.loadFactors(ctx, d.settled(ctx, d.loadSettings(ctx, d.refresh(ctx, State{}))))
	if n := len(s.StarterChanges); n > 0 && s.Trouble == "" {
		s = s.said(fmt.Sprintf("The starter catalogues of this version differ in %d entries: the Bench, Starter changes, shows each. Nothing "+
			"changes until you take it.", n))
	}
	return d.reach(ctx, d.kept(s))
}

// loadSettings reads the shop's own values again.
func (d *Desk) loadSettings(ctx context.Context, s State) State {
	s = d.loadOwn(ctx, d.loadMarket(ctx, d.loadStarter(ctx, d.loadPacks(ctx, d.loadShop(ctx, s)))))
	return d.loadDay(ctx, d.standing(ctx, s.compared()), s.Day.Date)
}

// loadFactors reads the learned factors that were accepted and not taken back.
func (d *Desk) loadFactors(ctx context.Context, s State) State {
	history, err := d.Book.Decisions(ctx)
	if err != nil {
		return s.troubled("read the learned factors", err)
	}
	s.Factors = inForce(history)
	return s
}

// inForce returns the factors after the last decision.
func inForce(history []book.Decision) learn.Factors {
	if len(history) == 0 {
		return learn.Factors{}
	}
	return history[len(history)-1].After
}

// refresh reads the Board again.
func (d *Desk) refresh(ctx context.Context, s State) State {
	entries, err := d.Book.Entries(ctx)
	if err != nil {
		return s.troubled("read the Board", err)
	}
	s.Entries = entries
	return s
}

// OpenLot puts a lot on the worksheet.
func OpenLot(id int64) Action {
	return shows(func(ctx context.Context, d *Desk, s State) State {
		s = d.open(ctx, s, id)
		if s.Trouble == "" {
			s.Place = Worksheet
		}
		return s
	})
}

// open takes a lot onto the desk, wherever it is shown.
func (d *Desk) open(ctx context.Context, s State, id int64) State {
	o := Open{ID: id, Revision: 1, seen: d.look(ctx, id)}
	if s.Open != nil {
		o.Revision = s.Open.Revision + 1
	}
	o, err := d.read(ctx, s, o)
	if err != nil {
		return s.troubled("open the lot", err)
	}
	return d.standing(ctx, s.with(o).compared())
}

// reopen reads the open lot again; a lot that is gone is closed.
func (d *Desk) reopen(ctx context.Context, s State) State {
	before := *s.Open
	o, err := d.read(ctx, s, before)
	if err != nil {
		s.Open = nil
		if s.Place.ofALot() {
			s.Place = Board
		}
		return s
	}
	if o.kept.Revision != before.kept.Revision || !reflect.DeepEqual(o.Case.Factors, before.Case.Factors) ||
		!sameShelf(o.shelf, before.shelf) && !reflect.DeepEqual(o.Case.Resale.Rows, before.Case.Resale.Rows) {
		o.Revision, o.Fresh = o.Revision+1, false
	}
	return s.with(o).compared()
}

// read fills an open lot with what is kept of it.
func (d *Desk) read(ctx context.Context, s State, o Open) (Open, error) {
	l, err := d.Book.Lot(ctx, o.ID)
	if err != nil {
		return o, err
	}
	c, shelf, err := d.withShelf(ctx, l, s.Factors)
	if err != nil {
		return o, err
	}
	o.State, o.Case, o.Photos, o.Went, o.kept, o.shelf = l.State, c, l.Photos, l.Build.Hammer, l, shelf
	if o.Faults, o.Needs = o.Case.Check(), nil; len(o.Faults) > 0 {
		o.Needs = valuation.Missing(o.Case, d.Knowledge())
	}
	return o, nil
}

// EditLot changes the case of the open lot.
func EditLot(words string, change func(*valuation.Case)) Action {
	return keeps(words, func(ctx context.Context, d *Desk, s State, a Action) State {
		if s.Open == nil {
			return s
		}
		after := s.Open.Case.Clone()
		change(&after)
		after = s.atSale(s.Open.Case, after)
		step := a.step(s)
		step.Lots = []book.Change{{Before: s.Open.at(s.Open.Case), After: s.Open.at(after)}}
		s, _ = d.keep(ctx, s, "save the change", step)
		return s
	}).ofOpen()
}

// at returns the open lot as a step has it, with a case.
func (o *Open) at(c valuation.Case) book.Lot {
	c.Resale.Rows = ownRows(c.Resale.Rows, o.kept.Case.Resale.Rows, o.shelf)
	return book.Lot{ID: o.ID, Revision: o.kept.Revision, Case: c}
}

// ofOpen returns the action as a step of the open lot, which Live and the worksheet show alike.
func (a Action) ofOpen() Action {
	a.of = func(s State) book.Subject {
		if s.Open == nil {
			return s.Subject()
		}
		return book.Worksheet(s.Open.ID)
	}
	return a
}
