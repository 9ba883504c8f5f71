package main

import (
	"cmp"
	"context"
	"encoding/json"
	"fmt"
	"reflect"
	"slices"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
)

// book keeps lots in memory. It is a desk's book for as long as the program runs.
type book struct {
	lots     []*page
	settings map[string][]byte
	files    files
	foretold []foretold
	decided  []desk.Decision
	shop     map[desk.Place]*shopSteps
}

// foretold is one frozen prediction.
type foretold struct {
	id     int64
	c      valuation.Case
	answer valuation.Answer
	said   learn.Prediction
}

var _ desk.Book = (*book)(nil)

// page is one lot with its history.
type page struct {
	id       int64
	state    lot.State
	archived bool
	removed  bool
	now      valuation.Case
	came     build.Build
	photos   []lot.Photo
	past     []step // undone from the end
	future   []step // done again from the end
	answer   *desk.Summary
}

// step is a saved edit: its name, and the case, the build and the photographs on the other side of it.
type step struct {
	label  string
	other  valuation.Case
	came   build.Build
	photos []lot.Photo
}

// step returns the lot as it stands, as one side of a step.
func (p *page) step(label string) step { return step{label, p.now, p.came, p.photos} }

func newBook() *book {
	return &book{settings: map[string][]byte{}, files: files{kept: map[string][]byte{}}, shop: map[desk.Place]*shopSteps{desk.Board: {}, desk.Bench: {}}}
}

// find returns a lot. Errors: no such lot, or a removed one when that is not asked for.
func (b *book) find(id int64, removed bool) (*page, error) {
	if id < 1 || id > int64(len(b.lots)) || b.lots[id-1].removed && !removed {
		return nil, fmt.Errorf("lot %d is not in the book", id)
	}
	return b.lots[id-1], nil
}

// Entries returns the lots by sale day and number.
func (b *book) Entries(context.Context) ([]desk.Entry, error) {
	var entries []desk.Entry
	for _, p := range b.lots {
		if p.removed {
			continue
		}
		l := p.now.Lot
		entries = append(entries, desk.Entry{ID: p.id, State: p.state, Archived: p.archived, Number: l.Number, Sale: l.Sale, SaleDate: l.SaleDate,
			ModelYear: l.ModelYear, Make: l.Make, Model: l.Model, Trim: l.Trim, Currency: p.now.Currency, Answer: p.answer})
	}
	slices.SortStableFunc(entries, func(a, b desk.Entry) int {
		return cmp.Or(cmp.Compare(a.SaleDate, b.SaleDate), cmp.Compare(len(a.Number), len(b.Number)), cmp.Compare(a.Number, b.Number))
	})
	return entries, nil
}

// Add adds a lot that is still to be looked at.
func (b *book) Add(ctx context.Context, c valuation.Case) (int64, error) {
	ids, err := b.AddAll(ctx, "new lot", []valuation.Case{c})
	return ids[0], err
}

// AddAll adds lots that are still to be looked at.
func (b *book) AddAll(_ context.Context, label string, cases []valuation.Case) ([]int64, error) {
	var ids []int64
	var added []*page
	for _, c := range cases {
		p := &page{id: int64(len(b.lots) + 1), state: lot.ToLookAt, now: c.Clone(), removed: true}
		b.lots = append(b.lots, p)
		added, ids = append(added, p), append(ids, p.id)
	}
	b.step(desk.Board, label, added, func(p *page) { p.removed = false })
	return ids, nil
}

// Duplicate copies a lot without its history.
func (b *book) Duplicate(ctx context.Context, id int64) (int64, error) {
	p, err := b.find(id, false)
	if err != nil {
		return 0, err
	}
	ids, err := b.AddAll(ctx, "duplicate lot "+p.now.Lot.Number, []valuation.Case{p.now})
	return ids[0], err
}

// Remove takes a lot off the list.
func (b *book) Remove(_ context.Context, id int64) error {
	return b.change(id, "remove lot %s", func(p *page) { p.removed = true })
}

// SetState marks a lot.
func (b *book) SetState(_ context.Context, id int64, s lot.State) error {
	return b.change(id, "mark lot %s as "+string(s), func(p *page) { p.state = s })
}

