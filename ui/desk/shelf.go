package desk

import (
	"context"
	"reflect"
	"slices"
	"strings"
	"sync"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/resale"
)

// ShelfSection is the section of the Bench that shows the shelf of comparables.
const ShelfSection = "Comparables"

// Comparables live on the shop's shelf. A lot draws those that tell about it each time it is read; what is its own are the ticks, and rows
// that it had before there was a shelf. A row of the lot's own that says where it lies on the shelf is no more than a tick: what it says of
// the vehicle is the shelf's.

// drawing remembers which places of a shelf a lot draws: a keystroke in another field changes nothing there.
type drawing struct {
	sync.Mutex
	shelf []book.Comparable
	of    drawer
	rows  []resale.Row
}

// drawer is all of a lot that chooses its rows.
type drawer struct {
	id       int64
	make     string
	model    string
	year     int
	currency string
}

// sameShelf reports whether two readings of the shelf are one.
func sameShelf(a, b []book.Comparable) bool {
	return len(a) == len(b) && (len(a) == 0 || &a[0] == &b[0])
}

// drawn returns the rows that a lot draws from a shelf: those that were taken in for it, and those of its own model and kin.
func (d *Desk) drawn(shelf []book.Comparable, l book.Lot) []resale.Row {
	x := l.Case.Lot
	of := drawer{l.ID, x.Make, x.Model, x.ModelYear, l.Case.Currency}
	d.draws.Lock()
	defer d.draws.Unlock()
	if d.draws.of == of && len(shelf) > 0 && sameShelf(shelf, d.draws.shelf) {
		return d.draws.rows
	}
	var near, own []resale.Row
	for _, c := range shelf {
		switch {
		case c.Currency != of.currency:
		case c.Lot != 0 && c.Lot == of.id:
			own = append(own, c.Drawn())
		case c.Row.KinOf(of.make, of.model) != resale.Other:
			near = append(near, c.Drawn())
		}
	}
	rows := own
	for _, i := range resale.Draw(near, resale.Subject{Make: of.make, Model: of.model, ModelYear: of.year}) {
		rows = append(rows, near[i])
	}
	d.draws.shelf, d.draws.of, d.draws.rows = shelf, of, rows
	return rows
}

// withShelf returns what a lot's case is valued with: its own rows as the shelf has them now, those it draws, and the learned factors.
// Errors: the shelf can't be read.
func (d *Desk) withShelf(ctx context.Context, l book.Lot, f learn.Factors) (valuation.Case, []book.Comparable, error) {
	shelf, err := d.Book.Shelf(ctx)
	c := l.Case.With(f)
	if err != nil || len(shelf) == 0 && !slices.ContainsFunc(c.Resale.Rows, onShelf) {
		return c, shelf, err
	}
	c.Resale.Rows = joined(l.Case.Resale.Rows, d.drawn(shelf, l), shelf)
	return c, shelf, nil
}

func onShelf(r resale.Row) bool { return r.Shelf != 0 }

// joined returns a lot's own rows, as the shelf has them now, and then those that it draws beside them. What was taken off the shelf is
// left out.
func joined(own, drawn []resale.Row, shelf []book.Comparable) []resale.Row {
	var rows []resale.Row
	have := map[int64]bool{}
	for _, r := range own {
		if onShelf(r) {
			at, there := slices.BinarySearchFunc(shelf, r.Shelf, func(c book.Comparable, id int64) int { return int(c.ID - id) })
			if have[r.Shelf] = true; !there {
				continue
			}
			out := r.Excluded
			r = shelf[at].Drawn()
			r.Excluded = out
		}
		rows = append(rows, r)
	}
	for _, r := range drawn {
		if !have[r.Shelf] {
			rows = append(rows, r)
		}
	}
	return rows
}

// ownRows is the inverse of joined: which rows the lot is to keep, given those that it kept and those it now shows. A row of the shelf is
// kept where its tick is not the shelf's.
func ownRows(shown, kept []resale.Row, shelf []book.Comparable) []resale.Row {
	ticks, drawn := map[int64]bool{}, map[int64]bool{}
	for _, c := range shelf {
		drawn[c.ID] = c.Row.Excluded
	}
	own := slices.Clone(kept)
	for i, r := range kept {
		if onShelf(r) {
			ticks[r.Shelf] = true
			if at := slices.IndexFunc(shown, func(x resale.Row) bool { return x.Shelf == r.Shelf }); at >= 0 {
				own[i].Excluded = shown[at].Excluded
			}
		}
	}
	var loose []resale.Row
	for _, r := range shown {
		switch {
		case !onShelf(r):
			loose = append(loose, r)
		case !ticks[r.Shelf] && r.Excluded != drawn[r.Shelf]:
			own = append(own, r)
		}
	}
	return withLoose(own, loose)
}

