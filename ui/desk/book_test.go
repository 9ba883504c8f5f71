package desk_test

import (
	"context"
	"encoding/json"
	"errors"
	"slices"
	"strconv"
	"strings"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// step is one edit in a lot's history.
type step struct {
	label         string
	before, after valuation.Case
	was, is       build.Build
}

// book keeps everything in memory. broken is what every write and reading of the Board then fails with.
type book struct {
	lessons
	entries  []desk.Entry
	cases    map[int64]valuation.Case
	came     map[int64]build.Build
	steps    map[int64][]step
	at       map[int64]int // steps done
	answers  map[int64]valuation.Answer
	foretold map[int64][]valuation.Answer
	settings map[string][]byte
	shop     map[desk.Place]*steps
	broken   error
}

func newBook() *book {
	return &book{cases: map[int64]valuation.Case{}, came: map[int64]build.Build{}, steps: map[int64][]step{}, at: map[int64]int{},
		answers: map[int64]valuation.Answer{}, foretold: map[int64][]valuation.Answer{}, settings: map[string][]byte{},
		shop: map[desk.Place]*steps{desk.Board: {}, desk.Bench: {}}}
}

func (b *book) Entries(context.Context) ([]desk.Entry, error) {
	return slices.Clone(b.entries), b.broken
}

func (b *book) Add(ctx context.Context, c valuation.Case) (int64, error) {
	ids, err := b.AddAll(ctx, "new lot", []valuation.Case{c})
	if err != nil {
		return 0, err
	}
	return ids[0], nil
}

func (b *book) AddAll(_ context.Context, label string, cases []valuation.Case) (ids []int64, err error) {
	if b.broken != nil {
		return nil, b.broken
	}
	b.step(desk.Board, label, func() {
		for _, c := range cases {
			id := int64(len(b.cases) + 1)
			ids = append(ids, id)
			b.cases[id] = c.Clone()
			b.entries = append(b.entries, desk.Entry{ID: id, State: lot.ToLookAt, Number: c.Lot.Number, Sale: c.Lot.Sale, SaleDate: c.Lot.SaleDate,
				ModelYear: c.Lot.ModelYear, Make: c.Lot.Make, Model: c.Lot.Model, Trim: c.Lot.Trim, Currency: c.Currency})
		}
	})
	return ids, nil
}

func (b *book) Lots(context.Context) ([]desk.Listed, error) {
	var list []desk.Listed
	for _, e := range b.entries {
		list = append(list, desk.Listed{ID: e.ID, State: e.State, Lot: b.cases[e.ID].Lot})
	}
	return list, b.broken
}

func (b *book) Enlist(ctx context.Context, label string, added []valuation.Case, changed []desk.Listed) error {
	for _, l := range changed {
		c := b.cases[l.ID].Clone()
		c.Lot = l.Lot
		b.cases[l.ID] = c
	}
	_, err := b.AddAll(ctx, label, added)
	return err
}

func (b *book) Duplicate(ctx context.Context, id int64) (int64, error) {
	return b.Add(ctx, b.cases[id])
}

func (b *book) place(id int64) int {
	return slices.IndexFunc(b.entries, func(e desk.Entry) bool { return e.ID == id })
}

// change changes one entry of the Board, as a step.
func (b *book) change(id int64, label string, f func(*desk.Entry)) error {
	i := b.place(id)
	switch {
	case b.broken != nil:
		return b.broken
	case i < 0:
		return errors.New("no such lot")
	}
	b.step(desk.Board, label, func() {
		b.entries = slices.Clone(b.entries)
		f(&b.entries[i])
	})
	return nil
}

func (b *book) Remove(_ context.Context, id int64) error {
	return b.change(id, "remove", func(e *desk.Entry) {
		b.entries = slices.DeleteFunc(b.entries, func(e desk.Entry) bool { return e.ID == id })
	})
}

func (b *book) SetState(_ context.Context, id int64, s lot.State) error {
	return b.change(id, "mark as "+string(s), func(e *desk.Entry) { e.State = s })
}

func (b *book) Archive(_ context.Context, id int64, archived bool) error {
	return b.change(id, "archive", func(e *desk.Entry) { e.Archived = archived })
}

func (b *book) NoteAnswer(_ context.Context, id int64, a valuation.Answer) error {
	b.answers[id] = a
	return b.broken
}

func (b *book) Predict(_ context.Context, id int64, _ valuation.Case, a valuation.Answer, _ learn.Prediction) error {
	b.foretold[id] = append(b.foretold[id], a)
	return b.broken
}

func (b *book) Case(_ context.Context, id int64) (valuation.Case, error) {
	return b.cases[id].Clone(), b.broken
}

func (b *book) Save(_ context.Context, id int64, label string, c valuation.Case) error {
	if b.broken != nil {
		return b.broken
	}
	b.steps[id] = append(b.steps[id][:b.at[id]], step{label, b.cases[id], c.Clone(), b.came[id], b.came[id]})
	b.at[id]++
	b.cases[id] = c.Clone()
	return nil
}

func (b *book) Undo(_ context.Context, id int64) (valuation.Case, string, bool, error) {
	if b.at[id] == 0 {
		return valuation.Case{}, "", false, b.broken
	}
	b.at[id]--
	s := b.steps[id][b.at[id]]
	b.cases[id], b.came[id] = s.before, s.was
	return s.before.Clone(), s.label, true, b.broken
}

func (b *book) Redo(_ context.Context, id int64) (valuation.Case, string, bool, error) {
	if b.at[id] == len(b.steps[id]) {
		return valuation.Case{}, "", false, b.broken
	}
	s := b.steps[id][b.at[id]]
	b.at[id]++
	b.cases[id], b.came[id] = s.after, s.is
	return s.after.Clone(), s.label, true, b.broken
}

func (b *book) Reach(_ context.Context, id int64) (desk.Reach, error) {
	var r desk.Reach
	if n := b.at[id]; n > 0 {
		r.Undo = b.steps[id][n-1].label
	}
	if n := b.at[id]; n < len(b.steps[id]) {
		r.Redo = b.steps[id][n].label
	}
	return r, b.broken
}

func (b *book) Setting(_ context.Context, name string, into any) (bool, error) {
	data, ok := b.settings[name]
	if !ok {
		return false, nil
	}
	return true, json.Unmarshal(data, into)
}

func (b *book) PutSetting(_ context.Context, name string, value any) error {
	data, err := json.Marshal(value)
	b.settings[name] = data
	return errors.Join(err, b.broken)
}

// importer reads one price a line under a heading.
type importer struct{}

func lines(data []byte) []string { return strings.Fields(string(data)) }

func (importer) Open(data []byte, currency string) (desk.Sheet, error) {
	all := lines(data)
	return desk.Sheet{Data: data, Header: all[:1], Rows: len(all) - 1, Stated: desk.Stated{Currency: currency}, Doubts: []desk.Doubt{{Option: "unit", Text: "Miles?"}}}, nil
}

func (importer) Read(s desk.Sheet) ([]resale.Row, []desk.Refusal, error) {
	var rows []resale.Row
	var refused []desk.Refusal
	for i, text := range lines(s.Data)[1:] {
		price, err := strconv.Atoi(text)
		if err != nil {
			refused = append(refused, desk.Refusal{Line: i + 2, Reason: err.Error()})
			continue
		}
		rows = append(rows, resale.Row{Price: money.Amount(price)})
	}
	return rows, refused, nil
}

func (importer) Merge(existing, incoming []resale.Row) ([]resale.Row, desk.Counts) {
	var counts desk.Counts
	all := slices.Clone(existing)
	for _, r := range incoming {
		if slices.ContainsFunc(all, func(have resale.Row) bool { return have.Price == r.Price }) {
			counts.Same++
			continue
		}
		counts.New++
		all = append(all, r)
	}
	return all, counts
}

func (importer) Refused(desk.Sheet) ([]byte, error) { return nil, nil }

// documents reads and writes plain JSON.
type documents struct{}

func (documents) Decode(data []byte, into any) []valuation.Fault {
	if err := json.Unmarshal(data, into); err != nil {
		return []valuation.Fault{{Key: "file", Want: err.Error()}}
	}
	return nil
}

func (documents) Encode(v any, _ string) []byte {
	data, err := json.Marshal(v)
	if err != nil {
		panic(err)
	}
	return data
}

// lister reads one lot number a line under a heading; "bad" is refused.
type lister struct{}

func (lister) OpenList(data []byte) (desk.Sheet, error) {
	all := lines(data)
	return desk.Sheet{Data: data, Header: all[:1], Rows: len(all) - 1, Doubts: []desk.Doubt{{Option: "unit"}}}, nil
}

func (lister) ReadList(s desk.Sheet) ([]lot.Lot, []desk.Refusal, error) {
	var lots []lot.Lot
	var refused []desk.Refusal
	for i, number := range lines(s.Data)[1:] {
		if number == "bad" {
			refused = append(refused, desk.Refusal{Line: i + 2, Reason: "bad"})
			continue
		}
		lots = append(lots, lot.Lot{Number: number, Sale: s.Stated.Sale})
	}
	return lots, refused, nil
}

func (lister) MeetList(known []desk.Listed, listed []lot.Lot) desk.Meeting {
	var m desk.Meeting
	for _, l := range listed {
		if slices.ContainsFunc(known, func(k desk.Listed) bool { return k.Lot.Number == l.Number }) {
			m.Same++
			m.Left = append(m.Left, "lot "+l.Number)
			continue
		}
		m.New = append(m.New, l)
	}
	return m
}

func (lister) RefusedList(desk.Sheet) ([]byte, error) { return nil, nil }