// Archive puts a lot away, or takes it out again.
func (b *book) Archive(_ context.Context, id int64, archived bool) error {
	return b.change(id, "archive lot %s", func(p *page) { p.archived = archived })
}

// NoteAnswer keeps what the last valuation said.
func (b *book) NoteAnswer(_ context.Context, id int64, a valuation.Answer) error {
	return b.mark(id, func(p *page) {
		p.answer = &desk.Summary{Decision: a.Decision, WalkAway: a.WalkAway, Binding: a.BindingRule,
			LossChance: a.Profit.LossChance, MeanProfit: a.Profit.Mean, PerHour: a.Profit.PerHour}
	})
}

func (b *book) mark(id int64, change func(*page)) error {
	p, err := b.find(id, false)
	if err == nil {
		change(p)
	}
	return err
}

// Case returns a lot's case.
func (b *book) Case(_ context.Context, id int64) (valuation.Case, error) {
	p, err := b.find(id, false)
	if err != nil {
		return valuation.Case{}, err
	}
	return p.now.Clone(), nil
}

// Save keeps a case as the next step; one that is as it was makes no step.
func (b *book) Save(_ context.Context, id int64, label string, c valuation.Case) error {
	return b.mark(id, func(p *page) {
		if reflect.DeepEqual(p.now, c) {
			return
		}
		p.past, p.future = append(p.past, p.step(label)), nil
		p.turn(c.Clone())
	})
}

// turn makes c the lot's case, which its answer no longer tells of.
func (p *page) turn(c valuation.Case) {
	p.now = c
	if p.answer != nil {
		stale := *p.answer
		stale.Stale = true
		p.answer = &stale
	}
}

// Undo takes the last step back.
func (b *book) Undo(_ context.Context, id int64) (valuation.Case, string, bool, error) {
	return b.travel(id, func(p *page) (from, to *[]step) { return &p.past, &p.future })
}

// Redo does the step again that was taken back last.
func (b *book) Redo(_ context.Context, id int64) (valuation.Case, string, bool, error) {
	return b.travel(id, func(p *page) (from, to *[]step) { return &p.future, &p.past })
}

// travel moves a lot over one step from one side of its history to the other.
func (b *book) travel(id int64, way func(*page) (from, to *[]step)) (valuation.Case, string, bool, error) {
	p, err := b.find(id, false)
	if err != nil {
		return valuation.Case{}, "", false, err
	}
	from, to := way(p)
	if len(*from) == 0 {
		return valuation.Case{}, "", false, nil
	}
	last := (*from)[len(*from)-1]
	*from = (*from)[:len(*from)-1]
	*to = append(*to, p.step(last.label))
	p.came, p.photos = last.came, last.photos
	if !reflect.DeepEqual(p.now, last.other) {
		p.turn(last.other)
	}
	return p.now.Clone(), last.label, true, nil
}

// Reach returns what undo and redo would do.
func (b *book) Reach(_ context.Context, id int64) (desk.Reach, error) {
	p, err := b.find(id, false)
	if err != nil {
		return desk.Reach{}, err
	}
	var r desk.Reach
	if n := len(p.past); n > 0 {
		r.Undo = p.past[n-1].label
	}
	if n := len(p.future); n > 0 {
		r.Redo = p.future[n-1].label
	}
	return r, nil
}

// Setting reads a remembered value and reports whether there is one.
func (b *book) Setting(_ context.Context, name string, into any) (bool, error) {
	text, found := b.settings[name]
	if !found {
		return false, nil
	}
	return true, json.Unmarshal(text, into)
}

// PutSetting remembers a value.
func (b *book) PutSetting(_ context.Context, name string, value any) error {
	text, err := json.Marshal(value)
	if err == nil {
		b.settings[name] = text
	}
	return err
}

// Predict keeps what was foretold of a lot.
func (b *book) Predict(_ context.Context, id int64, c valuation.Case, a valuation.Answer, p learn.Prediction) error {
	b.foretold = append(b.foretold, foretold{id, c, a, p})
	return nil
}