// withLoose returns rows with those that lie on no shelf replaced by others, each in its place as long as there are any.
func withLoose(rows, loose []resale.Row) []resale.Row {
	var out []resale.Row
	for _, r := range rows {
		switch {
		case onShelf(r):
			out = append(out, r)
		case len(loose) > 0:
			out, loose = append(out, loose[0]), loose[1:]
		}
	}
	out = append(out, loose...)
	if len(out) == 0 && rows != nil {
		return rows[:0]
	}
	return out
}

// Taken is what came of a table of comparables.
type Taken struct {
	Counts  Counts
	Refused []Refusal
	done    book.Done
}

// Take puts the rows of a sheet on the shelf, in one step of the open lot's worksheet, or of the shelf where none is open. A row that
// names no make and model is taken for one of the open lot's. It may run on any goroutine: of the state it only takes which lot is open.
// Errors: the table can't be read or kept; nothing is kept then.
func (d *Desk) Take(ctx context.Context, s State, sheet Sheet) (Taken, error) {
	incoming, refused, err := d.Importer.Read(sheet)
	if err != nil {
		return Taken{}, err
	}
	shelf, err := d.Book.Shelf(ctx)
	if err != nil {
		return Taken{}, err
	}
	m := d.taking(s, sheet)
	m.hold(shelf)
	for i := range incoming {
		if r := &incoming[i]; r.Make == "" && r.Model == "" && s.Open != nil {
			r.Make, r.Model = s.Open.Case.Lot.Make, s.Open.Case.Lot.Model
		}
	}
	rows, counts := d.Importer.Merge(m.rows, incoming)
	counts.Read, counts.Refused = len(incoming)+len(refused), len(refused)
	done, err := d.Book.Do(ctx, m.step(rows))
	if err != nil {
		return Taken{}, err
	}
	return Taken{counts, refused, done}, d.remember(ctx, ofComparables, sheet)
}

// shelving is a table on its way to the shelf, beside the rows that it meets there: first those that the open lot has of its own.
type shelving struct {
	subject  book.Subject
	open     *Open
	currency string
	from     string
	today    lot.Date
	rows     []resale.Row
	loose    int               // so many of the rows are the lot's own
	places   []book.Comparable // of the others, in their order
}

func (d *Desk) taking(s State, sheet Sheet) *shelving {
	m := &shelving{subject: s.ofShelf(), currency: sheet.Stated.Currency, from: sheet.Name, today: d.Today()}
	if m.subject != book.Bench(ShelfSection) {
		m.open, m.currency = s.Open, s.Open.Case.Currency
	}
	if m.currency == "" {
		m.currency = s.Shop.Currency
	}
	return m
}

// ofShelf returns whose step a change of the shelf is: the open lot's, or that of the shelf's own page.
func (s State) ofShelf() book.Subject {
	if s.Open != nil && s.Place != Bench {
		return book.Worksheet(s.Open.ID)
	}
	return book.Bench(ShelfSection)
}

// hold takes the rows that a table may meet.
func (m *shelving) hold(shelf []book.Comparable) {
	if m.open != nil {
		for _, r := range m.open.kept.Case.Resale.Rows {
			if !onShelf(r) {
				m.rows = append(m.rows, r)
			}
		}
	}
	m.loose = len(m.rows)
	for _, c := range shelf {
		if c.Currency == m.currency {
			m.rows, m.places = append(m.rows, c.Row), append(m.places, c)
		}
	}
}

// step returns the step that makes of the rows that were held others, and more of them.
func (m *shelving) step(rows []resale.Row) book.Step {
	step := book.Step{Subject: m.subject, Label: "import comparables"}
	for i, r := range rows[m.loose:] {
		if i >= len(m.places) {
			c := book.Comparable{Row: r, Currency: m.currency, From: m.from, On: m.today}
			if m.open != nil {
				c.Lot = m.open.ID
			}
			step.Shelf = append(step.Shelf, book.Shelved{After: &c})
			continue
		}
		before, after := &m.places[i], m.places[i]
		if reflect.DeepEqual(before.Row, r) {
			continue
		}
		after.Row = r
		if before.Row.Price != r.Price {
			after.Earlier = append(slices.Clip(after.Earlier), book.Earlier{Price: before.Row.Price, Kind: before.Row.Kind,
				Date: before.Row.Date})
		}
		step.Shelf = append(step.Shelf, book.Shelved{Before: before, After: &after})
	}
	if m.open != nil && m.loose > 0 {
		after := m.open.kept.Clone()
		after.Case.Resale.Rows = withLoose(after.Case.Resale.Rows, rows[:m.loose])
		step.Lots = []book.Change{{Before: m.open.kept, After: after}}
	}
	return step
}

// TakenIn is the state after a table of comparables has been taken in, or could not be.
func (d *Desk) TakenIn(ctx context.Context, s State, t Taken, err error) State {
	if err != nil {
		return s.troubled("take the comparables in", err)
	}
	return d.reach(ctx, ifKept(d.shown(ctx, s.said(""), t.done), t.Counts.words()))
}

// loadShelf reads the shelf again, where it is in sight.
func (d *Desk) loadShelf(ctx context.Context, s State) State {
	shelf, err := d.Book.Shelf(ctx)
	if err != nil {
		return s.troubled("read the shelf of comparables", err)
	}
	s.Shelf = shelf
	return s
}

// keepsShelf returns an action that makes a step of the shelf's page or of the open lot.
func keepsShelf(words string, do func(context.Context, *Desk, State, Action) State) Action {
	a := keeps(words, do)
	a.of = State.ofShelf
	return a
}

// EditComparable changes one row of the shelf.
func EditComparable(id int64, words string, change func(*book.Comparable)) Action {
	return keepsShelf(words, func(ctx context.Context, d *Desk, s State, a Action) State {
		return d.onShelf(ctx, s, a, func(c book.Comparable) *book.Comparable {
			if c.ID == id {
				c = valuation.Copy(c)
				c.ID = id
				change(&c)
			}
			return &c
		})
	})
}

// RemoveComparables takes rows off the shelf, and so out of every lot that draws them.
func RemoveComparables(words string, ids ...int64) Action {
	gone := map[int64]bool{}
	for _, id := range ids {
		gone[id] = true
	}
	return keepsShelf(words, func(ctx context.Context, d *Desk, s State, a Action) State {
		return d.onShelf(ctx, s, a, func(c book.Comparable) *book.Comparable {
			if gone[c.ID] {
				return nil
			}
			return &c
		})
	})
}

// onShelf keeps what becomes of each row of the shelf, as a step of the page; nil takes it off.
func (d *Desk) onShelf(ctx context.Context, s State, a Action, change func(book.Comparable) *book.Comparable) State {
	shelf, err := d.Book.Shelf(ctx)
	if err != nil {
		return s.troubled(a.words, err)
	}
	step := a.step(s)
	for i, c := range shelf {
		after := change(c)
		if after == nil || !reflect.DeepEqual(c, *after) {
			step.Shelf = append(step.Shelf, book.Shelved{Before: &shelf[i], After: after})
		}
	}
	s, _ = d.keep(ctx, s, a.words, step)
	return s
}

// AddComparable puts a row that was typed on the shelf, for the open lot where one is open.
func AddComparable(r resale.Row) Action {
	return keepsShelf("add a comparable", func(ctx context.Context, d *Desk, s State, a Action) State {
		m := d.taking(s, Sheet{})
		step := a.step(s)
		c := book.Comparable{Row: r, Currency: m.currency, On: d.Today()}
		if m.open != nil {
			c.Lot = m.open.ID
			if c.Row.Make == "" && c.Row.Model == "" {
				c.Row.Make, c.Row.Model = m.open.Case.Lot.Make, m.open.Case.Lot.Model
			}
		}
		c.Row.Make, c.Row.Model = strings.TrimSpace(c.Row.Make), strings.TrimSpace(c.Row.Model)
		step.Shelf = []book.Shelved{{After: &c}}
		s, _ = d.keep(ctx, s, a.words, step)
		return s
	})
}

// reshelved is the state after the shelf changed: what it teaches is to be worked out again, and an open lot may draw other rows.
func (d *Desk) reshelved(ctx context.Context, s State) State {
	if s.Market.Stale = true; s.Open != nil {
		s = d.reopen(ctx, s)
	}
	return d.loadShelf(ctx, s)
}
